#pragma once

#include "body/hinge_place.hpp"

namespace evenfall::joints {

/// Room that wire must keep from wood at every angle. Common practice, no source.
inline constexpr double wire_room_m = 0.3e-3;

/// How an eye moves in its pocket. Without a pocket drawn round the pin there is nothing to measure.
struct EyeRoom {
    double beside_m = 0.0; ///< from the eye's outside to the nearer side wall; negative: it does not go in
    double behind_m = 0.0; ///< from its crown to the pocket's floor
    std::optional<double> up_down_m; ///< how far the eye may rise and fall: pocket's height less the wire;
                                     ///< absent where it is open above or below
    double port_rad = 0.0;           ///< the tail's swing at which the twist touches the pocket's mouth
    double starboard_rad = 0.0;
    bool opens = true; ///< false: wood stands between the eye's twist and the joint
};

/// From above, in the frame of the segment with the pocket: eye and twist are a disc of diameter inside +
/// 2·wire about the pin and a bar two wires wide that leads to the joint. The mouth's edge, at distance h to
/// the side of the pin's line and a before it, is touched at angle atan2(h, a) − asin(wire/√(h² + a²)). The
/// ridge of a relieved face beyond an edge that ends short of the middle is touched later, as long as the pin
/// stands in wood.
///
/// coat_m  film in the pocket, which narrows it on every side
[[nodiscard]] EyeRoom eye_room(const document::Document& document, const shape::Body& body, int joint,
                               const HingePlace& place, const EyePlace& eye, double coat_m = 0.0);

/// Width of this eye's pocket, about its own middle, at which the twist keeps `wire_room_m` at this swing
/// this way; absent where none does, or the pocket would be as wide as the body at its face.
[[nodiscard]] std::optional<double> mouth_for(const document::Document& document, const shape::Body& body,
                                              int joint, const HingePlace& place, const EyePlace& eye,
                                              Way way, double swing_rad, double coat_m = 0.0);

} // namespace evenfall::joints
