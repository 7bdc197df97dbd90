#pragma once

// Righting arms, and advice before the wood is cut.

#include "water/afloat/rest.hpp"

#include <optional>
#include <vector>

namespace evenfall::afloat {

/// One point of the righting-arm curve.
struct RightingPoint {
    double heel_rad = 0.0;
    double arm_m = 0.0;     ///< GZ: > 0 turns the lure back towards upright
    double pitch_rad = 0.0; ///< pitch of trim at this heel
    bool is_trimmed = true; ///< false: no balancing pitch was found at this heel, the last one was kept; not
                            ///< a point of the curve
};

enum class TrimMode {
    free,  ///< at each heel the lure pitches until it balances fore and aft
    fixed, ///< fixed at the pitch of the upright rest (0 where there is none)
};

/// GZ(φ) to starboard from 0 to 180°, by cutting the hull at each heel; no small-angle formula.
///
/// arm = (dE/dφ)/(m·g) with volume (and, with free trim, pitch) balanced: the horizontal distance athwart
/// between B and G, times cos θ. So the area under the curve is the work of turning the lure over, per
/// weight.
struct RightingCurve {
    std::vector<RightingPoint> points; ///< ascending in heel
    double peak_arm_m =
        0.0; ///< greatest arm; 0 where none is positive. Points that are not trimmed are ignored
    double peak_heel_rad = 0.0;
    std::optional<double> list_rad; ///< where the arm first rises through zero: 0 when upright is stable, > 0
                                    ///< for a lure with a list
    /// Where the arm next falls through zero; π when it never does. Absent without list_rad, and where no
    /// pitch balances at some heel in between.
    std::optional<double> vanishing_rad;
};

/// Empty where the lure sinks.
///
///   steps    intervals from 0 to 180°, at least 4; 18 gives a point every 10°
///
/// The heels of list and vanishing are computed by cutting again, to 1e-6 rad.
[[nodiscard]] RightingCurve righting_curve(const Afloat& afloat, TrimMode trim, int steps = 18);

/// Where a curve rises through zero (heel and pitch interpolated linearly), and both of its ends: good starts
/// for rests().
[[nodiscard]] std::vector<Attitude> headings_of(const RightingCurve& curve);

/// GZ at one heel, starting from a nearby pitch.
[[nodiscard]] RightingPoint righting_arm(const Afloat& afloat, TrimMode trim, double heel_rad,
                                         double start_pitch_rad);

/// Fully submerged there is no waterplane: GZ = BG·sin φ with BG the height of B above G in the lure's axes.
struct UnderWater {
    double bg_m = 0.0;
    double righting_nm_per_deg =
        0.0; ///< m·g·BG per degree of heel from upright [N·m/°]; negative: rolls over

    [[nodiscard]] double arm_m(double heel_rad) const;
};
[[nodiscard]] UnderWater under_water(const Afloat& afloat);

/// Will it float upright? A deep, narrow floater can roll over although its centre of gravity is low: the
/// waterplane near the back is too narrow, and B too low, until nearly all of the lure is under water.
struct UprightAdvice {
    bool is_known = false;  ///< false where it sinks, or stands on nose or tail
    bool is_stable = false; ///< released there, it comes to rest upright
    double gm_m = 0.0;      ///< transverse, at draft and pitch when kept from heeling
    double g_off_m = 0.0;   ///< there, distance of G to starboard of B: with a large offset a lure lies over
                            ///< even with positive GM
    /// How far G must come down, at constant mass, for GM = 0; 0 where GM is positive.
    double lower_g_m = 0.0;
    /// Mass to add at G for GM = 0; 0 where stable; absent where it rolls over even at the deepest draft, and
    /// where GM is positive but G too far off centre.
    std::optional<double> heavier_kg;
};
[[nodiscard]] UprightAdvice upright_advice(const Afloat& afloat);

} // namespace evenfall::afloat
