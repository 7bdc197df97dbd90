#include "drawing/world_to_screen.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace evenfall::shell::drawing {

double fitting_px_per_m(double u_span_m, double v_span_m, float w_px, float h_px) {
    constexpr double none = std::numeric_limits<double>::infinity();
    const double by_width = u_span_m > 0.0 ? static_cast<double>(w_px) / u_span_m : none;
    const double by_height = v_span_m > 0.0 ? static_cast<double>(h_px) / v_span_m : none;
    const double scale = std::min(by_width, by_height);
    // A window too small to draw in still has a scale, so that the transform can always be inverted.
    return std::isfinite(scale) ? std::max(scale, 1.0) : 1.0;
}

WorldToScreen WorldToScreen::turned(double pitch_rad) const {
    WorldToScreen map = *this;
    map.cosine_ = std::cos(pitch_rad);
    map.sine_ = std::sin(pitch_rad);
    return map;
}

ViewPoint pitched(double u, double v, double pitch_rad) {
    const double c = std::cos(pitch_rad);
    const double s = std::sin(pitch_rad);
    return {u * c + v * s, -u * s + v * c};
}

} // namespace evenfall::shell::drawing
