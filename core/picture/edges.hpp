#pragma once

#include "picture/filters.hpp"

namespace evenfall::picture {

/// One byte a pixel, 0 or 1.
struct Mask {
    int width = 0;
    int height = 0;
    std::vector<std::uint8_t> at;

    Mask() = default;
    Mask(int w, int h, std::uint8_t value = 0)
        : width(w), height(h), at(static_cast<std::size_t>(w) * static_cast<std::size_t>(h), value) {}

    [[nodiscard]] std::size_t index(int x, int y) const {
        return static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x);
    }
};

/// Steepness above which a pixel starts an edge, and above which it carries one on. Brightness per pixel.
struct EdgeLevels {
    double start = 0.0;
    double carry = 0.0;
};

/// Levels from the picture itself: six and three times the slope that its grain makes (from the median
/// steepness, which a few lines do not move; Rayleigh distributed for plain grain), but never below shares of
/// its steepest edges.
///   sensitivity   1 as a rule; 2 finds lines half as strong
[[nodiscard]] EdgeLevels edge_levels(const Slopes& slopes, double sensitivity);

/// Edges one pixel wide: crests of steepness across the slope, kept where they hang together with a strong
/// one (Canny 1986, IEEE PAMI 8, 679–698: suppression of non-maxima, two levels).
[[nodiscard]] Mask edges(const Slopes& slopes, EdgeLevels levels);

} // namespace evenfall::picture
