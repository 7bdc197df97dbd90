#include "bench/uncertainty/uncertainty.hpp"

#include "bench/uncertainty/standing.hpp"

#include <cmath>

namespace evenfall {

using bench::estimate;
using bench::Finished;
using bench::Graded;
using bench::Standing;

namespace {

std::vector<Belief> beliefs(const Standing& s) {
    std::vector<Belief> all;
    for (Eigen::Index i = 0; i < s.model->count(); ++i) {
        const bench::Input& input = s.model->inputs()[static_cast<std::size_t>(i)];
        const double factor = bench::factor_of(input, s.u(i));
        const double sigma = std::sqrt(std::max(s.covariance(i, i), 0.0));
        const double by = input.cause == document::Cause::drag ? 1.0 : factor;
        all.push_back({input.cause, input.group, s.model->name_of(input), factor, input.relative * sigma / by,
                       input.relative});
    }
    return all;
}

StageBelief belief_at(Standing& s, Stage stage) {
    const materials::WaterProperties& tub = s.model->water().tub;
    const bench::Trim t = s.model->trim(stage, -1, s.u, tub.density_kg_m3);
    StageBelief b;
    b.stage = stage;
    b.mass_kg = estimate(s, t.mass_kg);
    b.displaced_kg =
        estimate(s, {tub.density_kg_m3 * t.displaced_m3.value, tub.density_kg_m3 * t.displaced_m3.slope});
    b.in_tub_kg = estimate(s, t.in_water_kg);
    if (t.in_water_kg.value > 0.0) {
        if (const auto fall = s.model->fall(s.observer->falls(stage, tub), t, s.u))
            b.tub_fall_m_s = estimate(s, fall->speed_m_s);
    }
    return b;
}

} // namespace

Outcome<Uncertainty> uncertainty(const document::Document& document) {
    Outcome<Standing> standing = bench::stand(document);
    if (!standing) return standing.problems();
    Standing& s = *standing;
    const Finished f = bench::finished(s);
    Uncertainty out;
    out.lure = s.lure;
    out.stage = s.stage;
    out.has_readings = s.has_readings;
    out.inputs = beliefs(s);
    out.mass_kg = estimate(s, f.trim.mass_kg);
    out.in_water_kg = estimate(s, f.trim.in_water_kg);
    out.bg_m = estimate(s, f.trim.below_m);
    out.pitch_rad = f.hang ? estimate(s, *f.hang) : Estimate{std::nan(""), std::nan(""), std::nan("")};
    const auto sigma = [&](const Graded& g) { return estimate(s, g).sigma; };
    out.g_sigma_m = {sigma(f.trim.g_m[0]), sigma(f.trim.g_m[1]), sigma(f.trim.g_m[2])};
    out.b_sigma_m = {sigma(f.trim.b_m[0]), sigma(f.trim.b_m[1]), sigma(f.trim.b_m[2])};
    if (f.fall) out.fall_m_s = estimate(s, *f.fall);
    out.fall_50_80_95_m_s = bench::fall_intervals(s, f);
    for (int i = 0; i < stage_count; ++i)
        out.stages[static_cast<std::size_t>(i)] = belief_at(s, static_cast<Stage>(i));
    out.as_it_stands = bench::chances(f.forecast, f.asked);
    out.put_right = bench::chances_put_right(f.forecast, f.asked);
    out.asked_in_water_kg = f.asked.aim_kg;
    out.weight_band_kg = 0.5 * (f.asked.high_kg - f.asked.low_kg);
    out.readings = bench::verdicts(s);
    out.next = bench::next_readings(s, f, out.stages);
    out.trim = bench::trim_hole(s, f);
    return out;
}

} // namespace evenfall
