#include "bench/uncertainty/standing.hpp"

#include "base/root.hpp"
#include "document/log_check.hpp"
#include "water/fall/level_fall.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::bench {

Outcome<Standing> stand(const document::Document& document) {
    Outcome<Model> model = Model::of(document);
    if (!model) return model.problems();
    auto held = std::make_unique<Model>(std::move(model).value());
    auto observer = std::make_unique<Observer>(*held);
    const Prior prior = Prior::of(*held);
    Update updated = update(*held, *observer, prior);
    Standing s{
        std::move(held), std::move(observer), prior, std::move(updated), 0, Stage::carved, false, {}, {}};
    for (const document::Reading& r : document.log) {
        if (!r.struck) s.lure = std::max(s.lure, document::lure_of(r));
    }
    for (const document::Reading& r : document.log) {
        if (r.struck || document::lure_of(r) != s.lure) continue;
        // A block is weighed before there is a lure, whatever stage stands beside it.
        if (r.kind != document::ReadingKind::block) s.stage = std::max(s.stage, r.stage);
        s.has_readings = true;
    }
    s.u = s.update.posterior.mean(s.lure);
    s.covariance = s.update.posterior.covariance(s.lure);
    return s;
}

namespace {

/// Asked in-water mass with what is believed of drag, and its band.
Asked asked_of(Standing& s, const Finished& f) {
    const document::Targets& targets = s.model->document().targets;
    const materials::WaterProperties& water = s.model->water().fishing;
    Asked asked;
    asked.pitch_rad = targets.pitch_rad;
    asked.pitch_band_rad = targets.pitch_band_rad;
    if (targets.by == document::TargetBy::in_water) {
        // A weight near nothing has no share of itself to go by.
        constexpr double least_share_of_displaced = 0.002;
        const double half =
            std::max(targets.fall_band * std::abs(targets.in_water_kg),
                     least_share_of_displaced * water.density_kg_m3 * f.trim.sum.displaced_m3);
        asked.with_drag = false;
        asked.low_kg = targets.in_water_kg - half;
        asked.aim_kg = targets.in_water_kg;
        asked.high_kg = targets.in_water_kg + half;
        return asked;
    }
    FallModel& falls = s.observer->falls(Stage::dressed, water);
    const fall::LevelFall level(*s.model->evaluation().body.lines);
    const double drag = s.model->drag(s.u);
    const auto level_kg = [&](double speed) { return drag * level.in_water_kg(speed, water); };
    // By the whole lure's own fall; where that gives none, as the body alone falls level.
    const auto kg_for = [&](double speed) {
        return falls.in_water_for(f.trim.sum, drag, speed).value_or(level_kg(speed));
    };
    asked.aim_kg = kg_for(targets.fall_m_s);
    // Where the lure falls in another manner at the slow end than at the fast one, or one of them only by the
    // level law, the heavier of two weights may be the slower one's.
    const auto [low, high] = std::minmax({asked.aim_kg, kg_for(targets.fall_m_s * (1.0 - targets.fall_band)),
                                          kg_for(targets.fall_m_s * (1.0 + targets.fall_band))});
    asked.low_kg = low;
    asked.high_kg = high;
    return asked;
}

} // namespace

Estimate estimate(const Standing& s, const Graded& g) {
    return {g.value, std::sqrt(std::max(g.slope.dot(s.covariance.lazyProduct(g.slope)), 0.0)),
            g.slope.norm()};
}

Eigen::Matrix4d covariance_of_figures(const Standing& s, const Finished& f) {
    const Eigen::MatrixXd by_input = f.slopes.lazyProduct(s.covariance);
    return by_input.lazyProduct(f.slopes.transpose());
}

Finished finished(Standing& s) {
    const Model& model = *s.model;
    Finished f;
    f.trim = model.trim(Stage::dressed, -1, s.u, model.water().fishing.density_kg_m3);
    f.hang = Model::hang(f.trim);
    const auto fall = model.fall(s.observer->falls(Stage::dressed, model.water().fishing), f.trim, s.u);
    if (fall) f.fall = fall->speed_m_s;
    f.asked = asked_of(s, f);

    f.slopes = Eigen::MatrixXd::Zero(4, model.count());
    f.slopes.row(0) = (fall && f.asked.with_drag ? fall->felt_kg : f.trim.in_water_kg).slope.transpose();
    f.slopes(1, model.count() - 1) = model.inputs().back().relative * (fall ? fall->weight_per_drag : 1.0);
    if (f.hang) f.slopes.row(2) = f.hang->slope.transpose();
    f.slopes.row(3) = f.trim.in_water_kg.slope.transpose();
    f.forecast.mean = {f.trim.in_water_kg.value, 0.0, f.hang ? f.hang->value : std::nan("")};
    f.forecast.covariance = covariance_of_figures(s, f).topLeftCorner<3, 3>();
    return f;
}

std::array<Interval, 3> fall_intervals(Standing& s, const Finished& f) {
    const materials::WaterProperties& water = s.model->water().fishing;
    const fall::LevelFall level(*s.model->evaluation().body.lines);
    // Weight for a speed: as the body alone has it, scaled so that it is right where the lure is, or where it
    // should be.
    const double about = f.fall ? f.fall->value : s.model->document().targets.fall_m_s;
    const auto exact =
        f.fall ? std::optional(f.forecast.mean(0))
               : s.observer->falls(Stage::dressed, water).in_water_for(f.trim.sum, s.model->drag(s.u), about);
    const double scale = exact.value_or(level.in_water_kg(about, water)) / level.in_water_kg(about, water);
    const auto quantile = [&](double share) {
        double high = 4.0; // m/s
        if (share_below(f.forecast, 0.0) >= share) return 0.0;
        const auto slower = [&](double speed) {
            return share_below(f.forecast, scale * level.in_water_kg(speed, water)) < share;
        };
        while (high < 100.0 && slower(high))
            high *= 2.0;
        return last_where(slower, 0.0, high, 1e-12);
    };
    return {{{quantile(0.25), quantile(0.75)},
             {quantile(0.10), quantile(0.90)},
             {quantile(0.025), quantile(0.975)}}};
}

document::Document with_corrections(const Model& model, const Eigen::VectorXd& u,
                                    const Eigen::VectorXd& spread) {
    document::Document document = model.document();
    document.log.clear();
    for (Eigen::Index i = 0; i < model.count(); ++i) {
        const Input& input = model.inputs()[static_cast<std::size_t>(i)];
        const double factor = factor_of(input, u(i));
        // What is left stays within what a document may say, however odd the readings were.
        const double left =
            std::min(input.cause == document::Cause::drag ? input.relative * spread(i)
                                                          : input.relative * spread(i) / factor,
                     1.0);
        const bool taught = std::abs(factor - 1.0) > 1e-12 || std::abs(spread(i) - 1.0) > 1e-9;
        if (!taught) continue;
        const auto is_known = [&](const document::Correction& c) {
            return c.of == input.cause &&
                   (c.of == document::Cause::drag || document::group_of(c) == input.group);
        };
        auto& known = document.corrections;
        if (const auto first = std::find_if(known.begin(), known.end(), is_known); first != known.end()) {
            // Several of the same thing work together: from here on they are one.
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
                   input.cause != document::Cause::drag) {
            c.item = input.group;
        }
        c.factor = std::clamp(factor, document::least_factor, document::most_factor);
        c.spread = left;
        document.corrections.push_back(c);
    }
    return document;
}

} // namespace evenfall::bench

namespace evenfall {

Outcome<document::Document> corrected(const document::Document& document) {
    const auto s = bench::stand(document);
    if (!s) return s.problems();
    return bench::with_corrections(*s->model, s->u, s->covariance.diagonal().cwiseMax(0.0).cwiseSqrt());
}

} // namespace evenfall
