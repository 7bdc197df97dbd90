#pragma once

#include "body/pin.hpp"

#include <span>
#include <vector>

namespace evenfall::joints {

/// Position of a segment seen from above: rotated by `turned_rad` (tail to starboard positive), then
/// translated. A drawn point (x, y) moves to (x·cos − y·sin + x_m, x·sin + y·cos + y_m).
struct SegmentPose {
    double turned_rad = 0.0;
    double x_m = 0.0;
    double y_m = 0.0;

    [[nodiscard]] Pin of(double x_drawn_m, double y_drawn_m) const;
};

/// Positions of all segments with each joint swung by its angle (tail to starboard positive); the first
/// segment stays as drawn. pins.size() + 1 entries.
[[nodiscard]] std::vector<SegmentPose> chain_poses(std::span<const Pin> pins,
                                                   std::span<const double> swings_rad);

/// Smallest radius of an even curve that the chain can follow: joint i, between pins (or ends) at mean
/// distance l, follows a circle of radius l/(2·tan(ψ/2)); the result is the largest of these. Infinite where
/// one joint does not swing, or there is none.
[[nodiscard]] double turn_radius_m(double length_m, std::span<const Pin> pins,
                                   std::span<const double> swings_rad);

} // namespace evenfall::joints
