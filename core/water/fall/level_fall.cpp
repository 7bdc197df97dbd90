#include "water/fall/level_fall.hpp"

#include "base/trade.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::fall {

namespace {

/// v from p·v² + f·v^1.5 = d, with p, f, d > 0. Newton's method on s = √v, where the left side is a convex
/// polynomial: started at or above the root (each term alone gives a bound), it converges from above. Six
/// steps reach double precision from anywhere.
double speed_where(double p, double f, double d) {
    double s = std::min(std::sqrt(std::sqrt(d / p)), std::cbrt(d / f));
    for (int i = 0; i < 6; ++i) {
        const double s2 = s * s;
        s -= (s2 * s * (p * s + f) - d) / (s2 * (4.0 * p * s + 3.0 * f));
    }
    return s * s;
}

/// Speed at one value of κ; absent for a body that does not fall.
std::optional<double> speed_at(double pressure_m2, double friction_m3_2, double end_effect_kappa,
                               double in_water_kg, const materials::WaterProperties& water) {
    if (!(in_water_kg > 0.0 && std::isfinite(in_water_kg))) return std::nullopt;
    const double root_nu = std::sqrt(water.viscosity_pa_s / water.density_kg_m3);
    const double driving =
        2.0 * units::standard_gravity_m_s2 * in_water_kg / (water.density_kg_m3 * end_effect_kappa);
    return speed_where(pressure_m2, friction_m3_2 * root_nu, driving);
}

} // namespace

LevelFall::LevelFall(const shape::Lines& lines) {
    // With density, viscosity and speed all 1, the friction part is its value without √(μ/(ρv)).
    const materials::WaterProperties unit{1.0, 1.0};
    const std::vector<Strip> slices = strips(lines);
    if (!slices.empty()) ends_ = end_effect_of(slices);
    for (const Strip& strip : slices) {
        const double area = strip.width_m * strip.length_m;
        pressure_m2_ += pressure_drag_coefficient(strip) * area;
        friction_m3_2_ += friction_drag_coefficient(strip, 1.0, unit) * area;
    }
}

LevelFall::LevelFall(const HydroBody& hull)
    : ends_(hull.ends), pressure_m2_(hull.pressure.sum), friction_m3_2_(hull.friction.sum) {}

std::optional<double> LevelFall::speed_m_s(double in_water_kg,
                                           const materials::WaterProperties& water) const {
    return speed_at(pressure_m2_, friction_m3_2_, ends_.usual, in_water_kg, water);
}

std::optional<Speeds> LevelFall::speeds(double in_water_kg, const materials::WaterProperties& water) const {
    const auto usual = speed_m_s(in_water_kg, water);
    const auto slow = speed_at(pressure_m2_, friction_m3_2_, ends_.high, in_water_kg, water);
    const auto fast = speed_at(pressure_m2_, friction_m3_2_, ends_.low, in_water_kg, water);
    if (!usual || !slow || !fast) return std::nullopt;
    return Speeds{*usual, *slow, *fast};
}

double LevelFall::in_water_kg(double speed_m_s, const materials::WaterProperties& water) const {
    if (!(speed_m_s > 0.0)) return 0.0;
    const double root_nu = std::sqrt(water.viscosity_pa_s / water.density_kg_m3);
    const double drag_per_half_rho_kappa =
        speed_m_s * (pressure_m2_ * speed_m_s + friction_m3_2_ * root_nu * std::sqrt(speed_m_s));
    return 0.5 * water.density_kg_m3 * ends_.usual * drag_per_half_rho_kappa / units::standard_gravity_m_s2;
}

} // namespace evenfall::fall
