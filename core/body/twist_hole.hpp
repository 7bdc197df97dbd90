#pragma once

#include "body/hinge_place.hpp"
#include "materials/wire_twist.hpp"

namespace evenfall::joints {

/// A hinge's eye with the usual wrap, pitch and legs.
[[nodiscard]] wire::TwistedEye twisted_eye_of(const document::Hinge& hinge);

/// Diameter of the hole for a twisted pair of this wire: the metric bit with clearance for glue
/// (bits::for_glue), or twist plus least clearance where none fits.
[[nodiscard]] double twist_hole_m(double wire_m);

/// An eye's twist in the hole of the segment that holds it.
struct TwistHole {
    double wood_from_x_m =
        0.0; ///< where wood begins along the twist: the face beside the pin, or the floor of a pocket
    double reach_m = 0.0; ///< length of twist and legs in that wood; 0 where they end before it
    double glued_m = 0.0; ///< glued length of that: the hinge's glued depth, but no more than reach_m
};

/// How far linked eyes, midway in their play, are each off the pin's place towards their own wood: a quarter
/// of the ring's mean diameter.
[[nodiscard]] inline double linked_offset_m(const document::Hinge& hinge) {
    return 0.25 * (hinge.eye_inside_m + hinge.wire_m);
}

/// Eye, twist and legs are in line with the pin, along the lure. A pinned eye is centred on the pin,
/// linked eyes as linked_offset_m() says.
///
/// aft  the segment that holds the eye is the one behind the joint
[[nodiscard]] TwistHole twist_hole(const document::Document& document, const shape::Body& body, int joint,
                                   const HingePlace& place, const EyePlace& eye, bool aft);

/// True where the segment before (or behind) the joint holds eyes of this hinge. With linked eyes both do.
[[nodiscard]] bool holds_eyes(const document::Hinge& hinge, bool aft);

} // namespace evenfall::joints
