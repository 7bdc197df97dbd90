#include "body/twist_hole.hpp"

#include "materials/bits.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::joints {

wire::TwistedEye twisted_eye_of(const document::Hinge& hinge) {
    wire::TwistedEye eye;
    eye.wire_m = hinge.wire_m;
    eye.inside_m = hinge.eye_inside_m;
    eye.turns = hinge.turns;
    return eye;
}

double twist_hole_m(double wire_m) {
    const double twist_m = wire::twist_outside(2) * wire_m;
    const auto bit = bits::for_glue(twist_m)[static_cast<std::size_t>(bits::System::metric)];
    return bit ? bit->diameter_m : twist_m + bits::GlueRoom{}.least_m;
}

bool holds_eyes(const document::Hinge& hinge, bool aft) {
    return hinge.kind == document::HingeKind::linked || aft == (hinge.eyes_on == document::EyesOn::aft);
}

TwistHole twist_hole(const document::Document& document, const shape::Body& body, int joint,
                     const HingePlace& place, const EyePlace& eye, bool aft) {
    const auto j = static_cast<std::size_t>(joint);
    const document::Joint& cut = document.joints[j];
    const document::Hinge& h = place.hinge;
    const double into = aft ? 1.0 : -1.0;
    const double fallen_m =
        std::abs(place.pin.y_m) * std::tan(aft ? cut.relief_aft_rad : cut.relief_fore_rad);
    TwistHole hole{(aft ? body.segments[j + 1].x_from_m : body.segments[j].x_to_m) + into * fallen_m, 0.0,
                   0.0};
    if (eye.pocket) {
        const document::Pocket& pocket = document.pockets[static_cast<std::size_t>(*eye.pocket)];
        hole.wood_from_x_m =
            aft ? std::max(hole.wood_from_x_m, pocket.x_to_m) : std::min(hole.wood_from_x_m, pocket.x_from_m);
    }
    double eye_m =
        into *
        (place.pin.x_m -
         hole.wood_from_x_m); // the eye's middle, measured from where the wood begins; negative before it
    if (h.kind == document::HingeKind::linked) eye_m += linked_offset_m(h);
    hole.reach_m =
        std::max(0.0, eye_m + wire::finished_m(twisted_eye_of(h)) - (0.5 * h.eye_inside_m + h.wire_m));
    hole.glued_m = std::min(h.glued_m, hole.reach_m);
    return hole;
}

} // namespace evenfall::joints
