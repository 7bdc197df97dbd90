#pragma once

// The piece of wood a body is cut from, and what a caliper says of the body once it is carved. Document data,
// nothing computed. SI.

#include <cstddef>
#include <optional>

namespace evenfall::document {

inline constexpr std::size_t max_measured = 24;

/// The board as it lies on the saw bench, and what the saw and the rasp may take.
struct Board {
    double length_m = 0.2;
    double height_m = 0.05;
    double thickness_m = 0.025;
    double saw_m = 0.0015; ///< left between the drawn line and the cut, all round: kerf and clean-up
};

/// A caliper reading at a station of the carved body: the full width, the full height, or both.
struct Measured {
    double x_m = 0.0;
    std::optional<double> width_m;
    std::optional<double> height_m;

    bool operator==(const Measured&) const = default;
};

} // namespace evenfall::document
