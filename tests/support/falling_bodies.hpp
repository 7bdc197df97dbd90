#pragma once

#include "support/bars.hpp"
#include "support/prototype_body.hpp"
#include "water/fall/descent.hpp"

#include <numbers>

namespace evenfall::support {

inline constexpr materials::WaterProperties fresh_20{998.207, 1.0016e-3};

/// A round bar of one density, with G below B by `g_below_m`.
inline fall::FallingLure round_bar(double length_m, double diameter_m, double density_kg_m3,
                                   double g_below_m = 0.0, const materials::WaterProperties& water = fresh_20,
                                   const fall::ModelFactors& closure = {}) {
    const double r = 0.5 * diameter_m;
    const BarLines lines(length_m, r, r, 2.0);
    fall::MassProperties w;
    w.displaced_m3 = std::numbers::pi * r * r * length_m;
    w.mass_kg = density_kg_m3 * w.displaced_m3;
    w.b_m = {0.5 * length_m, 0.0, 0.0};
    w.g_m = {0.5 * length_m, 0.0, -g_below_m};
    w.pitch_inertia_kg_m2 = w.mass_kg * (length_m * length_m / 12.0 + r * r / 4.0 + g_below_m * g_below_m);
    return {fall::hull(lines, 2.0 * std::numbers::pi * r * length_m, 0.0), w, {}, water, closure};
}

/// The prototype's body with uniform density, except that G is shifted forward of and below B.
inline fall::MassProperties prototype_weights(double in_water_kg, double g_forward_m, double g_below_m,
                                              const materials::WaterProperties& water) {
    fall::MassProperties w;
    w.displaced_m3 = prototype_volume_m3;
    w.mass_kg = water.density_kg_m3 * w.displaced_m3 + in_water_kg;
    w.b_m = {prototype_middle_m, 0.0, 0.0};
    w.g_m = {prototype_middle_m - g_forward_m, 0.0, -g_below_m};
    const shape::Body whole = shape::cut(prototype_body(), {}).value();
    const shape::Segment& s = whole.segments.front();
    w.pitch_inertia_kg_m2 =
        w.mass_kg * (s.inertia_m5.yy / s.volume_m3 + g_forward_m * g_forward_m + g_below_m * g_below_m);
    return w;
}

inline fall::FallingLure prototype_lure(double in_water_kg, double g_forward_m, double g_below_m,
                                        const materials::WaterProperties& water = fresh_20,
                                        const fall::ModelFactors& closure = {}) {
    return {fall::hull(*prototype_body(), prototype_skin_m2, 0.0),
            prototype_weights(in_water_kg, g_forward_m, g_below_m, water),
            {},
            water,
            closure};
}

/// One step of the classical fourth-order Runge-Kutta method over (along, across, pitching, pitch, depth,
/// forward).
inline std::array<double, 6> rk4_step(const fall::Motion& motion, const std::array<double, 6>& v, double dt) {
    const auto rate = [&motion](const std::array<double, 6>& s) {
        const auto r = motion.rates({s[0], s[1], s[2], s[3]});
        const double sine = std::sin(s[3]);
        const double cosine = std::cos(s[3]);
        return std::array<double, 6>{
            r[0], r[1], r[2], s[2], -s[0] * sine + s[1] * cosine, s[0] * cosine + s[1] * sine};
    };
    const auto moved = [&v](const std::array<double, 6>& k, double by) {
        std::array<double, 6> out = v;
        for (std::size_t i = 0; i < 6; ++i)
            out[i] += by * k[i];
        return out;
    };
    const auto a = rate(v);
    const auto b = rate(moved(a, 0.5 * dt));
    const auto c = rate(moved(b, 0.5 * dt));
    const auto d = rate(moved(c, dt));
    std::array<double, 6> out = v;
    for (std::size_t i = 0; i < 6; ++i)
        out[i] += dt / 6.0 * (a[i] + 2.0 * b[i] + 2.0 * c[i] + d[i]);
    return out;
}

} // namespace evenfall::support
