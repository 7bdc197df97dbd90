#pragma once

// Segments as columns along x, for filling and for outlines: from the side (belly to back) and from above
// (port to starboard, with the relief of the joints). Metres. Pure.

#include "body.hpp"

#include <vector>

namespace evenfall::shell::drawing {

/// The wood between `low` and `high` at `x`.
struct WoodSpan {
    double x_m = 0.0;
    double low_m = 0.0;
    double high_m = 0.0;
};

/// The segment's middle plane: columns are closer together at both ends, where a blunt nose curves strongly.
/// `count` ≥ 2.
[[nodiscard]] std::vector<WoodSpan> side_columns(const shape::Body& body, int segment, int count);

/// Seen from above: the width line, cut back by the relief beside each joint.
[[nodiscard]] std::vector<WoodSpan> top_columns(const shape::Body& body, int segment, int count);

/// Where the relieved edge of a joint face meets the skin, seen from the side: x over height z, belly to
/// back. Empty where the face has no relief.
struct EdgePoint {
    double x_m = 0.0;
    double z_m = 0.0;
};
[[nodiscard]] std::vector<EdgePoint> relief_edge(const shape::Body& body, int joint, bool fore_face,
                                                 int count);

} // namespace evenfall::shell::drawing
