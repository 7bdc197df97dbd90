#pragma once

#include "base/outcome.hpp"

namespace evenfall::wire {

/// A hanger or hinge eye bent round a rod, its two legs twisted together and left straight at the end.
struct TwistedEye {
    double wire_m = 0.9e-3;           ///< diameter, 0.2 to 3 mm
    double inside_m = 2.0e-3;         ///< inner diameter of the eye, ≥ 0.5 mm, to 30 mm
    double wrap_rad = 5.235987755983; ///< angle of the bend before the legs meet: 300°, 180° to 360°
    double turns = 6.0;               ///< full turns of the twist, 0 to 40
    double pitch_m = 0.0;  ///< twist length per full turn; 0 = 4.5 wire diameters, else ≥ 2 diameters
    double leg_m = 2.0e-3; ///< straight end of each leg after the twist, 0 to 100 mm
};

struct TwistAnswer {
    double cut_m = 0.0;      ///< length of wire, without allowance for waste or for holding it
    double twist_m = 0.0;    ///< length of the twisted part
    double finished_m = 0.0; ///< from the crown of the eye to the end of the legs
    double eye_outside_m = 0.0;
    double twist_outside_m = 0.0; ///< across both legs: twice the wire
    double mass_kg = 0.0;
    double mandrel_m = 0.0; ///< rod to bend it round, so that it springs back to `inside_m`
    double overbend =
        0.0; ///< extra angle needed for a bend of the eye's radius, as a share of the angle wanted
};

/// Eye: the wire's centre line is a circle of diameter inside + wire. Twist: the centre line of each leg is a
/// helix of radius wire/2, so one turn takes √(pitch² + (π·wire)²). Both by plain geometry.
///
/// Springback: a bar of elastic, perfectly plastic metal bent until its whole section yields carries M =
/// σ·d³/6 and opens by Δκ = M/(E·I) = 32σ/(3πE·d) when released (plastic moment and stiffness of a round bar,
/// any strength of materials text). The wire keeps its length, so an angle must be overbent by the ratio of
/// the radii less one. `yield_pa` 0 leaves springback out. Steel: E = 193 GPa (austenitic stainless, from
/// memory).
///
/// Refuses ("/wire_mm" and the like, under `path`): numbers outside the limits above.
[[nodiscard]] Outcome<TwistAnswer> twisted_eye(const TwistedEye& eye, double density_kg_m3, double yield_pa,
                                               const char* path = "");

/// Rod to bend an eye round, so that it springs back to `inside_m`.
[[nodiscard]] double mandrel_m(double inside_m, double wire_m, double yield_pa);

/// Length from the crown of the eye to the end of the legs; limits are not checked.
[[nodiscard]] double finished_m(const TwistedEye& eye);

/// Twist length per turn of a hand-twisted pair, in wire diameters. Common practice, no source.
inline constexpr double usual_pitch_in_wires = 4.5;

/// Outer diameter of n wires of diameter 1 twisted together: 2 → 2, 3 → 1 + 2/√3 (circle round three touching
/// circles). NaN for other n.
[[nodiscard]] double twist_outside(int wires);

/// Diameter by American Wire Gauge number, 0.127 mm·92^((36 − n)/39) (ASTM B258, from memory): for copper and
/// the like. Steel wire is sold by other gauges or by its diameter, so a bare "gauge" is never converted.
[[nodiscard]] double awg_m(int number);

} // namespace evenfall::wire
