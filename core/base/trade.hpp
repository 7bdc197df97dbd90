#pragma once

// The shop's units and their sizes in SI; these numbers stand nowhere else in the project. Definitions:
// international yard and pound agreement of 1959 (inch 25.4 mm, pound 0.453 592 37 kg, both exact; ounce 1/16
// and grain 1/7000 of the pound); 0 °C = 32 °F; standard gravity CGPM 1901. Code divides by powers of ten
// instead of multiplying by their inverse, so that m_from_mm(6.35) is the double nearest 0.00635.

#include <numbers>

namespace evenfall::units {

inline constexpr double inch_m = 0.0254;
inline constexpr double foot_m = 0.3048;
inline constexpr double pound_kg = 0.45359237;
inline constexpr double ounce_kg = pound_kg / 16.0;
inline constexpr double grain_kg = pound_kg / 7000.0;
inline constexpr double pound_per_cubic_foot_kg_m3 = pound_kg / (foot_m * foot_m * foot_m);
inline constexpr double degree_rad = std::numbers::pi / 180.0;
inline constexpr double standard_gravity_m_s2 = 9.80665;
inline constexpr double pound_force_n = pound_kg * standard_gravity_m_s2;

constexpr double m_from_mm(double mm) {
    return mm / 1000.0;
}
constexpr double mm_from_m(double m) {
    return m * 1000.0;
}
constexpr double m_from_inch(double inch) {
    return inch * 254.0 / 10000.0;
}
constexpr double inch_from_m(double m) {
    return m * 10000.0 / 254.0;
}
constexpr double m_from_ft(double ft) {
    return ft * 3048.0 / 10000.0;
}
constexpr double ft_from_m(double m) {
    return m * 10000.0 / 3048.0;
}

constexpr double kg_from_g(double g) {
    return g / 1000.0;
}
constexpr double g_from_kg(double kg) {
    return kg * 1000.0;
}
constexpr double kg_from_oz(double oz) {
    return oz * ounce_kg;
}
constexpr double oz_from_kg(double kg) {
    return kg / ounce_kg;
}
constexpr double kg_from_grain(double grain) {
    return grain * grain_kg;
}
constexpr double grain_from_kg(double kg) {
    return kg / grain_kg;
}

constexpr double rad_from_deg(double deg) {
    return deg * degree_rad;
}
constexpr double deg_from_rad(double rad) {
    return rad / degree_rad;
}

/// Temperatures on their scales, not temperature differences.
constexpr double celsius_from_fahrenheit(double fahrenheit) {
    return (fahrenheit - 32.0) / 1.8;
}
constexpr double fahrenheit_from_celsius(double celsius) {
    return celsius * 1.8 + 32.0;
}

/// Time to fall one foot or one metre [s] to speed [m/s], and back. Zero gives infinity.
constexpr double m_s_from_s_ft(double s_ft) {
    return foot_m / s_ft;
}
constexpr double s_ft_from_m_s(double m_s) {
    return foot_m / m_s;
}
constexpr double m_s_from_s_m(double s_m) {
    return 1.0 / s_m;
}
constexpr double s_m_from_m_s(double m_s) {
    return 1.0 / m_s;
}
constexpr double m_s_from_mm_s(double mm_s) {
    return mm_s / 1000.0;
}
constexpr double mm_s_from_m_s(double m_s) {
    return m_s * 1000.0;
}

constexpr double m_s_from_km_h(double km_h) {
    return km_h / 3.6;
}
constexpr double km_h_from_m_s(double m_s) {
    return m_s * 3.6;
}
/// A mile is 5280 feet.
constexpr double m_s_from_mile_h(double mile_h) {
    return mile_h * foot_m * 5280.0 / 3600.0;
}
constexpr double mile_h_from_m_s(double m_s) {
    return m_s * 3600.0 / (foot_m * 5280.0);
}

constexpr double kg_m3_from_g_cm3(double g_cm3) {
    return g_cm3 * 1000.0;
}
constexpr double g_cm3_from_kg_m3(double kg_m3) {
    return kg_m3 / 1000.0;
}
constexpr double m3_from_cm3(double cm3) {
    return cm3 / 1e6;
}
constexpr double cm2_from_m2(double m2) {
    return m2 * 1e4;
}
constexpr double cm3_from_m3(double m3) {
    return m3 * 1e6;
}

constexpr double s_from_min(double min) {
    return min * 60.0;
}
constexpr double min_from_s(double s) {
    return s / 60.0;
}
constexpr double s_from_hour(double hours) {
    return hours * 3600.0;
}
constexpr double hour_from_s(double s) {
    return s / 3600.0;
}

constexpr double n_from_lbf(double lbf) {
    return lbf * pound_force_n;
}

} // namespace evenfall::units
