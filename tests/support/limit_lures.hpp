#pragma once

// Lures at the limits of a document: the maximum number of points, joints, holes, pockets, parts, coats and
// readings.

#include "base/trade.hpp"
#include "document/document.hpp"
#include "support/small_lures.hpp"

#include <cmath>

namespace evenfall::support {

/// The nth reading, of ten lures in turn, with the main value `about` ± `scatter`.
inline document::Reading scattered(document::ReadingKind kind, Stage stage, int n, double about,
                                   double scatter) {
    document::Reading r;
    r.kind = kind;
    r.stage = stage;
    r.lure = n % 10;
    const double value = about + scatter * std::sin(2.4 * n + 0.7);
    switch (kind) {
    case document::ReadingKind::tub_fall:
        r.time_s = value;
        r.depth_m = 0.5;
        break;
    case document::ReadingKind::freeboard:
        r.freeboard_m = value;
        break;
    case document::ReadingKind::hang_angle:
        r.angle_rad = value;
        break;
    default:
        r.mass_kg = value;
        break;
    }
    return r;
}

/// The same document with the maximum number of such readings of one kind.
inline document::Document with_full_log(document::Document d, document::ReadingKind kind, double about,
                                        double scatter,
                                        int readings = static_cast<int>(document::max_readings)) {
    for (int n = 0; n < readings; ++n)
        d.log.push_back(scattered(kind, Stage::rigged, n, about, scatter));
    return d;
}

/// A lure of 600 mm in twelve segments with a wavy outline and every list full. It sinks.
inline document::Document at_the_limits() {
    document::Document d = block();
    const double length = 0.6;
    const auto count = static_cast<int>(document::max_curve_points);
    document::Shape& shape = d.shape;
    shape = {};
    shape.section.curve().clear();
    for (int k = 0; k < count; ++k) {
        const double x = length * k / (count - 1);
        const double full = 0.4 + 2.4 * (x / length) * (1.0 - x / length);
        const double wave = 1.0 + 0.02 * std::sin(0.9 * k);
        shape.back.push_back({x, 0.030 * full * wave});
        shape.belly.push_back({x, -0.030 * full * wave});
        shape.half_width.push_back({x, 0.018 * full * wave});
        shape.section.curve().push_back({x, 2.2 + 0.1 * std::sin(0.7 * k)});
    }
    const auto segments = static_cast<int>(document::max_joints) + 1;
    d.segment_names.assign(static_cast<std::size_t>(segments), "Segment");
    for (int s = 1; s < segments; ++s) {
        document::Joint joint;
        joint.at_m = length * s / segments;
        joint.relief_fore_rad = joint.relief_aft_rad = units::rad_from_deg(12.0);
        joint.hinge = document::Hinge{};
        d.joints.push_back(joint);
    }
    for (std::size_t k = 0; k < document::max_holes; ++k) {
        // Four in each segment except the first and last, well inside their walls.
        const double segment = 1.0 + static_cast<double>(k / 4);
        const double within = 0.3 + 0.4 * static_cast<double>(k % 4) / 3.0;
        document::Hole hole = belly_hole(1000.0 * length * (segment + within) / segments, 3.2, 12.0);
        hole.wall_m = 0.0005;
        hole.depth_m = 0.010;
        hole.fill = document::Fill{};
        hole.fill->mass_kg = 0.0004;
        d.holes.push_back(hole);
    }
    for (std::size_t k = 0; k < document::max_pockets; ++k) {
        document::Pocket pocket;
        pocket.x_from_m = length * (static_cast<double>(k) + 0.4) / document::max_pockets;
        pocket.x_to_m = pocket.x_from_m + 0.002;
        pocket.width_m = 0.002;
        pocket.z_from_m = 0.004;
        pocket.z_to_m = 0.007;
        d.pockets.push_back(pocket);
    }
    for (std::size_t k = 0; k < document::max_hardware; ++k) {
        document::Part part;
        part.stage = k % 3 == 0 ? Stage::rigged : Stage::hardware;
        part.mass_kg = 0.015;
        part.at_m = {length * (static_cast<double>(k) + 0.5) / document::max_hardware, 0.0, -0.010};
        part.embedded = k % 3 == 0 ? 0.0 : 1.0;
        d.parts.push_back(part);
    }
    for (std::size_t k = 0; k < document::max_coats; ++k) {
        document::Coat coat;
        coat.stage = k % 2 == 0 ? Stage::painted : Stage::clear_coated;
        coat.thickness_m = 0.00002;
        coat.on_pockets = k % 4 == 0;
        d.coats.push_back(coat);
    }
    return d;
}

} // namespace evenfall::support
