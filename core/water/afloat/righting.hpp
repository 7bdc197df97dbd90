#pragma once

// Righting arms, and what they say before the wood is cut.

#include "water/afloat/rest.hpp"

#include <optional>
#include <vector>

namespace evenfall::afloat {

/// One point of the righting-arm curve.
struct RightingPoint {
    double heel_rad = 0.0;
    double arm_m = 0.0;     ///< GZ: > 0 turns the lure back towards upright
    double pitch_rad = 0.0; ///< at which it trims while held at this heel
    bool is_trimmed = true; ///< false: no pitch was found that balances at this heel, the last one was kept:
                            ///< no arm of the curve
};

enum class Trim {
    free,  ///< at each heel the lure pitches until it balances fore and aft
    fixed, ///< held at the pitch of the upright rest (0 where there is none)
};

/// GZ(φ) to starboard from 0 to 180°, by cutting the hull at each heel; no small-angle formula.
///
/// arm = (dE/dφ)/(m·g) with volume (and, where trim is free, pitch) balanced: the horizontal distance between
/// B and G athwart, times cos θ. So the area under the curve is the work of turning the lure over, per
/// weight.
struct RightingCurve {
    std::vector<RightingPoint> points; ///< ascending in heel
    double peak_arm_m =
        0.0; ///< greatest arm; 0 where none is positive. Points that are not trimmed count nowhere
    double peak_heel_rad = 0.0;
    std::optional<double>
        list_rad; ///< where the arm first rises through zero: 0 when upright is stable, > 0 a lure that leans
    /// Where it next falls through zero, π when it never does; absent without list_rad, and where it goes
    /// over heels at which no pitch balances.
    std::optional<double> vanishing_rad;
    [[nodiscard]] double range_rad() const {
        return list_rad && vanishing_rad ? *vanishing_rad - *list_rad : 0.0;
    }
};

/// Empty where the lure sinks.
///
///   steps    intervals from 0 to 180°, at least 4; 18 gives a point every 10°
/// The heels of list and vanishing are found within 1e-6 rad of the curve between the points, by cutting
/// again.
[[nodiscard]] RightingCurve righting_curve(const Afloat& afloat, Trim trim, int steps = 18);

/// Where a curve goes through zero from below upwards, heel and pitch between the points read off straight,
/// and both of its ends: places from which to look for rests.
[[nodiscard]] std::vector<Attitude> headings_of(const RightingCurve& curve);

/// GZ at one heel, from the depth and pitch of another state near it.
[[nodiscard]] RightingPoint righting_arm(const Afloat& afloat, Trim trim, double heel_rad,
                                         double start_pitch_rad);

/// Wholly under water there is no waterplane: GZ = BG·sin φ with BG the height of B over G in the lure's
/// axes.
struct UnderWater {
    double bg_m = 0.0;
    double righting_nm_per_deg =
        0.0; ///< m·g·BG per degree of heel from upright [N·m/°]; negative: rolls over

    [[nodiscard]] double arm_m(double heel_rad) const;
};
[[nodiscard]] UnderWater under_water(const Afloat& afloat);

/// Will it stay upright afloat? A deep, narrow floater can roll over although its centre of gravity is low:
/// the waterplane near the back is too narrow, and B is too low, until nearly all of the lure is under.
struct UprightAdvice {
    bool is_known = false;  ///< false where it sinks, or stands on nose or tail rather than lie level
    bool is_stable = false; ///< let go from there it comes to rest upright
    double gm_m = 0.0;      ///< transverse, at the draft and pitch in which it lies when kept from heeling
    double g_off_m =
        0.0; ///< there, how far G lies to starboard of B: enough of it lays a lure down whose GM is positive
    /// How much G must come down, mass as it is, for GM = 0; 0 where GM is positive.
    double lower_g_m = 0.0;
    /// How much mass must be added at G for GM = 0; 0 where stable, absent where even the deepest float rolls
    /// over, and where GM is positive and G too far off.
    std::optional<double> heavier_kg;
};
[[nodiscard]] UprightAdvice upright_advice(const Afloat& afloat);

} // namespace evenfall::afloat
