#include "bench/uncertainty/slips.hpp"

#include "base/trade.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace evenfall::bench {

using document::Reading;
using units::Unit;

namespace {

constexpr double fits = 2.0; // |z-score|
constexpr double mm_in_an_inch = units::mm_from_m(units::m_from_inch(1.0));

/// The number with two neighbouring digits swapped, in hundredths of the trade unit; one value for each pair.
std::vector<double> swapped_digits(double value, Unit unit) {
    const double per_core = units::from_core(1.0, unit);
    const std::string digits = std::to_string(std::llround(std::abs(value) * per_core * 100.0));
    std::vector<double> all;
    for (std::size_t i = 0; i + 1 < digits.size(); ++i) {
        if (digits[i] == digits[i + 1]) continue;
        std::string swapped = digits;
        std::swap(swapped[i], swapped[i + 1]);
        all.push_back(std::copysign(std::stod(swapped) / 100.0 / per_core, value));
    }
    return all;
}

/// The reading with all its lengths times a factor, where it has any.
void add_other_lengths(std::vector<Mistake>& all, Reading r, double factor) {
    std::optional<double> first;
    for (auto* length : {&r.length_m, &r.width_m, &r.height_m, &r.depth_m, &r.freeboard_m}) {
        if (!*length) continue;
        **length *= factor;
        if (!first) first = *length;
    }
    if (!first) return;
    Sentence sentence = "The other unit of length: " + length_text(*first) + " would fit.";
    all.push_back({std::move(r), std::move(sentence), true});
}

} // namespace

std::vector<Mistake> typing_mistakes(const Reading& r) {
    std::vector<Mistake> all;
    const auto number = document::number_of(r).value;
    const Unit unit = document::number_of(r).unit;
    if (!(r.*number)) return all;
    const auto with = [&](double value, const std::string& sentence, bool is_slip) {
        // One number, one sentence: 3.00 for 30.00 is a slipped point before it is two swapped digits.
        const auto is_same = [&](const Mistake& a) {
            return std::abs(*(a.reading.*number) - value) < 1e-9 * std::abs(value);
        };
        if (std::any_of(all.begin(), all.end(), is_same)) return;
        Mistake other{r, sentence + reading_text(value, units::quantity_of(unit)) + " would fit.", is_slip};
        other.reading.*number = value;
        all.push_back(std::move(other));
    };
    const double value = *(r.*number);
    with(value * 10.0, "A slipped decimal point: ", true);
    with(value / 10.0, "A slipped decimal point: ", true);
    if (document::is_weighing(r.kind))
        with(value * 1000.0 * units::ounce_kg, "Read in ounces and entered as grams: ", true);
    for (const double other : swapped_digits(value, unit))
        with(other, "Two digits changed over: ", false);
    add_other_lengths(all, r, mm_in_an_inch);
    add_other_lengths(all, r, 1.0 / mm_in_an_inch);
    return all;
}

std::optional<double> z_score(Observer& observer, const Reading& r, const Eigen::VectorXd& u,
                              const Eigen::MatrixXd& covariance) {
    const auto o = observer.observe(r, u);
    if (!o) return std::nullopt;
    return (o->read - o->predicted) /
           std::sqrt(o->slope.dot(covariance.lazyProduct(o->slope)) + o->sigma * o->sigma);
}

Expected Expected::of(const LogFit& others, int lure) {
    return {others.posterior.mean(lure), others.posterior.covariance(lure)};
}

bool would_fit(Observer& observer, const Mistake& mistake, const Expected& expected) {
    const auto z = z_score(observer, mistake.reading, expected.mean, expected.covariance);
    return z && std::abs(*z) < fits;
}

std::optional<WorstFit> worst_fit(const LogFit& fit) {
    if (fit.used.empty()) return std::nullopt;
    const Eigen::VectorXd z =
        fit.posterior.leave_one_out_residual().cwiseQuotient(fit.posterior.leave_one_out_sigma()).cwiseAbs();
    Eigen::Index row = 0;
    const double most = z.maxCoeff(&row);
    return WorstFit{fit.used[static_cast<std::size_t>(row)], most};
}

std::vector<std::size_t> take_out_slips(const Model& model, Observer& observer, const Prior& prior,
                                        LogFit& fit) {
    constexpr std::size_t most_slips = 4;
    const auto& log = model.document().log;
    std::vector<std::size_t> out;
    while (out.size() < most_slips) {
        const auto worst = worst_fit(fit);
        if (!worst || worst->z <= does_not_fit || log[worst->index].stands) break;
        std::vector<std::size_t> without = out;
        without.push_back(worst->index);
        LogFit others = fit_log(model, observer, prior, without, &fit);
        const Expected expected = Expected::of(others, document::lure_of(log[worst->index]));
        const auto slipped = [&](const Mistake& m) { return m.is_slip && would_fit(observer, m, expected); };
        const std::vector<Mistake> mistakes = typing_mistakes(log[worst->index]);
        if (worst->z <= far_off && std::none_of(mistakes.begin(), mistakes.end(), slipped)) break;
        out = std::move(without);
        fit = std::move(others);
    }
    return out;
}

} // namespace evenfall::bench
