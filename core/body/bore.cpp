#include "body/bore.hpp"

#include "materials/solids.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace evenfall::holes {

namespace {

/// The part of a hole from `near` to `far` along its axis from the skin; where it starts at the skin, the
/// lens under the curved skin is subtracted.
HolePart stretch(const Bore& bore, double near_m, double far_m) {
    const double start = near_m <= 0.0 ? bore.skin_drop_m : std::max(near_m, bore.skin_drop_m);
    const double span = std::max(far_m - start, 0.0);
    return {bore.area_m2 * span, bore.mouth_z_m + bore.inward * (start + 0.5 * span)};
}

void add_cone(HolePart& s, const Bore& bore, double depth_m) {
    if (bore.cone_m3 <= 0.0) return;
    const double cone_z = bore.mouth_z_m + bore.inward * (depth_m + 0.25 * bore.cone_height_m);
    const double sum = s.volume_m3 + bore.cone_m3;
    s.z_m = (s.volume_m3 * s.z_m + bore.cone_m3 * cone_z) / sum;
    s.volume_m3 = sum;
}

double circle(double diameter_m) {
    return 0.25 * std::numbers::pi * diameter_m * diameter_m;
}

} // namespace

Bore place(const document::Hole& hole, const shape::Body& body) {
    Bore bore;
    bore.x_m = hole.x_m;
    bore.y_m = hole.y_m;
    bore.inward = hole.from == document::HoleFrom::belly ? 1.0 : -1.0;
    bore.area_m2 = circle(hole.diameter_m);
    if (hole.end == document::HoleEnd::point_118) {
        bore.cone_height_m = point_height_per_diameter * hole.diameter_m;
        bore.cone_m3 = bore.area_m2 * bore.cone_height_m / 3.0;
    }
    bore.segment = shape::segment_at(body, hole.x_m);
    if (bore.segment < 0) return bore;
    const shape::ColumnSkin skin = shape::column_skin(*body.lines, hole.x_m, hole.y_m, hole.diameter_m);
    if (!std::isfinite(skin.back_axis_z_m) || !std::isfinite(skin.belly_axis_z_m)) {
        bore.segment = -1;
        return bore;
    }
    const bool belly = hole.from == document::HoleFrom::belly;
    bore.mouth_z_m = belly ? skin.belly_axis_z_m : skin.back_axis_z_m;
    const double mean_z = belly ? skin.belly_mean_z_m : skin.back_mean_z_m;
    bore.far_skin_m = skin.back_axis_z_m - skin.belly_axis_z_m;
    // A bit wider than the wood has no skin all round its mouth: then there is no depth left down to the far
    // side.
    bore.skin_drop_m = std::isfinite(mean_z) ? bore.inward * (mean_z - bore.mouth_z_m) : bore.far_skin_m;
    return bore;
}

double fill_free_m(const document::Hole& hole, const Bore& bore) {
    const double lens = std::max(bore.skin_drop_m, 0.0);
    return hole.cap ? std::max(hole.cap->length_m, lens + 0.5 * hole.cap->length_m) : lens;
}

bool is_plugged(const document::Hole& hole) {
    return !hole.fill && hole.cap && hole.depth_m > 0.0 && hole.cap->length_m >= hole.depth_m - 1e-6;
}

HoleContents contents(const document::Hole& hole, const Bore& bore) {
    HoleContents c;
    if (hole.depth_m <= 0.0) return c;
    const double depth = hole.depth_m;
    c.wood = stretch(bore, 0.0, depth);
    add_cone(c.wood, bore, depth);

    const double covered = std::min(fill_free_m(hole, bore), depth);
    c.floods = !hole.cap;
    c.room_m = depth - covered;
    if (hole.fill) {
        const materials::Solid* solid = materials::find_solid(hole.fill->material);
        const double density = solid != nullptr ? solid->density_kg_m3.value : 0.0;
        const bool rod = hole.fill->stock_diameter_m.has_value();
        const double area = rod ? circle(*hole.fill->stock_diameter_m) : bore.area_m2;
        const double cone = rod ? 0.0 : bore.cone_m3;
        double volume = 0.0;
        if (hole.fill->length_m)
            volume = area * *hole.fill->length_m + cone;
        else if (hole.fill->mass_kg && density > 0.0)
            volume = *hole.fill->mass_kg / density;
        c.fill_kg = volume * density;
        const double in_cone = std::min(volume, cone);
        c.fill_column_m = (volume - in_cone) / area;
        const double middle = depth - 0.5 * c.fill_column_m;
        const double column_z = bore.mouth_z_m + bore.inward * middle;
        const double cone_z = bore.mouth_z_m + bore.inward * (depth + 0.25 * bore.cone_height_m);
        c.fill.volume_m3 = volume;
        c.fill.z_m = volume > 0.0 ? ((volume - in_cone) * column_z + in_cone * cone_z) / volume : column_z;
    }

    if (hole.cap) {
        // Where the fill comes closer to the skin, the cap cannot be longer than it is.
        const double under_m = std::max(std::min(hole.cap->length_m, depth), depth - c.fill_column_m);
        c.cap = stretch(bore, 0.0, std::min(covered, under_m));
    }

    // The rest, neither cap nor fill, is empty; its centroid follows from that of the whole hole.
    c.empty.volume_m3 = std::max(c.wood.volume_m3 - c.cap.volume_m3 - c.fill.volume_m3, 0.0);
    if (c.empty.volume_m3 > 0.0) {
        c.empty.z_m =
            (c.wood.volume_m3 * c.wood.z_m - c.cap.volume_m3 * c.cap.z_m - c.fill.volume_m3 * c.fill.z_m) /
            c.empty.volume_m3;
    }
    return c;
}

} // namespace evenfall::holes
