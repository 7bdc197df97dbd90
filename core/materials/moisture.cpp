#include "materials/moisture.hpp"

#include "base/limits.hpp"

namespace evenfall::materials {
namespace {

constexpr double fibre_saturation_percent = 30.0;
constexpr double shrinkage_per_gravity = 0.265;

} // namespace

double gravity_at(double green, double percent) {
    return green / (1.0 - shrinkage_per_gravity * green * (1.0 - percent / fibre_saturation_percent));
}

double green_gravity(double gravity, double percent) {
    return gravity / (1.0 + shrinkage_per_gravity * gravity * (1.0 - percent / fibre_saturation_percent));
}

Outcome<double> density_at_moisture(double density_kg_m3, double from_percent, double to_percent) {
    Problems problems;
    units::check_limit(
        {"/density_g_cm3", "The board's density", density_kg_m3, 30.0, 1500.0, units::Unit::g_per_cm3, 2},
        problems);
    units::check_limit(
        {"/from_percent", "The moisture it was weighed at, in percent,", from_percent, 0.0, 30.0}, problems);
    units::check_limit({"/to_percent", "The moisture asked for, in percent,", to_percent, 0.0, 30.0},
                       problems);
    if (!problems.empty()) return problems;
    const double gravity = density_kg_m3 / (1000.0 * (1.0 + from_percent / 100.0));
    return 1000.0 * gravity_at(green_gravity(gravity, from_percent), to_percent) * (1.0 + to_percent / 100.0);
}

} // namespace evenfall::materials
