#include "water/fall/drag.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace evenfall::fall {

namespace {

constexpr int strip_count = 48;
constexpr double blasius = 1.328; // friction of a whole laminar plate, one side

} // namespace

double equivalent_exponent(double filled_share) {
    // With u = 1/n the missing share 1 − A/(4ab) starts as π²u²/6, so u is a smooth function of its square
    // root.
    const double y = std::sqrt(std::clamp(1.0 - filled_share, 0.0, 0.5));
    const double u =
        y * (0.78189254 + y * (0.38500146 + y * (0.72842864 + y * (-1.06780811 + y * 1.48712723))));
    return std::clamp(1.0 / std::max(u, 1e-9), 1.0, 200.0);
}

double pressure_drag_coefficient(const Strip& strip) {
    const double slenderness = strip.chord_m / strip.width_m;
    const double ellipse = slenderness >= 1.0 ? 1.1 / slenderness : 1.98 - 0.88 * std::pow(slenderness, 1.25);
    const double squarer = std::max(strip.exponent - 2.0, 0.0);
    return ellipse + 0.35 * squarer / (1.0 + 0.5 * squarer);
}

double friction_drag_coefficient(const Strip& strip, double speed_m_s,
                                 const materials::WaterProperties& water) {
    const double reynolds = water.density_kg_m3 * speed_m_s * strip.chord_m / water.viscosity_pa_s;
    return 2.0 * blasius / std::sqrt(reynolds) * (1.0 + strip.chord_m / strip.width_m);
}

double section_drag_coefficient(const Strip& strip, double speed_m_s,
                                const materials::WaterProperties& water) {
    return friction_drag_coefficient(strip, speed_m_s, water) + pressure_drag_coefficient(strip);
}

std::vector<Strip> strips(const shape::Lines& lines) {
    std::vector<Strip> slices;
    slices.reserve(strip_count);
    const double half_length = lines.length_m() / 2.0;
    const double middle = lines.breakpoints_m().front() + half_length;
    const double step = std::numbers::pi / strip_count;
    double parameter = std::nan("");
    double exponent = 2.0;
    for (int i = 0; i < strip_count; ++i) {
        const double angle = (i + 0.5) * step;
        const double x = middle - half_length * std::cos(angle);
        const shape::Station station = lines.at(x);
        if (!(station.half_width_m > 0.0 && station.half_height_m > 0.0)) continue;
        if (station.parameter != parameter) { // most bodies keep one section along their length
            parameter = station.parameter;
            exponent = equivalent_exponent(lines.family().moments(parameter).area / 4.0);
        }
        slices.push_back({x, half_length * std::sin(angle) * step, 2.0 * station.half_width_m,
                          2.0 * station.half_height_m, exponent});
    }
    return slices;
}

} // namespace evenfall::fall
