#pragma once

#include "picture/picture.hpp"

namespace evenfall::picture {

/// Gaussian smoothing with a standard deviation of `sigma` pixels, the border repeated.
[[nodiscard]] Plane smoothed(const Plane& plane, double sigma);

/// Edges one pixel wide.
struct Edges {
    Mask mask;
    double carry = 0.0; ///< steepness that carries an edge on, brightness per pixel
};

/// Crests of steepness, kept where they hang together with a strong one (Canny 1986, IEEE PAMI 8, 679–698:
/// Gaussian, suppression of non-maxima, two levels; slopes by the 3×3 Sobel operator). The levels come from
/// the picture: six and three times the slope that its grain makes (from the median steepness, which a few
/// lines do not move; Rayleigh distributed for plain grain), never below shares of its steepest edges.
///   smooth        smoothed brightness, at least 3 pixels each way
///   sensitivity   1 as a rule; 2 finds lines half as strong
[[nodiscard]] Edges find_edges(const Plane& smooth, double sensitivity);

} // namespace evenfall::picture
