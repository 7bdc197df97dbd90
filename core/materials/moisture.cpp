#include "materials/moisture.hpp"

#include "units/limits.hpp"

namespace evenfall::materials {

Outcome<double> density_at_moisture(double density_kg_m3, double from_percent, double to_percent) {
    Problems problems;
    units::check_limit({"/density_g_cm3", "The block's density", density_kg_m3, 30.0, 1500.0, units::Unit::g_per_cm3, 2}, problems);
    units::check_limit({"/from_percent", "The moisture it was weighed at, in percent,", from_percent, 0.0, 30.0}, problems);
    units::check_limit({"/to_percent", "The moisture asked for, in percent,", to_percent, 0.0, 30.0}, problems);
    if (!problems.empty()) return problems;
    const auto shrunk = [](double percent) { return 0.265 * (1.0 - percent / 30.0); };
    const double gravity = density_kg_m3 / (1000.0 * (1.0 + from_percent / 100.0));
    const double green = gravity / (1.0 + gravity * shrunk(from_percent));
    return 1000.0 * green / (1.0 - green * shrunk(to_percent)) * (1.0 + to_percent / 100.0);
}

}  // namespace evenfall::materials
