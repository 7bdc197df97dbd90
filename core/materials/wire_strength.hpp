#pragma once

#include "base/problem.hpp"

#include <array>

namespace evenfall::wire {

/// How hard the wire is drawn: it affects strength more than the diameter does.
enum class Temper {
    spring, ///< type 302/304 spring wire
    soft,   ///< annealed lock wire
};

struct StrengthRange {
    double low_pa = 0.0;
    double high_pa = 0.0;
};

/// Tensile strength of stainless wire.
///
///   spring  ASTM A313, type 302 class 1, from a reprint, not re-read; sizes 0.508 to 1.295 mm; linear
///           between the sizes, beyond them the nearest size's figure
///   soft    75 to 120 ksi (517 to 827 MPa), from memory
[[nodiscard]] StrengthRange tensile(Temper temper, double wire_m);

/// Yield of drawn wire: 0.8 of the low end of its strength. Common practice, no source.
[[nodiscard]] inline double yield_pa(Temper temper, double wire_m) {
    return 0.8 * tensile(temper, wire_m).low_pa;
}

/// Dimensions of a hinge or hanger that its strength depends on.
struct PinAndWire {
    Temper temper = Temper::spring;
    double wood_shear_pa = 7e6;    ///< along the grain, dry (materials::shear_along_grain_pa)
    double wood_bearing_pa = 20e6; ///< under the pin (materials::pin_bearing_pa)
    double wire_m = 0.9e-3;
    double hole_m = 2.0e-3; ///< diameter of the hole that the twist is glued into
    double glued_m = 20e-3; ///< depth of the glued part
    bool has_pin = true;    ///< false: a hanger, or eyes linked directly in each other
    double pin_m = 1.2e-3;
    double pin_span_m = 5e-3;     ///< free length of the pin between the wood on either side, at the eye
    double pin_in_wood_m = 10e-3; ///< total length of the pin that bears on wood
    double pin_wall_m = 3e-3;     ///< wood between the pin and the face towards which it is pulled
    int eyes = 1;                 ///< 2 or more share the load, not always evenly: counted as 1.5
};

enum class Weakest { eye_opens, twist_pulls_out, pin_shears, pin_bends, wood_under_pin, wall_before_pin };

/// Estimated load at which each part fails [N]; pin figures are 0 where there is no pin.
///
///   eye       2·A·σ·0.6: two legs of drawn wire; 0.6 for the loss by bending, own choice, no published
///             figure
///   pull-out  π·hole·depth·0.43·shear: the wood shears beside a good glue line. Counted is 0.43 of what the
///             species bears dry: wet it has down to 0.6 of it (basswood 600 of 990 psi: Wood Handbook, Table
///             5-3b, from memory), a weak piece 0.72 (two deviations of 14 %). Starved glue lines lower it
///   shear     2·A·0.6·σ: double shear (usual rule of mechanical design)
///   bending   4·M/span with the plastic moment σ·d³/6: central load on a simply supported pin
///   wood      bearing·d·length
///   wall      2·wall·length·0.43·shear: the pin shears a strip out towards the face, on two planes along the
///             grain
struct Strength {
    double eye_n = 0.0;
    double pull_out_n = 0.0;
    double pin_shear_n = 0.0;
    double pin_bend_n = 0.0;
    double wood_n = 0.0;
    double wall_n = 0.0;
    Weakest weakest = Weakest::eye_opens;
    double least_n = 0.0;
    double safety = 0.0; ///< least_n over the line's strength; a jerk on a stretched line calls for 2 or more
};
[[nodiscard]] Strength strength(const PinAndWire& hold, double line_n);

} // namespace evenfall::wire
