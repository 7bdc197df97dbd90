#pragma once

// Chains made directly, without a document: the three bodies of the prototype's regression values.

#include "water/fall/added_mass.hpp"
#include "water/fall/drag.hpp"
#include "water/swim/chain.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <vector>

namespace evenfall::testing {

/// A body of straight tapers, its half height and half width in one proportion all along.
struct SwimBody {
    struct Lead {
        double x_m, mass_kg;
    };
    struct Hook {
        double x_m, mass_kg, drag_m2;
    };
    struct Fin {
        double from_m, to_m, height_from_m, height_to_m;
    };
    double length_m, half_height_m, half_width_m, fullness, tie_m;
    std::vector<double> cuts_m;
    double pin_aft_m, swing_rad;
    std::vector<Lead> lead;
    std::vector<Hook> hooks;
    std::vector<Fin> fins; ///< none or one
    int slices = 12;       ///< of each segment
    double pin_radius_m = 0.6e-3;

    /// Half height over its largest.
    [[nodiscard]] static double taper(double x_per_length) {
        constexpr std::array x{0.0, 0.02, 0.10, 0.30, 0.60, 0.90, 1.0};
        constexpr std::array y{0.20, 0.45, 0.75, 1.0, 0.85, 0.45, 0.30};
        std::size_t k = 1;
        while (k + 1 < x.size() && x_per_length > x[k])
            ++k;
        return y[k - 1] + (y[k] - y[k - 1]) * (x_per_length - x[k - 1]) / (x[k] - x[k - 1]);
    }
    [[nodiscard]] double height_m(double x_m) const {
        return x_m < length_m ? 2.0 * half_height_m * taper(x_m / length_m) : 0.0;
    }
};

inline constexpr double swim_water_kg_m3 = 999.1;
inline constexpr double swim_water_m2_s = 1.138e-6;

/// The same rules as workshop/swim_chain.cpp, but with wood of 520 kg/m³ and sections in closed form.
inline swim::Chain chain_of(const SwimBody& body) {
    constexpr double rho = swim_water_kg_m3, wood_kg_m3 = 520.0, plastic_kg_m3 = 1050.0, plate_m = 2.5e-3;
    constexpr double pi = std::numbers::pi;
    swim::Chain chain;
    chain.water_kg_m3 = rho;
    chain.tie_x_m = body.tie_m;
    const double end_m = body.fins.empty() ? body.length_m : body.fins[0].to_m;
    chain.length_m = end_m;
    const std::size_t n = body.cuts_m.size() + 1;
    const double share =
        std::pow(std::tgamma(1.0 + 1.0 / body.fullness), 2) / std::tgamma(1.0 + 2.0 / body.fullness);
    double squares = 0.0, largest = 0.0;
    constexpr int fine = 480;
    for (int k = 0; k < fine; ++k) {
        const double t = SwimBody::taper((k + 0.5) / fine);
        squares += t * t * body.length_m / fine;
        largest = std::max(largest, t * t);
    }
    const double long_share = std::sqrt(0.75 * squares / (0.5 * body.length_m));
    const auto ellipsoid = fall::ellipsoid_shares(0.5 * body.length_m, long_share * body.half_height_m,
                                                  long_share * body.half_width_m);
    const double ends = ellipsoid.heave / (body.half_height_m / body.half_width_m);
    const double skin = 0.5 * rho * 1.3 * 1.328 * std::sqrt(swim_water_m2_s / body.length_m);
    const double section_m2 = 4.0 * share * body.half_height_m * body.half_width_m;
    chain.segments.resize(n);
    chain.joints.assign(n - 1, {{body.swing_rad, body.swing_rad}, body.pin_radius_m});
    double hinge = body.tie_m;
    for (std::size_t i = 0; i < n; ++i) {
        swim::Segment& s = chain.segments[i];
        const double from = i == 0 ? 0.0 : body.cuts_m[i - 1];
        const double to = i + 1 == n ? body.length_m : body.cuts_m[i];
        const double next = i + 1 == n ? end_m : body.cuts_m[i] + body.pin_aft_m;
        s.length_m = next - hinge;
        const auto weigh = [&](double x_m, double kg) {
            s.mass_kg += kg;
            s.moment_kg_m += kg * (x_m - hinge);
            s.inertia_kg_m2 += kg * (x_m - hinge) * (x_m - hinge);
        };
        const double ds = (to - from) / body.slices;
        double volume = 0.0;
        for (int k = 0; k < body.slices; ++k) {
            const double x = from + (k + 0.5) * ds;
            const double t = SwimBody::taper(x / body.length_m);
            const double h = 2.0 * body.half_height_m * t, b = 2.0 * body.half_width_m * t;
            volume += section_m2 * t * t * ds;
            weigh(x, wood_kg_m3 * section_m2 * t * t * ds);
            // As an elliptic disc.
            s.inertia_kg_m2 += wood_kg_m3 * section_m2 * t * t * ds * (ds * ds / 12.0 + b * b / 16.0);
            const double cd = fall::pressure_drag_coefficient({x, ds, h, b, body.fullness});
            const double p = 0.5 * h, q = 0.5 * b;
            const double girth = pi * (3.0 * (p + q) - std::sqrt((3.0 * p + q) * (p + 3.0 * q)));
            s.slices.push_back({x - hinge, ds, h, rho * pi * 0.25 * h * h * ends, 0.5 * rho * cd * h * ds,
                                skin * girth * ds});
        }
        s.surge_kg = ellipsoid.surge * rho * volume;
        s.form_kg_m = 0.5 * rho * 0.12 * section_m2 * largest / static_cast<double>(n);
        for (const auto& l : body.lead)
            if (l.x_m >= from && l.x_m < to) weigh(l.x_m, l.mass_kg);
        for (const auto& k : body.hooks) {
            if (k.x_m < from || k.x_m >= to) continue;
            weigh(k.x_m, k.mass_kg);
            s.parts.push_back({k.x_m - hinge, 0.5 * rho * k.drag_m2});
        }
        if (i + 1 == n) {
            for (const auto& f : body.fins) {
                constexpr int pieces = 6;
                const double df = (f.to_m - f.from_m) / pieces;
                for (int k = 0; k < pieces; ++k) {
                    const double x = f.from_m + (k + 0.5) * df;
                    const double h = f.height_from_m + (f.height_to_m - f.height_from_m) * (k + 0.5) / pieces;
                    const double wood = body.height_m(x);
                    const double beyond = std::max(0.0, h - wood);
                    weigh(x, plastic_kg_m3 * plate_m * beyond * df);
                    s.slices.push_back({x - hinge, df, h, rho * pi * 0.25 * h * h * ends,
                                        0.5 * rho * 1.9 * beyond * df, skin * 2.0 * beyond * df, true,
                                        rho * pi * 0.25 * wood * wood * ends});
                }
            }
        }
        hinge = next;
    }
    return chain;
}

inline SwimBody body_a140() {
    constexpr double degree = std::numbers::pi / 180.0;
    return {0.140,
            0.015,
            0.009,
            2.2,
            0.004,
            {0.052, 0.096},
            0.002,
            22 * degree,
            {{0.025, 0.0075}, {0.070, 0.006}},
            {{0.033, 0.0016, 100e-6}, {0.078, 0.0014, 90e-6}},
            {}};
}
inline SwimBody body_b170() {
    constexpr double degree = std::numbers::pi / 180.0;
    return {0.170,
            0.0175,
            0.0105,
            2.2,
            0.005,
            {0.050, 0.090, 0.128},
            0.003,
            18 * degree,
            {{0.030, 0.011}, {0.068, 0.009}, {0.105, 0.004}},
            {{0.040, 0.0021, 120e-6}, {0.092, 0.0018, 110e-6}},
            {{0.160, 0.195, 0.010, 0.034}}};
}
inline SwimBody body_c230() {
    constexpr double degree = std::numbers::pi / 180.0;
    return {0.230,
            0.0225,
            0.0135,
            2.4,
            0.006,
            {0.060, 0.108, 0.152, 0.192},
            0.0035,
            15 * degree,
            {{0.030, 0.026}, {0.080, 0.024}, {0.130, 0.014}},
            {{0.050, 0.0035, 180e-6}, {0.125, 0.003, 160e-6}},
            {{0.220, 0.262, 0.014, 0.042}}};
}

} // namespace evenfall::testing
