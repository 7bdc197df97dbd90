#pragma once

// The wood seen from any direction: silhouettes of segments and rims of sections, in metres right and up.
// Pure.

#include "base/vec3.hpp"
#include "body/body.hpp"
#include "drawing/world_to_screen.hpp"

#include <vector>

namespace evenfall::shell::drawing {

/// A view direction: `right` and `up` are the horizontal and vertical of the drawing, unit vectors in the
/// lure's axes.
struct Look {
    Vec3 right;
    Vec3 up;
    [[nodiscard]] Rotated at(const Vec3& r) const { return {dot(right, r), dot(up, r)}; }
};

/// Both edges of a segment in this view, from its fore to its aft end; `count` ≥ 2 points each. Seen along
/// its own length there is no such outline: then both edges coincide.
struct Edges {
    std::vector<Rotated> one;
    std::vector<Rotated> other;
};
[[nodiscard]] Edges silhouette(const shape::Body& body, int segment, const Look& look, int count);

/// The skin's rim at a station, as a closed curve.
[[nodiscard]] std::vector<Rotated> section_rim(const shape::Lines& lines, double x_m, const Look& look,
                                               int count);

/// The station with the largest section.
[[nodiscard]] double thickest_m(const shape::Lines& lines);

} // namespace evenfall::shell::drawing
