#pragma once

#include "body/hinge_place.hpp"

namespace evenfall::joints {

/// Clearance between wire and wood at every angle. Common practice, no source.
inline constexpr double wire_room_m = 0.3e-3;

/// Clearances of an eye in its pocket. Without a pocket round the pin there is nothing to measure.
struct EyeRoom {
    double beside_m = 0.0; ///< from the eye's outside to the nearer side wall; negative: it does not fit
    double behind_m = 0.0; ///< from its crown to the pocket's floor
    std::optional<double> up_down_m; ///< vertical play of the eye: pocket's height less the wire; absent
                                     ///< where the pocket is open above or below
    double port_rad = 0.0;           ///< swing of the tail at which the twist touches the pocket's mouth
    double starboard_rad = 0.0;
    bool opens = true; ///< false: wood between the eye's twist and the joint
};

/// Seen from above, in the axes of the segment with the pocket: the eye is a disc of diameter inside + 2·wire
/// about the pin, the twist a bar two wires wide towards the joint. The mouth's edge, at distance h to the
/// side of the pin and a before it, is touched at the angle atan2(h, a) − asin(wire/√(h² + a²)). The ridge of
/// a relieved face beyond an edge that ends short of the middle is touched later, as long as the pin is in
/// wood.
///
///   coat_m  film in the pocket; it narrows the pocket on every side
[[nodiscard]] EyeRoom eye_room(const document::Document& document, const shape::Body& body, int joint,
                               const HingePlace& place, const EyePlace& eye, double coat_m = 0.0);

/// Width of this eye's pocket, about its own middle, at which the twist keeps `wire_room_m` at this swing to
/// this side; absent where no width does, or the pocket would be as wide as the body at its face.
[[nodiscard]] std::optional<double> mouth_for(const document::Document& document, const shape::Body& body,
                                              int joint, const HingePlace& place, const EyePlace& eye,
                                              SwingSide way, double swing_rad, double coat_m = 0.0);

} // namespace evenfall::joints
