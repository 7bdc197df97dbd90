#include "water/fall/hull.hpp"

#include "water/fall/added_mass.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace evenfall::fall {

namespace {

constexpr double blasius = 1.328;
constexpr double along_skin_factor = 1.3;
constexpr double along_form = 0.12;
constexpr double along_blunt = 0.24;

void add(HydroBody::Moments& to, double area, double x_m) {
    to.sum += area;
    to.x_m += area * x_m;
    to.xx_m2 += area * x_m * x_m;
}

double filled_share(double exponent) {
    const double g = std::tgamma(1.0 + 1.0 / exponent);
    return g * g / std::tgamma(1.0 + 2.0 / exponent);
}

} // namespace

HydroBody hull(const shape::Lines& lines, double skin_m2, double skin_z_m) {
    const materials::WaterProperties unit{1.0, 1.0};
    HydroBody h;
    double volume = 0.0;
    double largest = 0.0;
    double width_squares = 0.0;  // ∫(half width)² dx
    double height_squares = 0.0; // ∫(half height)² dx
    double strip_heave = 0.0, strip_heave_x = 0.0, strip_heave_xx = 0.0;
    double exponent = 2.0;
    double share = std::numbers::pi / 4.0;
    double covered = 0.0;
    const std::vector<Strip> slices = strips(lines);
    if (slices.empty()) return h;
    h.ends = end_effect_of(slices);
    for (const Strip& s : slices) {
        const double area = s.width_m * s.length_m;
        const double pressure = pressure_drag_coefficient(s) * area;
        const double friction = friction_drag_coefficient(s, 1.0, unit) * area;
        h.slices.push_back({s.x_m, pressure, friction});
        add(h.pressure, pressure, s.x_m);
        add(h.friction, friction, s.x_m);
        if (s.exponent != exponent) {
            exponent = s.exponent;
            share = filled_share(exponent);
        }
        const double section = share * s.width_m * s.chord_m;
        volume += section * s.length_m;
        largest = std::max(largest, section);
        width_squares += 0.25 * s.width_m * s.width_m * s.length_m;
        height_squares += 0.25 * s.chord_m * s.chord_m * s.length_m;
        const double added =
            std::numbers::pi * 0.25 * s.width_m * area * section_added_mass(s.width_m / s.chord_m, share);
        strip_heave += added;
        strip_heave_x += added * s.x_m;
        strip_heave_xx += added * s.x_m * s.x_m;
        h.mean_height_m += s.chord_m * s.length_m;
        covered += s.length_m;
    }
    h.mean_height_m /= covered;

    const double bluntness = std::sqrt(4.0 * largest / std::numbers::pi) / lines.length_m();
    h.along_pressure_m2 = (along_form + along_blunt * std::pow(bluntness, 3)) * largest;
    h.along_friction_m3_2 = along_skin_factor * blasius * skin_m2 / std::sqrt(lines.length_m());
    h.along_z_m = skin_z_m;

    const double half_length = 0.5 * lines.length_m();
    const double half_width = std::sqrt(0.75 * width_squares / half_length);
    const double half_height = std::sqrt(0.75 * height_squares / half_length);
    const EllipsoidShares shares = ellipsoid_shares(half_length, half_width, half_height);
    // The strips of an ellipsoid add up to (half width/half height) of its displaced water, and in pitch to a
    // fifth of that times the half length squared.
    const double strip_share = half_width / half_height;
    const double heave_factor = shares.heave / strip_share;
    const double pitch_factor = shares.pitch_m2 / (strip_share * half_length * half_length / 5.0);
    h.surge_m3 = shares.surge * volume;
    h.heave_m3 = heave_factor * strip_heave;
    h.heave_x_m4 = heave_factor * strip_heave_x;
    const double middle = strip_heave_x / strip_heave;
    const double own = strip_heave_xx - strip_heave * middle * middle;
    h.heave_xx_m5 = pitch_factor * own + h.heave_m3 * middle * middle;
    return h;
}

HydroBody hull(const shape::Body& body) {
    double skin = 0.0;
    double moment = 0.0;
    for (const shape::Segment& s : body.segments) {
        skin += s.skin_m2;
        moment += s.skin_m2 * s.skin_centroid_m.z;
    }
    return hull(*body.lines, skin, skin > 0.0 ? moment / skin : 0.0);
}

} // namespace evenfall::fall
