#include "drawing/outline.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace evenfall::shell::drawing {
namespace {

/// Station i of `count` between the ends of a segment, with cosine spacing.
double station_m(const shape::Segment& segment, int i, int count) {
    const double t = static_cast<double>(i) / (count - 1);
    const double share = 0.5 * (1.0 - std::cos(std::numbers::pi * t));
    return segment.x_from_m + share * (segment.x_to_m - segment.x_from_m);
}

/// Clamped to the body's range, so that rounding never asks for a station beyond its ends.
double within(const shape::Lines& lines, double x_m) {
    const auto breaks = lines.breakpoints_m();
    return std::clamp(x_m, breaks.front(), breaks.back());
}

} // namespace

std::vector<WoodSpan> side_columns(const shape::Body& body, int segment, int count) {
    const auto& wood = body.segments.at(static_cast<std::size_t>(segment));
    std::vector<WoodSpan> columns;
    columns.reserve(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i) {
        const double x = within(*body.lines, station_m(wood, i, count));
        const auto station = body.lines->at(x);
        columns.push_back(
            {x, station.centre_z_m - station.half_height_m, station.centre_z_m + station.half_height_m});
    }
    return columns;
}

std::vector<WoodSpan> top_columns(const shape::Body& body, int segment, int count) {
    const auto index = static_cast<std::size_t>(segment);
    const auto& wood = body.segments.at(index);
    std::vector<WoodSpan> columns;
    columns.reserve(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i) {
        const double x = within(*body.lines, station_m(wood, i, count));
        double half = body.lines->at(x).half_width_m;
        // At a relieved face the wood reaches only to |y| = distance from the face's middle / tan(angle).
        if (index < body.joints.size()) {
            const auto& joint = body.joints[index];
            const double tangent = std::tan(joint.relief_fore_rad);
            if (tangent > 0.0)
                half = std::min(half, std::max(0.0, joint.at_m - 0.5 * joint.gap_m - x) / tangent);
        }
        if (index > 0) {
            const auto& joint = body.joints[index - 1];
            const double tangent = std::tan(joint.relief_aft_rad);
            if (tangent > 0.0)
                half = std::min(half, std::max(0.0, x - joint.at_m - 0.5 * joint.gap_m) / tangent);
        }
        columns.push_back({x, -half, half});
    }
    return columns;
}

std::vector<EdgePoint> relief_edge(const shape::Body& body, int joint, bool fore_face, int count) {
    const auto& cut = body.joints.at(static_cast<std::size_t>(joint));
    const double tangent = std::tan(fore_face ? cut.relief_fore_rad : cut.relief_aft_rad);
    std::vector<EdgePoint> edge;
    if (!(tangent > 0.0)) return edge;
    const double side = fore_face ? -1.0 : 1.0;
    const double face_m = cut.at_m + side * 0.5 * cut.gap_m;
    // The edge varies slightly along x as the body tapers; the width at the face is accurate enough for a
    // thin line.
    const double x = within(*body.lines, face_m);
    const auto station = body.lines->at(x);
    for (int i = 0; i < count; ++i) {
        const double share = -1.0 + 2.0 * i / (count - 1);
        const double z = station.centre_z_m + share * station.half_height_m;
        const double half = shape::skin_half_width(*body.lines, x, z);
        edge.push_back({face_m + side * half * tangent, z});
    }
    return edge;
}

} // namespace evenfall::shell::drawing
