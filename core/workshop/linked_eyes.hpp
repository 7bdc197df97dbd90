#pragma once

namespace evenfall::joints {

/// Two eyes that hang in each other, one on each segment: rings of round wire, each on a twisted neck that
/// leads to its own segment. Their planes are square to each other. The fore eye's plane leans by `lean_rad`
/// out of the level: at 0 one eye lies level and the other stands upright, at 45° both lean.
struct LinkedEyes {
    double wire_m = 0.9e-3;   ///< d, above 0
    double inside_m = 2.0e-3; ///< D; below d no wire goes through
    double lean_rad = 0.0;    ///< 0 to 90°
};

/// How far the one eye may be moved against the other while both necks are in line, from stop to stop.
struct LinkSlop {
    double fore_aft_m = 0.0;
    double up_down_m = 0.0;
    double sideways_m = 0.0;
};

/// By plain geometry. Seen square to either eye, the other's wire is a disc of diameter d in a hole of
/// diameter D, so the eye moves within a disc of diameter D − d in its own plane. Fore-aft lies in both
/// planes: D − d, from taut to pushed together (at either end crown touches crown). A move across the necks
/// that lies in one of the planes, as with one level and one upright eye, has D − d as well. At an angle λ to
/// one plane it goes by cosλ in that and by sinλ in the other, and the larger share stops it at (D −
/// d)/max(cosλ, sinλ), or a little sooner, as the rings curve towards each other: that is found by halving on
/// link_clearance. Each by itself, where the others are midway; taut eyes have none across. 0 where D ≤ d.
[[nodiscard]] LinkSlop link_slop(const LinkedEyes& eyes);

/// Where the aft eye's middle stands, from the fore eye's. x aft, y to starboard, z up.
struct LinkOffset {
    double x_m = 0.0;
    double y_m = 0.0;
    double z_m = 0.0;
};

/// Least distance of surface from surface while the aft eye is turned by `swing_rad` about the upright [m];
/// below 0 they run into each other. Eyes are circles of diameter D + d thickened to d; necks are straight
/// bars of two wires' diameter that begin half a wire outside the ring's own middle, so that they do not
/// narrow it. NaN where the rings are not linked.
[[nodiscard]] double link_clearance(const LinkedEyes& eyes, double swing_rad, const LinkOffset& offset);

/// The largest swing, either way, at which some offset still keeps wire from wire and neck; at most
/// `most_rad`. Both ways are one: half a turn about the necks' common line takes the one into the other. 0
/// where D < d.
///
/// Searched: an offset of most clearance from several starts by steps that halve, at angles that halve the
/// bracket down to a tenth of a degree; below 120° the search may stop short by half a degree, never beyond.
/// Rings that can be turned to an angle can be turned to any smaller one: they slide back the way they came.
/// Wood is not looked at (joints/swing.hpp). One level and one upright eye never stop each other below 120°:
/// the aft ring slides round the fore one. At D = d, where it turns about the fore eye's middle, neck meets
/// neck at cosψ = −0.6, 126.9°. Eyes that both lean stop each other sooner. Against triangle meshes:
/// tests/mesh/linked_eyes_test.cpp.
[[nodiscard]] double link_swing(const LinkedEyes& eyes, double most_rad);

} // namespace evenfall::joints
