#pragma once

#include "base/outcome.hpp"

#include <cstdint>
#include <span>
#include <vector>

namespace evenfall::picture {

// Caps that keep a hostile or careless picture from costing more than a moment.
inline constexpr long long most_pixels = 24'000'000; ///< taken in
/// Kept for finding the outline; larger pictures are reduced. About 1000 by 750 from a usual photo: a lure
/// that fills most of the picture is then looked at with some 5 pixels a millimetre.
inline constexpr long long most_working_pixels = 1'000'000;
inline constexpr int least_side = 24;        ///< pixels
inline constexpr int greatest_side = 32'000; ///< pixels

/// A picture as decoded by somebody else: rows from the top, no padding. The samples are borrowed.
struct Picture {
    int width = 0;
    int height = 0;
    int channels = 4;                      ///< 1 grey, 4 red green blue alpha
    std::span<const std::uint8_t> samples; ///< width · height · channels of them
};

/// A place in a picture: pixels from its upper left corner, y down. The first pixel covers 0 to 1, its middle
/// is 0.5.
struct Spot {
    double x = 0.0;
    double y = 0.0;
};

/// One value a pixel, rows from the top.
template <class Value>
struct Grid {
    int width = 0;
    int height = 0;
    std::vector<Value> at;

    Grid() = default;
    Grid(int w, int h, Value value = {})
        : width(w), height(h), at(static_cast<std::size_t>(w) * static_cast<std::size_t>(h), value) {}

    [[nodiscard]] std::size_t index(int x, int y) const {
        return static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x);
    }
    [[nodiscard]] bool holds(int x, int y) const { return x >= 0 && y >= 0 && x < width && y < height; }
};

using Plane = Grid<float>;       ///< brightness, slope or distance
using Mask = Grid<std::uint8_t>; ///< 1 where a pixel is marked, else 0

/// Are these sides of a picture that may be looked at? Problems: too small, too large.
[[nodiscard]] Problems check_size(int width, int height);

/// Is this a picture that may be looked at? Problems: too small, too large, samples that do not fit the
/// sides.
[[nodiscard]] Problems check(const Picture& picture);

/// A picture in grey, each pixel the mean of a square of `factor` pixels a side.
struct Reduced {
    Plane plane; ///< brightness, 0 to 1
    int factor = 1;
};

/// The part from `left` and `upper` up to `right` and `lower` (excluded), reduced by the smallest whole
/// factor that leaves at most most_working_pixels; up to factor − 1 pixels at the right and lower border are
/// left out. Weights of the colours: ITU-R BT.709 (from memory) on the stored values; what is transparent
/// counts as white paper. Expects a checked picture.
[[nodiscard]] Reduced reduced_grey(const Picture& picture, int left, int upper, int right, int lower);

} // namespace evenfall::picture
