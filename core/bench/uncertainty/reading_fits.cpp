#include "base/number_text.hpp"
#include "base/trade.hpp"
#include "bench/uncertainty/posterior.hpp"
#include "bench/uncertainty/stage_words.hpp"
#include "document/fields.hpp"
#include "ledger/hung_on.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace evenfall::bench {

namespace {

using document::Reading;
using document::ReadingKind;
using units::number_text;
using units::Unit;

constexpr double does_not_fit = 3.0; // |z-score|
constexpr double fits = 2.0;
constexpr std::size_t most_explained = 4;

/// One possible mistake: the reading as it would be without it.
struct Alternative {
    Reading reading;
    Sentence sentence;
};

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

void add_typing(std::vector<Alternative>& all, const Reading& r) {
    const auto number = document::number_of(r.kind).value;
    const Unit unit = document::number_of(r.kind).unit;
    if (!(r.*number)) return;
    const auto with = [&](double value, const std::string& sentence) {
        // One number, one sentence: 3.00 for 30.00 is a slipped point before it is two swapped digits.
        const auto is_same = [&](const Alternative& a) {
            return std::abs(*(a.reading.*number) - value) < 1e-9 * std::abs(value);
        };
        if (std::any_of(all.begin(), all.end(), is_same)) return;
        Alternative other{r, sentence + reading_text(value, units::quantity_of(unit)) + " would fit."};
        other.reading.*number = value;
        all.push_back(std::move(other));
    };
    const double value = *(r.*number);
    with(value * 10.0, "A slipped decimal point: ");
    with(value / 10.0, "A slipped decimal point: ");
    if (document::is_weighing(r.kind))
        with(value * 1000.0 * units::ounce_kg, "Read in ounces and put down as grams: ");
    for (const double other : swapped_digits(value, unit))
        with(other, "Two digits changed over: ");
}

void add_places(std::vector<Alternative>& all, const Reading& r, const document::Document& document) {
    if (r.kind != ReadingKind::board) {
        for (int s = 0; s < stage_count; ++s) {
            if (static_cast<Stage>(s) == r.stage) continue;
            Reading other = r;
            other.stage = static_cast<Stage>(s);
            all.push_back(
                {other, std::string("Another stage: it fits the lure ") + stage_words(other.stage) + "."});
        }
    }
    if (r.stage >= Stage::leaded && r.stage < Stage::rigged && !r.segment) {
        Reading other = r;
        other.with = r.with.empty() ? document::all_hung_on() : document::HungList{};
        all.push_back({other, r.with.empty() ? Sentence("It fits the lure with " +
                                                        ledger::rigging_words(document) + " on.")
                                             : Sentence("It fits the lure with nothing hung on.")});
    }
    if (!document::is_weighing(r.kind)) return;
    const auto segments = static_cast<int>(document.segment_names.size());
    for (int s = -1; s < segments && segments > 1; ++s) {
        if (s == r.segment.value_or(-1)) continue;
        Reading other = r;
        other.segment.reset();
        if (s >= 0) other.segment = s;
        all.push_back({other, s < 0 ? std::string("All segments together: it fits the whole lure.")
                                    : "One segment alone: it fits “" +
                                          document.segment_names[static_cast<std::size_t>(s)] + "”."});
    }
    if (r.kind != ReadingKind::dry_weight && !r.holder_kg) {
        constexpr double heaviest_holder_kg = 0.003; // a wire or a thread
        Reading other = r;
        other.holder_kg = 0.5 * heaviest_holder_kg;
        other.mass_sigma_kg = std::hypot(own_sigma(r), 0.25 * heaviest_holder_kg);
        all.push_back({other, "The holder was not taken off."});
    }
}

/// Water or air in the wrong place, in grams.
void add_water(std::vector<Sentence>& explanations, const Reading& r, const Observation& o, double wood_kg) {
    const double over = o.read - o.predicted;
    const bool most = std::abs(over) < 0.3 * wood_kg;
    const bool in_water = r.kind == ReadingKind::hung_in_water || r.kind == ReadingKind::suspends ||
                          r.kind == ReadingKind::tub_fall;
    const Sentence mass = mass_text(std::abs(over));
    if (r.kind == ReadingKind::dry_weight && over > 0.0 && most)
        explanations.push_back("Wet wood: " + mass +
                               " of water in it would fit; let it dry and weigh again.");
    if (in_water && over > 0.0 && most) {
        explanations.push_back(
            "A leak: " + mass +
            " of water in the wood or in a hole would fit; dry it, find the scratch or the open cap.");
    }
    if (in_water && over < 0.0 && most)
        explanations.push_back("Air: bubbles of " + mass + " lift would fit; wipe it down under water.");
    if (r.kind == ReadingKind::held_under && over < 0.0 && most) {
        explanations.push_back("Water ran in: a hole or pocket of " +
                               number_text(std::abs(over), Unit::gram, 2) + " cm³ that filled would fit.");
    }
    if (r.kind == ReadingKind::held_under && over > 0.0 && most)
        explanations.push_back("Air clung to it, or it touched the cup: " + mass + " too much.");
}

/// Of a reading against the prediction from u and its covariance; absent where the reading has no solution.
std::optional<double> z_score(Observer& observer, const Reading& r, const Eigen::VectorXd& u,
                              const Eigen::MatrixXd& covariance) {
    const auto o = observer.observe(r, u);
    if (!o) return std::nullopt;
    return (o->read - o->predicted) /
           std::sqrt(o->slope.dot(covariance.lazyProduct(o->slope)) + o->sigma * o->sigma);
}

/// Adds the mistakes that would make the reading agree with the fit of the others.
void explain(Posterior& p, ReadingFit& reading_fit, const LogFit& others) {
    const Reading& r = p.model->document().log[reading_fit.index];
    const Eigen::VectorXd u = others.posterior.mean(document::lure_of(r));
    const Eigen::MatrixXd covariance = others.posterior.covariance(document::lure_of(r));
    std::vector<Alternative> all;
    add_typing(all, r);
    add_places(all, r, p.model->document());
    for (const Alternative& a : all) {
        const auto z = z_score(*p.observer, a.reading, u, covariance);
        if (z && std::abs(*z) < fits) reading_fit.explanations.push_back(a.sentence);
    }
    if (const auto o = p.observer->observe(r, u)) {
        const ledger::Sum wood = ledger::sum_of(p.model->evaluation().ledger, ledger::Kind::wood);
        add_water(reading_fit.explanations, r, *o, wood.mass.kg);
    }
}

/// Sets z-scores from a fit. Gives the reading that is used and fits worst, if one does not fit.
std::optional<std::size_t> set_z_scores(std::vector<ReadingFit>& all, const LogFit& fit) {
    if (fit.used.empty()) return std::nullopt;
    const Eigen::VectorXd residual = fit.posterior.leave_one_out_residual();
    const Eigen::VectorXd sigma = fit.posterior.leave_one_out_sigma();
    std::optional<std::size_t> worst;
    for (std::size_t k = 0; k < fit.used.size(); ++k) {
        const auto row = static_cast<Eigen::Index>(k);
        ReadingFit& v = all[fit.used[k]];
        v.used = true;
        v.z_score = residual(row) / sigma(row);
        const double z = std::abs(v.z_score);
        if (z > does_not_fit && (!worst || z > std::abs(all[*worst].z_score))) worst = fit.used[k];
    }
    return worst;
}

/// Finds the readings that do not fit, the worst first, each time fitting the log again without those found:
/// a wrong reading must not make others look wrong.
void find_outliers(Posterior& p, std::vector<ReadingFit>& all) {
    std::vector<std::size_t> outliers;
    std::optional<LogFit> without_them;
    while (true) {
        const auto worst = set_z_scores(all, without_them ? *without_them : p.fit);
        if (!worst || outliers.size() == most_explained) return;
        outliers.push_back(*worst);
        ReadingFit& v = all[*worst];
        v.warning = "Reading " + std::to_string(v.index + 1) + " does not fit the others: off by " +
                    number_text(std::abs(v.z_score), Unit::one, 1) + " times what scale and wood allow.";
        without_them = fit_log(*p.model, *p.observer, p.prior, outliers, &p.fit);
        explain(p, v, *without_them);
    }
}

/// Warns of readings that are not excluded and yet not in the fit.
void find_unused(Posterior& p, std::vector<ReadingFit>& all) {
    std::size_t unused = 0;
    for (ReadingFit& v : all) {
        const Reading& r = p.model->document().log[v.index];
        if (r.excluded || p.fit.lines[v.index]) continue;
        v.warning = "Reading " + std::to_string(v.index + 1) +
                    " says nothing of this lure: " + method_of(r.kind).unused;
        if (unused++ < most_explained) explain(p, v, p.fit);
    }
}

/// What each reading should have been, from all others: one step of the linear posterior.
void set_predictions(const LogFit& fit, std::vector<ReadingFit>& all) {
    if (fit.used.empty()) return;
    const Eigen::VectorXd residual = fit.posterior.leave_one_out_residual();
    const Eigen::VectorXd sigma = fit.posterior.leave_one_out_sigma();
    for (std::size_t k = 0; k < fit.used.size(); ++k) {
        const auto row = static_cast<Eigen::Index>(k);
        const Observation& o = fit.observed[k];
        ReadingFit& v = all[fit.used[k]];
        // An in-water mass is converted back to the reading's own number by the ratio of the two sigmas.
        const double own = o.sigma > 0.0 ? v.sigma / o.sigma : 1.0;
        v.predicted = v.read - (o.reversed ? -own : own) * residual(row);
        v.predicted_sigma = own * sigma(row);
    }
}

} // namespace

std::vector<ReadingFit> reading_fits(Posterior& p) {
    const auto& log = p.model->document().log;
    std::vector<ReadingFit> all(log.size());
    for (std::size_t i = 0; i < log.size(); ++i) {
        all[i].index = i;
        all[i].used = false;
        all[i].read = main_number(log[i]);
        all[i].sigma = own_sigma(log[i]);
    }
    find_outliers(p, all);
    find_unused(p, all);
    set_predictions(p.fit, all);
    return all;
}

} // namespace evenfall::bench
