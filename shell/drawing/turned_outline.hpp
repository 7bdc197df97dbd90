#pragma once

// The wood seen from any side: silhouettes of segments and rims of sections, in metres right and up. Pure.

#include "base/vec3.hpp"
#include "body/body.hpp"
#include "drawing/world_to_screen.hpp"

#include <vector>

namespace evenfall::shell::drawing {

/// A way of looking: `right` and `up` are level and plumb on the sheet, unit vectors in the lure's axes.
struct Look {
    Vec3 right;
    Vec3 up;
    [[nodiscard]] Rotated at(const Vec3& r) const { return {dot(right, r), dot(up, r)}; }
};

/// Both edges of a segment seen so, from its fore to its aft end; `count` ≥ 2 points each. Seen along its own
/// length there is no such outline: then both edges fall together.
struct Edges {
    std::vector<Rotated> one;
    std::vector<Rotated> other;
};
[[nodiscard]] Edges silhouette(const shape::Body& body, int segment, const Look& look, int count);

/// The skin's rim at a station, once round.
[[nodiscard]] std::vector<Rotated> section_rim(const shape::Lines& lines, double x_m, const Look& look,
                                               int count);

/// The station with the largest section.
[[nodiscard]] double thickest_m(const shape::Lines& lines);

} // namespace evenfall::shell::drawing
