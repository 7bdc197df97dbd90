#pragma once

#include "picture/picture.hpp"

#include <cstddef>

namespace evenfall::picture {

/// Distance from each pixel to the nearest marked one [pixels], by steps of 1 straight and 4/3 aslant
/// (chamfer 3-4, Borgefors 1986, Computer Vision, Graphics and Image Processing 34, 344–371): at most 6 %
/// short, 8 % long.
[[nodiscard]] Plane distance_to(const Mask& marked);

/// A connected patch of marked pixels (up, down and sideways).
struct Patch {
    Mask mask;
    std::size_t pixels = 0; ///< 0 where nothing is marked
};

/// The largest patch that lines enclose, where gaps in them of up to twice `reach` pixels count as closed:
/// outside is what a disc of that radius can sweep from the rim without touching a line. Spurs thinner than
/// `spur` pixels are cut off. A patch of fewer than `least` pixels before that counts as none.
///   away   distance to the nearest line, by distance_to
[[nodiscard]] Patch enclosed(const Plane& away, double reach, double spur, double least);

} // namespace evenfall::picture
