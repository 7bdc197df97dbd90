#include "water/fall/water_sweep.hpp"

#include "base/root.hpp"
#include "materials/water_density.hpp"
#include "materials/water_properties.hpp"

#include <cmath>

namespace evenfall::fall {

namespace {

constexpr double densest_fresh_c = 3.98;

/// Weight in water, for water that is known to be within its limits.
double in_water_at(const FallingLure& lure, double temperature_c, double salinity_g_kg) {
    const auto rho = materials::water_density_kg_m3(temperature_c, salinity_g_kg);
    return rho.ok() ? lure.weights().mass_kg - *rho * lure.weights().displaced_m3 : std::nan("");
}

Outcome<SweepPoint> point(const FallingLure& lure, const document::Water& fishing, double temperature_c,
                          double salinity_g_kg) {
    const auto water = materials::water_properties(temperature_c, salinity_g_kg);
    if (!water) return water.problems();
    const FallingLure there = lure.in(*water);
    SweepPoint p{temperature_c, salinity_g_kg, there.in_water_kg(), 0.0, std::nullopt};
    const double growth = wood_growth_1_k * (temperature_c - fishing.temperature_c);
    p.swelled_in_water_kg = p.in_water_kg - water->density_kg_m3 * lure.weights().displaced_m3 * growth;
    if (const auto fall = there.main_fall()) p.vertical_m_s = fall->vertical_m_s;
    return p;
}

std::vector<double> still_temperatures(const FallingLure& lure, double salinity_g_kg) {
    const auto in_water = [&](double c) { return in_water_at(lure, c, salinity_g_kg); };
    // Fresh water is densest near 4 °C and salt water at a lower temperature: on either side of the maximum
    // there is at most one root.
    std::vector<double> found;
    double from = 0.0;
    double at_from = in_water(from);
    for (const double to : {0.5, 1.0, 1.5, 2.0, 2.5, 3.0, 3.5, densest_fresh_c, 5.0, 6.0, 8.0, 12.0, 20.0,
                            30.0, materials::warmest_water_c}) {
        const double at_to = in_water(to);
        if ((at_from < 0.0) != (at_to < 0.0)) {
            found.push_back(root_between(in_water, from, to, at_from, at_to, {1e-6}));
        }
        from = to;
        at_from = at_to;
    }
    return found;
}

} // namespace

Outcome<Sweep> water_sweep(const FallingLure& lure, const document::Water& fishing, int points) {
    Problems refused = materials::water_problems(fishing.temperature_c, fishing.salinity_g_kg, "/water");
    if (!(points >= 2 && points <= 201)) {
        refused.push_back(
            {ProblemCode::out_of_range, "/points", "2 to 201", "A sweep must have from 2 to 201 points."});
    }
    if (!refused.empty()) return refused;
    Sweep sweep;
    for (int i = 0; i < points; ++i) {
        const double share = static_cast<double>(i) / (points - 1);
        auto warmer = point(lure, fishing, share * materials::warmest_water_c, fishing.salinity_g_kg);
        if (!warmer) return warmer.problems();
        auto saltier = point(lure, fishing, fishing.temperature_c, share * materials::saltiest_water_g_kg);
        if (!saltier) return saltier.problems();
        sweep.by_temperature.push_back(*warmer);
        sweep.by_salinity.push_back(*saltier);
    }
    sweep.still_at_c = still_temperatures(lure, fishing.salinity_g_kg);
    return sweep;
}

} // namespace evenfall::fall
