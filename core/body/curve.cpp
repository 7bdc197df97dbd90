#include "body/curve.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::shape {

namespace {

/// Three-point one-sided slope at an end, limited so that the curve stays monotone there. h0, d0: width and
/// slope of the end interval; h1, d1: of its neighbour.
double end_slope(double h0, double h1, double d0, double d1) {
    const double slope = ((2.0 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
    if (slope * d0 <= 0.0) return 0.0;
    if (d0 * d1 <= 0.0 && std::abs(slope) > 3.0 * std::abs(d0)) return 3.0 * d0;
    return slope;
}

double inner_slope(double h_left, double h_right, double d_left, double d_right) {
    if (d_left * d_right <= 0.0) return 0.0;
    const double w_left = 2.0 * h_right + h_left;
    const double w_right = h_right + 2.0 * h_left;
    return (w_left + w_right) / (w_left / d_left + w_right / d_right);
}

} // namespace

Cubic shifted(const Cubic& c, double s) {
    return {c[0] + s * (c[1] + s * (c[2] + s * c[3])), c[1] + s * (2.0 * c[2] + 3.0 * s * c[3]),
            c[2] + 3.0 * s * c[3], c[3]};
}

Curve::Curve(const document::CurvePoints& points) {
    const std::size_t n = points.size();
    first_ = points.front().value;
    last_ = points.back().value;
    least_ = greatest_ = first_;
    for (const document::CurvePoint& p : points) {
        least_ = std::min(least_, p.value);
        greatest_ = std::max(greatest_, p.value);
    }
    x_m_.reserve(n);
    for (const document::CurvePoint& p : points)
        x_m_.push_back(p.x_m);
    if (n < 2) return;

    pieces_.reserve(n - 1);
    const auto width = [&](std::size_t k) { return points[k + 1].x_m - points[k].x_m; };
    const auto rise = [&](std::size_t k) { return (points[k + 1].value - points[k].value) / width(k); };
    const auto slope_at = [&](std::size_t k) {
        if (n == 2) return rise(0);
        if (k == 0) return end_slope(width(0), width(1), rise(0), rise(1));
        if (k == n - 1) return end_slope(width(n - 2), width(n - 3), rise(n - 2), rise(n - 3));
        return inner_slope(width(k - 1), width(k), rise(k - 1), rise(k));
    };
    double left = slope_at(0);
    for (std::size_t k = 0; k + 1 < n; ++k) {
        const double right = slope_at(k + 1);
        const double h = width(k);
        const double d = rise(k);
        pieces_.push_back(
            {points[k].value, left, (3.0 * d - 2.0 * left - right) / h, (left + right - 2.0 * d) / (h * h)});
        left = right;
    }
}

CurveValue Curve::at(double x_m) const {
    if (pieces_.empty() || x_m < x_m_.front()) return {first_, 0.0};
    if (x_m > x_m_.back()) return {last_, 0.0};
    const auto after = std::upper_bound(x_m_.begin() + 1, x_m_.end() - 1, x_m);
    const auto k = static_cast<std::size_t>(after - x_m_.begin()) - 1;
    return evaluated(pieces_[k], x_m - x_m_[k]);
}

Cubic Curve::piece_at(double x_m, double origin_m) const {
    if (pieces_.empty() || x_m < x_m_.front()) return {first_, 0.0, 0.0, 0.0};
    if (x_m > x_m_.back()) return {last_, 0.0, 0.0, 0.0};
    const auto after = std::upper_bound(x_m_.begin() + 1, x_m_.end() - 1, x_m);
    const auto k = static_cast<std::size_t>(after - x_m_.begin()) - 1;
    return shifted(pieces_[k], origin_m - x_m_[k]);
}

} // namespace evenfall::shape
