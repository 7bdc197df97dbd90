#include "water/fall/drag.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace evenfall::fall {

namespace {

constexpr int strip_count = 48;
constexpr double blasius = 1.328; // friction of a whole laminar plate, one side

} // namespace

DragFactor drag_factor_at(double reynolds) {
    constexpr double slowest = 500.0;
    constexpr double fastest = 50000.0;
    return {reynolds > fastest ? std::sqrt(fastest / reynolds) : 1.0,
            reynolds < slowest ? std::pow(slowest / std::max(reynolds, 1.0), 0.4) : 1.0};
}

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
    const double thickness = std::min(1.0, 2.0 * slenderness);
    return ellipse + 0.35 * thickness * squarer / (1.0 + 0.5 * squarer);
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

EndEffect end_effect_of(const std::vector<Strip>& strips) {
    constexpr double ball = 0.37;
    constexpr double stub = 0.68; // a cylinder as long as thick
    constexpr double ellipse_fullness = std::numbers::pi / 4.0;
    constexpr double slender = 5.0;
    constexpr double short_below = 3.5;
    constexpr double longest_plate = 20.0;
    double length = 0.0;
    double from_above = 0.0;
    double from_side = 0.0;
    double widest = 0.0;
    for (const Strip& s : strips) {
        length += s.length_m;
        from_above += s.width_m * s.length_m;
        from_side += s.chord_m * s.length_m;
        widest = std::max(widest, s.width_m);
    }
    const double slenderness = std::max(1.0, ellipse_fullness * length * length / from_above);
    const double fullness = from_above / (length * widest);
    const double flatness = from_side / from_above;

    const double full = std::clamp((fullness - ellipse_fullness) / (1.0 - ellipse_fullness), 0.0, 1.0);
    const double compact = ball + full * (stub - ball);
    const double far = std::min(1.0, (1.0 - 1.0 / slenderness) / (1.0 - 1.0 / slender));
    const double thick = compact + far * (end_effect.usual - compact);
    const double thin = 0.53 + 0.0105 * std::min(slenderness, longest_plate);
    const double thickness = std::min(1.0, flatness * flatness / (0.6 * 0.6));
    const double usual = thin + thickness * (thick - thin);

    const double is_short = std::clamp((slender - slenderness) / (slender - short_below), 0.0, 1.0);
    double low = end_effect.low / end_effect.usual;
    double high = end_effect.high / end_effect.usual;
    low += is_short * (0.78 - low);
    high += is_short * (1.30 - high);
    const bool is_measured = !(slenderness < slender && fullness < 0.7) && from_side < length * length;
    if (!is_measured) {
        low = 0.6;
        high = 1.6;
    }
    return {low * usual, usual, high * usual, is_measured};
}

} // namespace evenfall::fall
