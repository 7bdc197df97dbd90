#pragma once

#include "picture/edges.hpp"

#include <cstddef>

namespace evenfall::picture {

/// Distance from each pixel's middle to the nearest marked one's [pixels], exact (Felzenszwalb and
/// Huttenlocher 2012, Theory of Computing 8, 415–428). A mask without marks gives a distance larger than the
/// picture everywhere.
[[nodiscard]] Plane distance_to(const Mask& marked);

/// What can be reached from the rim of the picture over open pixels, up, down and sideways.
[[nodiscard]] Mask reached_from_rim(const Mask& open);

/// A connected patch of marked pixels (up, down and sideways).
struct Patch {
    Mask mask;                 ///< of the largest patch
    std::size_t pixels = 0;    ///< 0 where nothing is marked
    int x_from = 0, x_to = -1; ///< its box, included
    int y_from = 0, y_to = -1;
};
[[nodiscard]] Patch largest_patch(const Mask& marked);

/// The largest patch that lines enclose, where gaps in them of up to twice `reach` pixels count as closed:
/// outside is what a disc of that radius can sweep from the rim without touching a line. Spurs thinner than
/// `spur` pixels are cut off.
///   away   distance to the nearest line, by distance_to
[[nodiscard]] Patch enclosed(const Plane& away, double reach, double spur);

} // namespace evenfall::picture
