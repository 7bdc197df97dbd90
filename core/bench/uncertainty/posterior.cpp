#include "bench/uncertainty/posterior.hpp"

#include "base/root.hpp"
#include "bench/lead/misses.hpp"
#include "document/log_check.hpp"
#include "document/work_done.hpp"
#include "water/fall/level_fall.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::bench {

Eigen::VectorXd Posterior::spread() const {
    return covariance.diagonal().cwiseMax(0.0).cwiseSqrt();
}

Outcome<Posterior> posterior_of(const document::Document& document, const Kept* before) {
    Outcome<Model> found = Model::of(document, before);
    if (!found) return found.problems();
    auto model = std::make_unique<Model>(std::move(found).value());
    auto observer = std::make_unique<Observer>(*model);
    const Prior prior = Prior::of(*model);
    LogFit fit = fit_log(*model, *observer, prior);
    std::vector<std::size_t> left_out = take_out_slips(*model, *observer, prior, fit);
    const document::LogState log = document::log_state(document);
    Posterior p{std::move(model),
                std::move(observer),
                prior,
                std::move(fit),
                std::move(left_out),
                log.lure,
                log.stage,
                log.has_readings,
                {},
                {}};
    p.mean = p.fit.posterior.mean(p.lure);
    p.covariance = p.fit.posterior.covariance(p.lure);
    return p;
}

namespace {

/// The in-water mass that meets the target at the posterior mean of drag, and its band.
TargetBand target_of(Posterior& p, const Finished& f) {
    const document::Targets& targets = p.model->document().targets;
    const materials::WaterProperties& water = p.model->water().fishing;
    TargetBand target;
    target.pitch_rad = targets.pitch_rad;
    target.pitch_band_rad = targets.pitch_band_rad;
    if (targets.by == document::TargetBy::in_water) {
        const double half = lead::weight_band_kg(targets, water.density_kg_m3 * f.balance.sum.displaced_m3);
        target.scales_with_drag = false;
        target.low_kg = targets.in_water_kg - half;
        target.target_kg = targets.in_water_kg;
        target.high_kg = targets.in_water_kg + half;
        return target;
    }
    FallModel& falls = p.observer->falls(Stage::rigged, water);
    const fall::LevelFall level(*p.model->evaluation().body.lines);
    const double drag = p.model->drag(p.mean);
    const auto level_kg = [&](double speed) { return drag * level.in_water_kg(speed, water); };
    // By the whole lure's fall; where that gives none, by the level fall of the body alone.
    const auto kg_for = [&](double speed) {
        return falls.in_water_for(f.balance.sum, drag, speed).value_or(level_kg(speed));
    };
    target.target_kg = kg_for(targets.fall_m_s);
    // Where the lure falls in different ways at the slow and the fast end, or one of them only by the level
    // fall, the slower speed may ask for the heavier weight.
    const auto [low, high] =
        std::minmax({target.target_kg, kg_for(targets.fall_m_s * (1.0 - targets.fall_band)),
                     kg_for(targets.fall_m_s * (1.0 + targets.fall_band))});
    target.low_kg = low;
    target.high_kg = high;
    return target;
}

} // namespace

Estimate estimate(const Posterior& p, const Linearised& figure) {
    const double variance = figure.slope.dot(p.covariance.lazyProduct(figure.slope));
    return {figure.value, std::sqrt(std::max(variance, 0.0)), figure.slope.norm()};
}

FigureCovariance covariance_of_figures(const Posterior& p, const Finished& f) {
    const Eigen::MatrixXd by_input = f.slopes.lazyProduct(p.covariance);
    return by_input.lazyProduct(f.slopes.transpose());
}

Finished finished(Posterior& p) {
    const Model& model = *p.model;
    const materials::WaterProperties& water = model.water().fishing;
    Finished f;
    f.balance = model.balance(Stage::rigged, -1, p.mean, water.density_kg_m3);
    f.hang = Model::hang(f.balance);
    const auto fall = model.fall(p.observer->falls(Stage::rigged, water), f.balance, p.mean);
    if (fall) f.fall = fall->speed_m_s;
    f.target = target_of(p, f);

    const Linearised& in_water = f.balance.in_water_kg;
    f.slopes = Eigen::MatrixXd::Zero(figure::count, model.count());
    f.slopes.row(figure::mass) =
        (fall && f.target.scales_with_drag ? fall->equivalent_kg : in_water).slope.transpose();
    f.slopes(figure::drag, model.drag_index()) =
        model.input(model.drag_index()).relative * (fall ? fall->weight_per_drag : 1.0);
    const Linearised& aft = f.balance.aft_m;
    const Linearised& across = f.balance.bg_across_m;
    f.slopes.row(figure::past_low) = (aft.slope - f.target.low_slope() * across.slope).transpose();
    f.slopes.row(figure::past_high) = (aft.slope - f.target.high_slope() * across.slope).transpose();
    f.slopes.row(figure::in_water) = in_water.slope.transpose();
    f.forecast.hangs = f.hang.has_value();
    f.forecast.mean << in_water.value, 0.0, f.target.past({aft.value, across.value});
    f.forecast.covariance = covariance_of_figures(p, f).topLeftCorner<figure::of_chance, figure::of_chance>();
    return f;
}

namespace {

/// Weight in water for a speed at the mean of drag: by the body's level fall, scaled to be right at the
/// lure's own speed, or, where it does not fall, at another.
class WeightForSpeed {
public:
    WeightForSpeed(Posterior& p, const Finished& f, double without_fall_m_s)
        : level_(*p.model->evaluation().body.lines), water_(p.model->water().fishing) {
        const double speed_m_s = f.fall ? f.fall->value : without_fall_m_s;
        const auto exact = f.fall ? std::optional(f.forecast.mean(figure::mass))
                                  : p.observer->falls(Stage::rigged, water_)
                                        .in_water_for(f.balance.sum, p.model->drag(p.mean), speed_m_s);
        const double level_kg = level_.in_water_kg(speed_m_s, water_);
        scale_ = exact.value_or(level_kg) / level_kg;
    }
    /// Negative for a rise.
    [[nodiscard]] double operator()(double speed_m_s) const {
        return std::copysign(scale_ * level_.in_water_kg(std::abs(speed_m_s), water_), speed_m_s);
    }

private:
    fall::LevelFall level_;
    materials::WaterProperties water_;
    double scale_ = 1.0;
};

/// The speed that this share of lures stays below, down positive, between ± 100 m/s.
double speed_quantile(const Forecast& forecast, const WeightForSpeed& weight, double share) {
    const auto over = [&](double speed) { return share_below(forecast, weight(speed)) - share; };
    const double way = over(0.0) < 0.0 ? 1.0 : -1.0;
    double far = 4.0; // m/s
    while (far < 100.0 && way * over(way * far) < 0.0)
        far *= 2.0;
    return way > 0.0 ? root_between(over, 0.0, far, {1e-12}) : root_between(over, -far, 0.0, {1e-12});
}

} // namespace

std::array<Interval, 3> fall_intervals(Posterior& p, const Finished& f) {
    const WeightForSpeed weight(p, f, p.model->document().targets.fall_m_s);
    const auto quantile = [&](double share) {
        return share_below(f.forecast, 0.0) >= share ? 0.0 : speed_quantile(f.forecast, weight, share);
    };
    return {{{quantile(0.25), quantile(0.75)},
             {quantile(0.10), quantile(0.90)},
             {quantile(0.025), quantile(0.975)}}};
}

UnderWater under_water(Posterior& p, const Finished& f) {
    const WeightForSpeed weight(p, f, still_m_s);
    const double rises = share_below(f.forecast, weight(-still_m_s));
    const double slow = share_below(f.forecast, weight(still_m_s));
    return {{speed_quantile(f.forecast, weight, 1.0 / 6.0), speed_quantile(f.forecast, weight, 5.0 / 6.0)},
            rises,
            std::max(0.0, slow - rises),
            1.0 - slow};
}

document::Document with_corrections(const Model& model, const Eigen::VectorXd& u,
                                    const Eigen::VectorXd& spread) {
    document::Document document = model.document();
    document.log.clear();
    for (document::Hole& hole : document.holes)
        hole.before.clear();
    for (Eigen::Index i = 0; i < model.count(); ++i) {
        const Input& input = model.input(i);
        const double factor = factor_of(input, u(i));
        // Within what a document may hold, however odd the readings were.
        const double left =
            std::min(input.cause == document::Cause::drag ? input.relative * spread(i)
                                                          : input.relative * spread(i) / factor,
                     1.0);
        const bool corrected = std::abs(factor - 1.0) > 1e-12 || std::abs(spread(i) - 1.0) > 1e-9;
        if (!corrected) continue;
        const auto is_known = [&](const document::Correction& c) {
            return c.of == input.cause &&
                   (c.of == document::Cause::drag || document::group_of(c) == input.group);
        };
        auto& known = document.corrections;
        if (const auto first = std::find_if(known.begin(), known.end(), is_known); first != known.end()) {
            // Several corrections of one thing are multiplied into one.
            double together = factor;
            for (const document::Correction& c : known)
                together *= is_known(c) ? c.factor : 1.0;
            first->factor = std::clamp(together, document::least_factor, document::most_factor);
            first->spread = left;
            known.erase(std::remove_if(first + 1, known.end(), is_known), known.end());
            continue;
        }
        document::Correction c;
        c.of = input.cause;
        if (input.cause == document::Cause::carved_size) {
            if (input.group > 0) c.item = input.group - 1;
        } else if (input.cause != document::Cause::wood_density && input.cause != document::Cause::moisture &&
                   input.cause != document::Cause::wood_gradient && input.cause != document::Cause::drag) {
            c.item = input.group;
        }
        c.factor = std::clamp(factor, document::least_factor, document::most_factor);
        c.spread = left;
        document.corrections.push_back(c);
    }
    return document;
}

document::Document with_corrections(const Posterior& p) {
    return with_corrections(*p.model, p.mean, p.spread());
}

} // namespace evenfall::bench

namespace evenfall {

Outcome<document::Document> corrected(const document::Document& document) {
    const auto posterior = bench::posterior_of(document);
    if (!posterior) return posterior.problems();
    return bench::with_corrections(*posterior);
}

} // namespace evenfall
