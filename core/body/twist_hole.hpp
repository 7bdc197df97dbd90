#pragma once

#include "body/hinge_place.hpp"
#include "materials/wire_twist.hpp"

namespace evenfall::joints {

/// A hinge's eye as it is bent: wrap, pitch and legs as is usual.
[[nodiscard]] wire::TwistedEye twisted_eye_of(const document::Hinge& hinge);

/// An eye's twist in the hole of the segment that holds it.
struct TwistHole {
    double wood_from_x_m =
        0.0; ///< where wood begins on the twist's line: the face beside the pin, or the floor of a pocket
    double reach_m = 0.0; ///< how far twist and legs come into that wood; 0 where they end before it
    double glued_m = 0.0; ///< what is glued of that: the hinge's glued depth, no deeper than the wire reaches
};

/// Eye, twist and legs lie in line with the pin, along the lure. A pinned eye stands about the pin; of linked
/// eyes, midway in their play, each stands a quarter of its ring's middle diameter nearer to its own wood.
///
/// aft  the segment that holds the eye is the one behind the joint
[[nodiscard]] TwistHole twist_hole(const document::Document& document, const shape::Body& body, int joint,
                                   const HingePlace& place, const EyePlace& eye, bool aft);

/// Does the segment before or behind the joint hold eyes of this hinge? Of linked ones both do.
[[nodiscard]] bool holds_eyes(const document::Hinge& hinge, bool aft);

} // namespace evenfall::joints
