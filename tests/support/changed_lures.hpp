#pragma once

// Variants of a lure: mirrored, scaled, with its lists in another order.

#include "document/document.hpp"

#include <algorithm>
#include <optional>
#include <vector>

namespace evenfall::support {

/// Exchanges port and starboard.
inline document::Document mirrored(document::Document d) {
    for (document::Hole& h : d.holes)
        h.y_m = -h.y_m;
    for (document::Pocket& p : d.pockets)
        p.y_m = -p.y_m;
    for (document::Part& p : d.parts)
        p.at_m.y = -p.at_m.y;
    for (document::Joint& j : d.joints) {
        if (j.hinge) j.hinge->pin_off_m = -j.hinge->pin_off_m;
    }
    return d;
}

/// Every length times s, every mass times s³; densities and angles stay.
inline document::Document scaled(document::Document d, double s) {
    const double s3 = s * s * s;
    const auto times = [](std::optional<double>& value, double by) {
        if (value) *value *= by;
    };
    for (auto* curve : {&d.shape.back, &d.shape.belly, &d.shape.half_width}) {
        for (document::CurvePoint& p : *curve)
            p = {p.x_m * s, p.value * s};
    }
    for (document::CurvePoint& p : d.shape.section.curve())
        p.x_m *= s;
    for (document::Measured& m : d.shape.measured) {
        m.x_m *= s;
        times(m.width_m, s);
        times(m.height_m, s);
    }
    for (document::Joint& j : d.joints) {
        j.at_m *= s;
        j.gap_m *= s;
        if (!j.hinge) continue;
        for (double* length : {&j.hinge->pin_aft_m, &j.hinge->pin_off_m, &j.hinge->pin_diameter_m,
                               &j.hinge->wire_m, &j.hinge->eye_inside_m, &j.hinge->glued_m})
            *length *= s;
        times(j.hinge->upper_z_m, s);
        times(j.hinge->lower_z_m, s);
    }
    for (document::Hole& h : d.holes) {
        for (double* length : {&h.x_m, &h.y_m, &h.diameter_m, &h.depth_m, &h.max_depth_m, &h.wall_m})
            *length *= s;
        if (h.cap) h.cap->length_m *= s;
        if (!h.fill) continue;
        times(h.fill->mass_kg, s3);
        times(h.fill->length_m, s);
        times(h.fill->stock_diameter_m, s);
    }
    for (document::Pocket& p : d.pockets) {
        for (double* length : {&p.x_from_m, &p.x_to_m, &p.y_m, &p.width_m})
            *length *= s;
        times(p.z_from_m, s);
        times(p.z_to_m, s);
    }
    for (document::Part& p : d.parts) {
        p.mass_kg *= s3;
        times(p.mass_sigma_kg, s3);
        p.at_m *= s;
        times(p.reach_m, s);
    }
    for (document::Coat& c : d.coats) {
        times(c.thickness_m, s);
        times(c.mass_kg, s3);
    }
    d.targets.in_water_kg *= s3;
    return d;
}

/// Holes, pockets and parts in reverse order; corrections follow their entries.
inline document::Document reordered(document::Document d) {
    std::reverse(d.holes.begin(), d.holes.end());
    std::reverse(d.pockets.begin(), d.pockets.end());
    std::reverse(d.parts.begin(), d.parts.end());
    for (document::Correction& c : d.corrections) {
        if (c.of == document::Cause::part_mass && c.item)
            c.item = static_cast<int>(d.parts.size()) - 1 - *c.item;
    }
    return d;
}

} // namespace evenfall::support
