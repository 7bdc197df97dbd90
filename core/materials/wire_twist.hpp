#pragma once

#include "base/outcome.hpp"

namespace evenfall::wire {

/// A hanger or hinge eye bent round a rod and twisted shut: two legs of one wire, left straight for a bit at
/// the end.
struct TwistedEye {
    double wire_m = 0.9e-3;   ///< diameter, 0.2 to 3 mm
    double inside_m = 2.0e-3; ///< inner diameter of the eye, ≥ 0.5 mm, to 30 mm
    double wrap_rad =
        5.235987755983; ///< how far the wire goes round before the legs meet: 300°, 180° to 360°
    double turns = 6.0; ///< full turns of the legs about each other, 0 to 40
    double pitch_m =
        0.0; ///< length of the twist for one full turn; 0 = 4.5 wire diameters, else ≥ 2 diameters
    double leg_m = 2.0e-3; ///< straight end of each leg behind the twist, 0 to 100 mm
};

struct TwistAnswer {
    double cut_m = 0.0;      ///< of wire to cut, nothing added for waste or for holding it
    double twist_m = 0.0;    ///< length of the twisted part
    double finished_m = 0.0; ///< from the crown of the eye to the end of the legs
    double eye_outside_m = 0.0;
    double twist_outside_m = 0.0; ///< round the two legs: twice the wire
    double mass_kg = 0.0;
    double mandrel_m = 0.0; ///< rod to bend it round, so that it springs back to `inside_m`
    double overbend = 0.0;  ///< how much farther than wanted a bend of the eye's own radius is to go, as a
                            ///< share of its angle
};

/// Eye: the wire's middle runs on a circle of diameter inside + wire; each leg is a helix round the twist's
/// axis whose middle runs at half a wire's distance: per turn √(pitch² + (π·wire)²). Both by plain geometry.
///
/// Springback: a bar of elastic, perfectly plastic metal bent until its whole section yields carries M =
/// σ·d³/6 and opens by Δκ = M/(E·I) = 32σ/(3πE·d) when let go (plastic moment and stiffness of a round bar,
/// any strength of materials text). The wire keeps its length, so an angle is bent farther by the ratio of
/// the radii less one. `yield_pa` 0 leaves it out. Steel: E = 193 GPa (austenitic stainless, from memory).
///
/// Refuses ("/wire_mm" and the like, under `path`): numbers outside the limits above.
[[nodiscard]] Outcome<TwistAnswer> twisted_eye(const TwistedEye& eye, double density_kg_m3, double yield_pa,
                                               const char* path = "");

/// From the crown of the eye to the end of the legs, of whatever numbers.
[[nodiscard]] double finished_m(const TwistedEye& eye);

/// Length of one turn of a hand-twisted pair, in wire diameters. Common practice, no source.
inline constexpr double usual_pitch_in_wires = 4.5;

/// Outer diameter of n wires of diameter 1 twisted round each other: 2 → 2, 3 → 1 + 2/√3 (circle round three
/// touching circles). NaN for others.
[[nodiscard]] double twist_outside(int wires);

/// Diameter of a bare conductor's American Wire Gauge number, 0.127 mm·92^((36 − n)/39) (ASTM B258, from
/// memory): for copper and the like. Steel wire is sold by other gauges or by its diameter: a bare "gauge" is
/// never converted silently.
[[nodiscard]] double awg_m(int number);

} // namespace evenfall::wire
