#pragma once

#include "picture/picture.hpp"

namespace evenfall::picture {

/// A closed line: its spots in order, the last joined to the first.
using Ring = std::vector<Spot>;

/// The outer border of a connected patch along the sides of its pixels, clockwise as seen; empty for none.
[[nodiscard]] Ring border_of(const Mask& patch);

/// Signed area [pixels²]; positive where the ring runs clockwise as seen, y being down.
[[nodiscard]] double signed_area(const Ring& ring);

[[nodiscard]] double length_of(const Ring& ring);

/// `count` spots at equal steps along the ring.
[[nodiscard]] Ring evenly_spaced(const Ring& ring, std::size_t count);

/// Each coordinate smoothed along the ring by a Gaussian of `sigma` spots.
[[nodiscard]] Ring smoothed_ring(const Ring& ring, double sigma);

} // namespace evenfall::picture
