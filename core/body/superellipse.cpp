#include "body/superellipse.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace evenfall::shape {

namespace {

constexpr std::array<double, 3> eighths{-0.5, 0.0, 0.5};

double partner(double exponent, double value) {
    return std::pow(std::max(0.0, 1.0 - std::pow(std::min(1.0, std::abs(value)), exponent)), 1.0 / exponent);
}

/// The rim point at 1 − τ: Y and Z are exchanged.
RimPoint diagonal_mirror(const RimPoint& p) {
    return {p.z, p.y, -p.z_tau, -p.y_tau, p.z_parameter, p.y_parameter};
}

/// The rim point at −τ.
RimPoint belly_mirror(const RimPoint& p) {
    return {p.y, -p.z, -p.y_tau, p.z_tau, p.y_parameter, -p.z_parameter};
}

/// Chebyshev series at t in [−1, 1] by Clenshaw's sum.
template <std::size_t N>
double chebyshev_sum(const std::array<double, N>& coefficient, double t) {
    double next = 0.0;
    double after = 0.0;
    for (std::size_t k = N - 1; k >= 1; --k) {
        const double now = 2.0 * t * next - after + coefficient[k];
        after = next;
        next = now;
    }
    return t * next - after + coefficient[0];
}

} // namespace

UnitMoments Superellipse::exact_moments(double exponent) {
    // ∬ over the first quadrant of Y^(p−1) Z^(q−1) = Γ(p/n)Γ(q/n) / (n² Γ(1 + (p+q)/n)), four quadrants.
    const double v = 1.0 / exponent;
    const double g1 = std::tgamma(1.0 + v);
    UnitMoments m;
    m.area = 4.0 * g1 * g1 / std::tgamma(1.0 + 2.0 * v);
    m.yy = 4.0 / 3.0 * std::tgamma(1.0 + 3.0 * v) * g1 / std::tgamma(1.0 + 4.0 * v);
    m.zz = m.yy;
    return m;
}

Superellipse::Superellipse(double smallest_exponent, double largest_exponent)
    : smallest_(smallest_exponent), largest_(largest_exponent) {
    if (smallest_ == largest_) {
        constant_ = exact_moments(smallest_);
        return;
    }
    const double low = 1.0 / largest_;
    const double high = 1.0 / smallest_;
    for (std::size_t j = 0; j < fit_size; ++j) {
        const double node =
            std::cos(std::numbers::pi * (static_cast<double>(j) + 0.5) / static_cast<double>(fit_size));
        const UnitMoments m = exact_moments(1.0 / (0.5 * (low + high) + 0.5 * (high - low) * node));
        double before = node; // T₋₁ = T₁
        double now = 1.0;
        for (std::size_t k = 0; k < fit_size; ++k) {
            const double share = (k == 0 ? 1.0 : 2.0) / static_cast<double>(fit_size) * now;
            area_fit_[k] += share * m.area;
            second_fit_[k] += share * m.yy;
            const double next = 2.0 * node * now - before;
            before = now;
            now = next;
        }
    }
}

UnitMoments Superellipse::moments(double exponent) const {
    if (!(exponent >= smallest_ && exponent <= largest_)) return exact_moments(exponent);
    if (smallest_ == largest_) return constant_;
    const double low = 1.0 / largest_;
    const double high = 1.0 / smallest_;
    const double t = (2.0 / exponent - low - high) / (high - low);
    UnitMoments m;
    m.area = chebyshev_sum(area_fit_, t);
    m.yy = chebyshev_sum(second_fit_, t);
    m.zz = m.yy;
    return m;
}

RimPoint Superellipse::rim(double exponent, double tau) const {
    // Both signs of Z, and both sides of the diagonal, follow from the eighth 0 ≤ Z ≤ Y.
    const double quarter = std::abs(tau);
    const bool past_diagonal = quarter > 0.5;
    const double t = 2.0 * (past_diagonal ? 1.0 - quarter : quarter);
    const double log_t = t > 0.0 ? std::log(t) : 0.0;
    const double tn = t > 0.0 ? std::exp(exponent * log_t) : 0.0;
    const double log_sum = std::log1p(tn);
    const double y = std::exp(-log_sum / exponent);
    const double y_t = t > 0.0 ? -y * tn / ((1.0 + tn) * t) : 0.0;
    const double y_n = y * (log_sum / exponent - tn * log_t / (1.0 + tn)) / exponent;
    RimPoint p{y, t * y, 2.0 * y_t, 2.0 * (y + t * y_t), y_n, t * y_n};
    if (past_diagonal) p = diagonal_mirror(p);
    return tau < 0.0 ? belly_mirror(p) : p;
}

void Superellipse::rims(double exponent, std::span<const double> tau, std::span<RimPoint> points) const {
    // Where the points have the curve's own symmetries, one eighth is computed and mirrored.
    constexpr double rounding = 1e-14;
    const std::size_t half = tau.size() / 2;
    const std::size_t eighth = half / 2;
    bool symmetric = half > 0 && 2 * half == tau.size() && 2 * eighth == half;
    for (std::size_t k = 0; symmetric && k < half; ++k) {
        symmetric = std::abs(tau[half + k] + tau[half - 1 - k]) < rounding &&
                    std::abs(tau[half + k] + tau[2 * half - 1 - k] - 1.0) < rounding;
    }
    if (!symmetric) return SectionFamily::rims(exponent, tau, points);
    for (std::size_t k = 0; k < eighth; ++k) {
        const RimPoint p = rim(exponent, tau[half + k]);
        const RimPoint q = diagonal_mirror(p);
        points[half + k] = p;
        points[2 * half - 1 - k] = q;
        points[half - 1 - k] = belly_mirror(p);
        points[k] = belly_mirror(q);
    }
}

std::span<const double> Superellipse::rim_breaks() const {
    return eighths;
}

double Superellipse::upper_z(double exponent, double y) const {
    return partner(exponent, y);
}

double Superellipse::lower_z(double exponent, double y) const {
    return -partner(exponent, y);
}

double Superellipse::half_width(double exponent, double z) const {
    return partner(exponent, z);
}

} // namespace evenfall::shape
