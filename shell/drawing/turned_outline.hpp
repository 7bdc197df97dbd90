#pragma once

// The wood seen from any direction: silhouettes of segments and rims of sections, in metres right and up.
// Pure.

#include "body.hpp"
#include "drawing/world_to_screen.hpp"
#include "evenfall.hpp"

#include <vector>

namespace evenfall::shell::drawing {

/// A view direction: `right` and `up` are the horizontal and vertical of the drawing, unit vectors in the
/// lure's axes.
struct ViewDirection {
    Vec3 right;
    Vec3 up;
    [[nodiscard]] ViewPoint at(const Vec3& r) const { return {dot(right, r), dot(up, r)}; }
};

/// Both edges of a segment in this view, from its fore to its aft end; `count` ≥ 2 points each. Seen along
/// its own length there is no such outline: then both edges coincide.
struct Silhouette {
    std::vector<ViewPoint> one;
    std::vector<ViewPoint> other;
};
[[nodiscard]] Silhouette silhouette(const shape::Body& body, int segment, const ViewDirection& look,
                                    int count);

/// The skin's rim at a station, as a closed curve.
[[nodiscard]] std::vector<ViewPoint> section_rim(const shape::Lines& lines, double x_m,
                                                 const ViewDirection& look, int count);

/// The station with the largest section.
[[nodiscard]] double largest_section_x_m(const shape::Lines& lines);

} // namespace evenfall::shell::drawing
