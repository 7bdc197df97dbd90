#pragma once

namespace evenfall::joints {

/// Two linked eyes, one on each segment: rings of round wire, each on a twisted neck that leads to its own
/// segment. Their planes are perpendicular. The fore eye's plane is inclined by `lean_rad` to the horizontal:
/// at 0 one eye is horizontal and the other vertical, at 45° both are inclined.
struct LinkedEyes {
    double wire_m = 0.9e-3;   ///< d, above 0
    double inside_m = 2.0e-3; ///< D; below d the wire does not fit through
    double lean_rad = 0.0;    ///< 0 to 90°
};

/// Travel of one eye against the other with both necks in line, from stop to stop.
struct LinkPlay {
    double fore_aft_m = 0.0;
    double up_down_m = 0.0;
    double sideways_m = 0.0;
};

/// By plain geometry. Seen perpendicular to either eye, the other's wire is a disc of diameter d in a hole of
/// diameter D, so the eye moves within a disc of diameter D − d in its own plane. Fore-aft is in both planes:
/// D − d, from taut to pushed together (at either end crown touches crown). A move across the necks within
/// one of the planes, as with one horizontal and one vertical eye, has D − d too. At an angle λ to one plane
/// its components are cosλ in that plane and sinλ in the other, and the larger one stops it at (D −
/// d)/max(cosλ, sinλ), or slightly earlier, as the rings curve towards each other: found by bisection on
/// link_clearance. Each direction by itself, with the others centred; taut eyes have none across. 0 where D ≤
/// d.
[[nodiscard]] LinkPlay link_play(const LinkedEyes& eyes);

/// Centre of the aft eye from that of the fore eye. x aft, y to starboard, z up.
struct LinkOffset {
    double x_m = 0.0;
    double y_m = 0.0;
    double z_m = 0.0;
};

/// Least distance between the surfaces with the aft eye rotated by `swing_rad` about the vertical [m]; below
/// 0 they overlap. Eyes are circles of diameter D + d thickened to d; necks are straight bars of two wires'
/// diameter that begin half a wire outside the ring's centre line, so that they do not narrow it. NaN where
/// the rings are not linked.
[[nodiscard]] double link_clearance(const LinkedEyes& eyes, double swing_rad, const LinkOffset& offset);

/// The largest swing, to either side, at which some offset still keeps wire clear of wire and neck; at most
/// `most_rad`. Both sides are equal: half a turn about the necks' common line maps one to the other. 0 where
/// D < d.
///
/// Search: an offset of greatest clearance from several starts with halving steps, at angles by bisection to
/// a tenth of a degree; below 120° the result may be too small by half a degree, never too large. Rings that
/// can be rotated to an angle can be rotated to any smaller one, by the reverse path. Wood is not considered
/// (swing.hpp). One horizontal and one vertical eye never stop each other below 120°: the aft ring slides
/// round the fore one. At D = d, where it turns about the fore eye's centre, neck meets neck at cosψ = −0.6,
/// 126.9°. Two inclined eyes stop each other earlier. Tested against triangle meshes:
/// tests/mesh/linked_eyes_test.cpp.
[[nodiscard]] double link_swing(const LinkedEyes& eyes, double most_rad);

} // namespace evenfall::joints
