#pragma once

#include "body/pin.hpp"

#include <span>
#include <vector>

namespace evenfall::joints {

/// Where a segment stands, seen from above: turned by `turned_rad` (tail to starboard positive) and then
/// moved. A drawn point (x, y) stands at (x·cos − y·sin + x_m, x·sin + y·cos + y_m).
struct Stand {
    double turned_rad = 0.0;
    double x_m = 0.0;
    double y_m = 0.0;

    [[nodiscard]] Pin of(double x_drawn_m, double y_drawn_m) const;
};

/// The chain with each joint swung by its angle (tail to starboard positive); the first segment stays where
/// it is drawn. pins.size() + 1 stands.
[[nodiscard]] std::vector<Stand> chain_stands(std::span<const Pin> pins, std::span<const double> swings_rad);

/// How tightly the chain bends as one even curve: joint i, between pins (or ends) at mean distance l, follows
/// a circle of radius l/(2·tan(ψ/2)); the widest of these circles is the tightest that all of them follow.
/// Infinite where one joint does not swing, or there is none.
[[nodiscard]] double turn_radius_m(double length_m, std::span<const Pin> pins,
                                   std::span<const double> swings_rad);

} // namespace evenfall::joints
