#include "glue/eyes.hpp"

#include "bits/bits.hpp"
#include "joints/hinge_place.hpp"
#include "wire/twist.hpp"

namespace evenfall::glue {

namespace {

EyeHole hole_of(const preset::Hinge& hinge) {
    EyeHole h;
    const double twist_m = wire::twist_outside(2) * hinge.wire_m;
    const auto bit = bits::for_glue(twist_m)[static_cast<std::size_t>(bits::System::metric)];
    h.wire_m = hinge.wire_m;
    h.bit_m = bit ? bit->diameter_m : twist_m + bits::GlueRoom{}.least_m;
    h.pitch_m = hinge.turns > 0.0 ? wire::usual_pitch_in_wires * hinge.wire_m : 0.0;
    h.glued_m = hinge.glued_m;
    return h;
}

}  // namespace

std::vector<EyeInHole> eyes_in_holes(const preset::Document& document, const shape::Body& body) {
    std::vector<EyeInHole> out;
    for (std::size_t j = 0; j < document.joints.size(); ++j) {
        if (!document.joints[j].hinge) continue;
        const preset::Hinge& hinge = *document.joints[j].hinge;
        const EyeHole hole = hole_of(hinge);
        const Outcome<double> gap = gap_m3(hole);
        if (!gap.ok()) continue;
        const joints::HingePlace place = joints::hinge_place(document, body, static_cast<int>(j));
        for (const bool aft : {false, true}) {
            if (hinge.kind == preset::HingeKind::pinned && aft != (hinge.eyes_on == preset::EyesOn::aft)) continue;
            const double x_m = aft ? body.segments[j + 1].x_from_m + 0.5 * hole.glued_m : body.segments[j].x_to_m - 0.5 * hole.glued_m;
            for (const joints::EyePlace& eye : place.eyes) {
                out.push_back({static_cast<int>(j), static_cast<int>(j) + (aft ? 1 : 0), {x_m, place.pin.y_m, eye.z_m}, hole, *gap});
            }
        }
    }
    return out;
}

double width_m(const EyeHole& hole) { return 0.5 * (hole.bit_m - wire::twist_outside(2) * hole.wire_m); }

}  // namespace evenfall::glue
