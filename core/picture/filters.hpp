#pragma once

#include "picture/picture.hpp"

namespace evenfall::picture {

/// Gaussian smoothing, separable, kernel cut at four standard deviations, borders repeated.
///   sigma   in pixels, 0.3 to 20
[[nodiscard]] Plane smoothed(const Plane& plane, double sigma);

/// Slopes by the 3×3 Sobel operator, divided by 8 so that they are brightness per pixel. Borders repeated.
struct Slopes {
    Plane x;
    Plane y;
};
[[nodiscard]] Slopes sobel(const Plane& plane);

/// Takes uneven light away: a smooth surface (cubic in x and y) is laid through the bright ground by robust
/// least squares (biweight, Beaton and Tukey 1974) over the medians of small blocks, starting from the rim of
/// the picture, and the picture is divided by it; where it is darker than a quarter, what differs from it is
/// divided by a quarter. The ground comes out as 1. What differs from the ground by more than a few spreads,
/// a piece of wood or a line, does not pull on the surface.
[[nodiscard]] Plane evenly_lit(const Plane& plane);

/// Value between the middles of pixels, bilinear; beyond the rim that of the rim.
[[nodiscard]] double value_at(const Plane& plane, Spot spot);

} // namespace evenfall::picture
