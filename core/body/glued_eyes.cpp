#include "body/glued_eyes.hpp"

#include "body/twist_hole.hpp"

namespace evenfall::glue {

namespace {

EyeHole hole_of(const document::Hinge& hinge) {
    EyeHole h;
    h.wire_m = hinge.wire_m;
    h.bit_m = joints::twist_hole_m(hinge.wire_m);
    h.pitch_m = hinge.turns > 0.0 ? wire::usual_pitch_in_wires * hinge.wire_m : 0.0;
    return h;
}

} // namespace

std::vector<GluedEye> glued_eyes(const document::Document& document, const shape::Body& body) {
    std::vector<GluedEye> out;
    for (std::size_t j = 0; j < document.joints.size(); ++j) {
        if (!document.joints[j].hinge) continue;
        const document::Hinge& hinge = *document.joints[j].hinge;
        EyeHole hole = hole_of(hinge);
        const joints::HingePlace place = joints::hinge_place(document, body, static_cast<int>(j));
        for (const bool aft : {false, true}) {
            if (!joints::holds_eyes(hinge, aft)) continue;
            for (const joints::EyePlace& eye : place.eyes) {
                const joints::TwistHole twist =
                    joints::twist_hole(document, body, static_cast<int>(j), place, eye, aft);
                hole.glued_m = twist.glued_m;
                const Outcome<double> gap = gap_m3(hole);
                if (!gap.ok()) continue;
                const double x_m = twist.wood_from_x_m + (aft ? 0.5 : -0.5) * hole.glued_m;
                out.push_back({static_cast<int>(j),
                               static_cast<int>(j) + (aft ? 1 : 0),
                               {x_m, place.pin.y_m, eye.z_m},
                               hole,
                               *gap});
            }
        }
    }
    return out;
}

double width_m(const EyeHole& hole) {
    return 0.5 * (hole.bit_m - wire::twist_outside(2) * hole.wire_m);
}

} // namespace evenfall::glue
