#pragma once

#include "base/outcome.hpp"

#include <cstdint>
#include <span>
#include <vector>

namespace evenfall::picture {

// Caps that keep a hostile or careless picture from costing more than a moment.
inline constexpr long long most_pixels = 24'000'000; ///< taken in
/// Kept for finding the outline; larger pictures are reduced. About 1030 by 775: a lure that fills most of
/// the picture is then looked at with 5 pixels or so a millimetre, and met within a tenth of a pencil line's
/// width.
inline constexpr long long most_working_pixels = 800'000;
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

/// One channel of real numbers, rows from the top.
struct Plane {
    int width = 0;
    int height = 0;
    std::vector<float> at;

    Plane() = default;
    Plane(int w, int h, float value = 0.0F)
        : width(w), height(h), at(static_cast<std::size_t>(w) * static_cast<std::size_t>(h), value) {}

    [[nodiscard]] std::size_t index(int x, int y) const {
        return static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x);
    }
};

/// Are these sides of a picture that may be looked at? Problems: too small, too large.
[[nodiscard]] Problems check_size(int width, int height);

/// Is this a picture that may be looked at? Problems: too small, too large, samples that do not fit the
/// sides.
[[nodiscard]] Problems check(const Picture& picture);

/// Brightness from 0 to 1, reduced to at most `pixels` by averaging over areas. Weights of the colours: ITU-R
/// BT.709 (from memory) on the stored values; what is transparent counts as white paper. Expects a checked
/// picture.
[[nodiscard]] Plane grey(const Picture& picture, long long pixels = most_working_pixels);

} // namespace evenfall::picture
