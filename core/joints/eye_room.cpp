#include "joints/eye_room.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::joints {

namespace {

/// The face that the pocket opens into.
struct Mouth {
    double before_pin_m = 0.0;  ///< from the pin to the face's middle plane, towards the joint
    double tangent = 0.0;       ///< of the face's relief
};

Mouth mouth_of(const preset::Document& document, const shape::Body& body, int joint, const HingePlace& place) {
    const auto j = static_cast<std::size_t>(joint);
    if (place.pocket_aft) return {place.pin.x_m - body.segments[j + 1].x_from_m, std::tan(document.joints[j].relief_aft_rad)};
    return {body.segments[j].x_to_m - place.pin.x_m, std::tan(document.joints[j].relief_fore_rad)};
}

double touches_at(double side_m, double before_m, double half_bar_m) {
    const double distance = std::hypot(side_m, before_m);
    if (distance <= half_bar_m) return 0.0;
    return std::max(0.0, std::atan2(side_m, before_m) - std::asin(half_bar_m / distance));
}

}  // namespace

EyeRoom eye_room(const preset::Document& document, const shape::Body& body, int joint, const HingePlace& place,
                 const EyePlace& eye, double coat_m) {
    const preset::Pocket& pocket = document.pockets[static_cast<std::size_t>(eye.pocket.value_or(0))];
    const double outside_m = 0.5 * place.hinge.eye_inside_m + place.hinge.wire_m;
    const double to_starboard = pocket.y_m + 0.5 * pocket.width_m - coat_m - place.pin.y_m;
    const double to_port = place.pin.y_m - (pocket.y_m - 0.5 * pocket.width_m + coat_m);
    const Mouth mouth = mouth_of(document, body, joint, place);

    EyeRoom room;
    room.beside_m = std::min(to_port, to_starboard) - outside_m;
    room.behind_m = (place.pocket_aft ? pocket.x_to_m - place.pin.x_m : place.pin.x_m - pocket.x_from_m) - coat_m - outside_m;
    if (pocket.z_from_m && pocket.z_to_m) room.up_down_m = *pocket.z_to_m - *pocket.z_from_m - 2.0 * coat_m - place.hinge.wire_m;
    // Where the pocket's wall meets the face; coated, the edge stands as much nearer to the pin's line.
    const auto edge_before = [&](double y_m) { return mouth.before_pin_m - std::abs(y_m) * mouth.tangent; };
    // Looked at from the segment with the pocket, the twist leans to the side to which the tail swings.
    room.starboard_rad = touches_at(to_starboard, edge_before(pocket.y_m + 0.5 * pocket.width_m), place.hinge.wire_m);
    room.port_rad = touches_at(to_port, edge_before(pocket.y_m - 0.5 * pocket.width_m), place.hinge.wire_m);
    const double front = place.pocket_aft ? place.pin.x_m - pocket.x_from_m : pocket.x_to_m - place.pin.x_m;
    // The twist leaves along the pin's line, and there the face must be open: a pocket that only reaches it farther out, where the
    // relief has fallen back, leaves a rib before the eye.
    const double inmost_m = std::max(0.0, std::abs(place.pin.y_m) - place.hinge.wire_m);
    room.opens = front >= edge_before(inmost_m) - 1e-6;
    return room;
}

double mouth_for(const preset::Document& document, const shape::Body& body, int joint, const HingePlace& place,
                 double swing_rad, double coat_m) {
    // h·cosψ − (a − h·tanα)·sinψ = wire + room, for the half width h.
    const Mouth mouth = mouth_of(document, body, joint, place);
    const double s = std::sin(swing_rad);
    const double half = (place.hinge.wire_m + wire_room_m + mouth.before_pin_m * s) / (std::cos(swing_rad) + mouth.tangent * s);
    return 2.0 * (half + coat_m);
}

}  // namespace evenfall::joints
