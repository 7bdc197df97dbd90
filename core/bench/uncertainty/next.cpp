#include "bench/uncertainty/standing.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::bench {

namespace {

using document::ReadingKind;

struct Candidate {
    ReadingKind kind;
    Stage stage;
    Eigen::VectorXd slope;
    double sigma = 0.0;          // in the unit of the slope
    double reading_sigma = 0.0;  // in the reading's own unit
    Eigen::VectorXd dry_slope{}; // of a dry weight taken with it; empty where it is alone
};

/// The covariance of the finished lure's four figures (Finished::slopes) after one more reading, or two.
Eigen::Matrix4d after(const Standing& s, const Finished& f, const Candidate& c) {
    Eigen::Matrix4d covariance = covariance_of_figures(s, f);
    Eigen::VectorXd to_inputs = s.covariance.lazyProduct(c.slope);
    double variance = c.slope.dot(to_inputs) + c.sigma * c.sigma;
    if (c.dry_slope.size() > 0) {
        const Eigen::VectorXd dry = s.covariance.lazyProduct(c.dry_slope);
        const double dry_variance = c.dry_slope.dot(dry) + scale_sigma_kg * scale_sigma_kg;
        const Eigen::Vector4d shared = f.slopes.lazyProduct(dry);
        covariance -= shared * shared.transpose() / dry_variance;
        const double both = c.slope.dot(dry);
        to_inputs -= dry * (both / dry_variance);
        variance -= both * both / dry_variance;
    }
    const Eigen::Vector4d shared = f.slopes.lazyProduct(to_inputs);
    covariance -= shared * shared.transpose() / variance;
    return covariance;
}

bool is_weighed_dry(const Standing& s, Stage stage) {
    for (const document::Reading& r : s.model->document().log) {
        const bool this_one = !r.struck && r.kind == ReadingKind::dry_weight && r.stage == stage;
        if (this_one && !r.segment && document::lure_of(r) == s.lure) return true;
    }
    return false;
}

void add_weights(std::vector<Candidate>& all, Standing& s, const StageBelief& stage) {
    const double rho = s.model->water().tub.density_kg_m3;
    const Trim t = s.model->trim(stage.stage, -1, s.u, rho);
    all.push_back({ReadingKind::dry_weight, stage.stage, t.mass_kg.slope, scale_sigma_kg, scale_sigma_kg});
    all.push_back({ReadingKind::held_under, stage.stage, rho * t.displaced_m3.slope, held_under_sigma_kg,
                   held_under_sigma_kg});
    if (!is_weighed_dry(s, stage.stage)) {
        Candidate both = all.back();
        both.dry_slope = t.mass_kg.slope;
        all.push_back(std::move(both));
    }
    if (t.in_water_kg.value > 0.0) {
        all.push_back(
            {ReadingKind::hung_in_water, stage.stage, t.in_water_kg.slope, hung_sigma_kg, hung_sigma_kg});
    }
    if (stage.stage < Stage::leaded) return;
    if (const auto hang = Model::hang(t)) {
        all.push_back({ReadingKind::hang_angle, stage.stage, hang->slope, angle_sigma_rad, angle_sigma_rad});
    }
    if (!stage.tub_fall_m_s) return;
    FallModel& falls = s.observer->falls(stage.stage, s.model->water().tub);
    const auto fall = s.model->fall(falls, t, s.u);
    if (!fall) return;
    constexpr double depth_m = 0.5;
    const double speed = fall->speed_m_s.value;
    const double time =
        time_from_rest_s(depth_m, speed, falls.gathering_m(t.sum, t.in_water_kg.value, speed));
    const double sigma_s = std::hypot(stopwatch_sigma_s, fall_scatter * time);
    // Speed and time go as each other's inverse: the gathering length does not move with the weight.
    all.push_back(
        {ReadingKind::tub_fall, stage.stage, fall->speed_m_s.slope, speed * sigma_s / time, sigma_s});
}

} // namespace

std::vector<NextReading> next_readings(Standing& s, const Finished& f,
                                       const std::array<StageBelief, stage_count>& stages) {
    std::vector<Candidate> candidates;
    if (s.stage == Stage::carved && !s.has_readings) {
        document::Reading block;
        block.kind = ReadingKind::block;
        // A block a little larger than the lure.
        block.length_m = 0.2;
        block.width_m = 0.03;
        block.height_m = 0.05;
        const auto wood = s.observer->observe(block, s.u);
        if (wood) block.mass_kg = 0.2 * 0.03 * 0.05 * wood->value;
        if (auto o = s.observer->observe(block, s.u)) {
            candidates.push_back({ReadingKind::block, Stage::carved, o->slope, o->sigma, o->sigma});
        }
    }
    std::vector<Stage> at{s.stage};
    if (s.stage < Stage::sealed) at.push_back(Stage::sealed);
    if (s.stage == Stage::clear_coated) at.push_back(Stage::dressed);
    for (const Stage stage : at)
        add_weights(candidates, s, stages[static_cast<std::size_t>(stage)]);

    const double without = chances_put_right(f.forecast, f.asked).both;
    std::vector<NextReading> next;
    for (const Candidate& c : candidates) {
        const Eigen::Matrix4d covariance = after(s, f, c);
        Forecast t = f.forecast;
        t.covariance = covariance.topLeftCorner<3, 3>();
        const double chance = chances_put_right(t, f.asked).both;
        next.push_back({c.kind, c.dry_slope.size() > 0, c.stage, c.reading_sigma,
                        std::sqrt(std::max(covariance(3, 3), 0.0)), chance, chance - without});
    }
    std::stable_sort(next.begin(), next.end(),
                     [](const NextReading& a, const NextReading& b) { return a.chance > b.chance; });
    return next;
}

} // namespace evenfall::bench
