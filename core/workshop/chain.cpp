#include "workshop/chain.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace evenfall::joints {

Pin SegmentPose::of(double x_drawn_m, double y_drawn_m) const {
    const double c = std::cos(turned_rad);
    const double s = std::sin(turned_rad);
    return {c * x_drawn_m - s * y_drawn_m + x_m, s * x_drawn_m + c * y_drawn_m + y_m};
}

std::vector<SegmentPose> chain_poses(std::span<const Pin> pins, std::span<const double> swings_rad) {
    std::vector<SegmentPose> stands{SegmentPose{}};
    for (std::size_t k = 0; k < pins.size(); ++k) {
        const Pin at = stands.back().of(pins[k].x_m, pins[k].y_m);
        SegmentPose next{stands.back().turned_rad + swings_rad[k], 0.0, 0.0};
        const Pin turned = next.of(pins[k].x_m, pins[k].y_m);
        next.x_m = at.x_m - turned.x_m;
        next.y_m = at.y_m - turned.y_m;
        stands.push_back(next);
    }
    return stands;
}

double turn_radius_m(double length_m, std::span<const Pin> pins, std::span<const double> swings_rad) {
    if (pins.empty()) return std::numeric_limits<double>::infinity();
    double widest = 0.0;
    for (std::size_t k = 0; k < pins.size(); ++k) {
        const double before = k == 0 ? 0.0 : pins[k - 1].x_m;
        const double behind = k + 1 == pins.size() ? length_m : pins[k + 1].x_m;
        const double turn = std::tan(0.5 * std::abs(swings_rad[k]));
        if (turn <= 0.0) return std::numeric_limits<double>::infinity();
        widest = std::max(widest, 0.5 * (behind - before) / (2.0 * turn));
    }
    return widest;
}

} // namespace evenfall::joints
