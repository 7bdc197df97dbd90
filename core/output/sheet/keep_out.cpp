#include "output/sheet/parts.hpp"

#include "body/twist_hole.hpp"

#include <algorithm>

namespace evenfall::sheet {

namespace {

using joints::thin_wall_m;

KeepOutBox round_axis(double x_m, double y_m, double reach_m) {
    return {x_m - reach_m, x_m + reach_m, y_m - reach_m, y_m + reach_m, {}, {}};
}

/// The bit for the twist gives the width of its hole; where no metric bit fits, the twist itself.
double twist_radius(const joints::JointAnswer& joint) {
    const auto& bit = joint.eye_bits[static_cast<std::size_t>(bits::System::metric)];
    return 0.5 * (bit ? bit->diameter_m : joint.eye.twist_outside_m);
}

} // namespace

bool has_hinge(const SheetInput& job, std::size_t joint) {
    if (joint >= job.joints.joints.size()) return false;
    const auto& eyes = job.joints.joints[joint].eyes;
    return job.document.joints[joint].hinge.has_value() ||
           std::any_of(eyes.begin(), eyes.end(),
                       [](const auto& eye) { return eye.place.pocket.has_value(); });
}

std::vector<KeepOutBox> keep_out(const SheetInput& job) {
    std::vector<KeepOutBox> out;
    for (const document::Pocket& p : job.document.pockets) {
        KeepOutBox zone{p.x_from_m - thin_wall_m,
                        p.x_to_m + thin_wall_m,
                        p.y_m - 0.5 * p.width_m - thin_wall_m,
                        p.y_m + 0.5 * p.width_m + thin_wall_m,
                        {},
                        {}};
        if (p.z_from_m) zone.z_from_m = *p.z_from_m - thin_wall_m;
        if (p.z_to_m) zone.z_to_m = *p.z_to_m + thin_wall_m;
        out.push_back(zone);
    }
    for (std::size_t j = 0; j < job.joints.joints.size(); ++j) {
        if (!has_hinge(job, j)) continue;
        const joints::JointAnswer& joint = job.joints.joints[j];
        const joints::HingePlace& place = joint.place;
        if (joint.pin_length_m > 0.0)
            out.push_back(
                round_axis(place.pin.x_m, place.pin.y_m, 0.5 * place.hinge.pin_diameter_m + thin_wall_m));
        const double reach = twist_radius(joint) + thin_wall_m;
        for (const bool aft : {false, true}) {
            if (!joints::holds_eyes(place.hinge, aft)) continue;
            for (const joints::EyeAnswer& eye : joint.eyes) {
                const double wood = joints::twist_hole(job.document, job.evaluation.body, static_cast<int>(j),
                                                       place, eye.place, aft)
                                        .wood_from_x_m;
                const double end = wood + (aft ? 1.0 : -1.0) * (place.hinge.glued_m + thin_wall_m);
                out.push_back({std::min(wood, end), std::max(wood, end), place.pin.y_m - reach,
                               place.pin.y_m + reach, eye.place.z_m - reach, eye.place.z_m + reach});
            }
        }
    }
    // Only a part's centre is known: assume a usual twist and its wall round it.
    const double part_reach = document::Hinge{}.wire_m + thin_wall_m;
    for (const document::Part& part : job.document.parts) {
        if (part.stage != Stage::hardware || part.embedded <= 0.0) continue;
        KeepOutBox zone = round_axis(part.at_m.x, part.at_m.y, part_reach);
        zone.z_from_m = part.at_m.z - part_reach;
        zone.z_to_m = part.at_m.z + part_reach;
        out.push_back(zone);
    }
    return out;
}

} // namespace evenfall::sheet
