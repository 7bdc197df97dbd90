#include "workshop/eye_room.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::joints {

namespace {

/// The face that the pocket opens into, as seen by the twist on one side of the pin.
struct Mouth {
    double before_pin_m = 0.0; ///< from the pin to the face's middle plane, towards the joint
    double tangent = 0.0;      ///< of the face's relief
    double pin_y_m =
        0.0; ///< towards this side; negative: the middle plane, with the ridge of the face, is on this side

    /// Distance before the pin of an edge at distance h to this side of it.
    [[nodiscard]] double before(double h_m) const { return before_pin_m - std::abs(pin_y_m + h_m) * tangent; }
    [[nodiscard]] double to_ridge() const { return std::max(0.0, -pin_y_m); }
};

double side_of(SwingSide way) {
    return way == SwingSide::starboard ? 1.0 : -1.0;
}

Mouth mouth_of(const document::Document& document, const shape::Body& body, int joint,
               const HingePlace& place, SwingSide way) {
    const auto j = static_cast<std::size_t>(joint);
    const double pin_y_m = side_of(way) * place.pin.y_m;
    if (place.pocket_aft)
        return {place.pin.x_m - body.segments[j + 1].x_from_m, std::tan(document.joints[j].relief_aft_rad),
                pin_y_m};
    return {body.segments[j].x_to_m - place.pin.x_m, std::tan(document.joints[j].relief_fore_rad), pin_y_m};
}

double touches_at(double side_m, double before_m, double half_bar_m) {
    const double distance = std::hypot(side_m, before_m);
    if (distance <= half_bar_m) return 0.0;
    return std::max(0.0, std::atan2(side_m, before_m) - std::asin(half_bar_m / distance));
}

} // namespace

EyeRoom eye_room(const document::Document& document, const shape::Body& body, int joint,
                 const HingePlace& place, const EyePlace& eye, double coat_m) {
    const document::Pocket& pocket = document.pockets[static_cast<std::size_t>(eye.pocket.value_or(0))];
    const double outside_m = 0.5 * place.hinge.eye_inside_m + place.hinge.wire_m;
    const double to_starboard = pocket.y_m + 0.5 * pocket.width_m - coat_m - place.pin.y_m;
    const double to_port = place.pin.y_m - (pocket.y_m - 0.5 * pocket.width_m + coat_m);

    EyeRoom room;
    room.beside_m = std::min(to_port, to_starboard) - outside_m;
    room.behind_m = (place.pocket_aft ? pocket.x_to_m - place.pin.x_m : place.pin.x_m - pocket.x_from_m) -
                    coat_m - outside_m;
    if (pocket.z_from_m && pocket.z_to_m)
        room.up_down_m = *pocket.z_to_m - *pocket.z_from_m - 2.0 * coat_m - place.hinge.wire_m;
    // Seen from the segment with the pocket, the twist leans to the side to which the tail swings. The
    // pocket's wall ends at the face; a coat brings its edge nearer to the pin by its thickness.
    const auto touched = [&](SwingSide way, double side_m) {
        const Mouth mouth = mouth_of(document, body, joint, place, way);
        return touches_at(side_m, mouth.before(side_m + coat_m), place.hinge.wire_m);
    };
    room.starboard_rad = touched(SwingSide::starboard, to_starboard);
    room.port_rad = touched(SwingSide::port, to_port);
    const double front = place.pocket_aft ? place.pin.x_m - pocket.x_from_m : pocket.x_to_m - place.pin.x_m;
    // The twist leaves along the pin's line, and the face must be open there: a pocket that meets the face
    // only farther out, where the relief has receded, leaves a rib in front of the eye.
    const Mouth mouth =
        mouth_of(document, body, joint, place, place.pin.y_m < 0.0 ? SwingSide::starboard : SwingSide::port);
    room.opens = front >= mouth.before(std::min(place.hinge.wire_m, mouth.to_ridge())) - 1e-6;
    return room;
}

std::optional<double> mouth_for(const document::Document& document, const shape::Body& body, int joint,
                                const HingePlace& place, const EyePlace& eye, SwingSide way, double swing_rad,
                                double coat_m) {
    const document::Pocket& pocket = document.pockets[static_cast<std::size_t>(eye.pocket.value_or(0))];
    const Mouth mouth = mouth_of(document, body, joint, place, way);
    // Wood that ends h to the side and a before is clear of the twist where (h − coat)·cosψ − a·sinψ ≥ wire +
    // clearance; the left side is linear in h from the ridge outward, and from there inward.
    const double s = std::sin(swing_rad);
    const double c = std::cos(swing_rad);
    const double inmost_m = mouth.to_ridge();
    const double lacks_m =
        place.hinge.wire_m + wire_room_m - ((inmost_m - coat_m) * c - mouth.before(inmost_m) * s);
    const double outward = c + mouth.tangent * s;
    const double inward = c - mouth.tangent * s;
    double h_m = 0.0;
    if (lacks_m > 0.0) {
        if (outward <= 0.0) return std::nullopt;
        h_m = inmost_m + lacks_m / outward;
    } else if (inward > 0.0) {
        h_m = std::max(0.0, inmost_m + lacks_m / inward);
    }
    const double width_m = 2.0 * (h_m + side_of(way) * (place.pin.y_m - pocket.y_m));
    const double face_x_m = place.pin.x_m + (place.pocket_aft ? -1.0 : 1.0) * mouth.before_pin_m;
    if (!(std::abs(pocket.y_m) + 0.5 * width_m < shape::skin_half_width(*body.lines, face_x_m, eye.z_m)))
        return std::nullopt;
    return width_m;
}

} // namespace evenfall::joints
