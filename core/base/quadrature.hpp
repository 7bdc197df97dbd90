#pragma once

#include <array>
#include <cstddef>

namespace evenfall {

/// Gauss–Legendre rule with N points on [0, 1]: ∫₀¹ f ≈ Σ weight[k]·f(node[k]), exact for polynomials of
/// degree 2N − 1. Nodes ascend. Computed at compile time, so any order is available without a table
/// (Boost.Math stores only 7, 10, 15 … points; the tests compare with those).
template <std::size_t N>
struct GaussRule {
    std::array<double, N> node{};
    std::array<double, N> weight{};
};

namespace quadrature_detail {

struct Legendre {
    double value;
    double slope;
};

/// P_N and its derivative on (−1, 1) by the three-term recurrence.
constexpr Legendre legendre(std::size_t order, double x) {
    double before = 1.0;
    double now = x;
    for (std::size_t k = 2; k <= order; ++k) {
        const double n = static_cast<double>(k);
        const double next = ((2.0 * n - 1.0) * x * now - (n - 1.0) * before) / n;
        before = now;
        now = next;
    }
    const double n = static_cast<double>(order);
    return {now, n * (before - x * now) / (1.0 - x * x)};
}

template <std::size_t N>
constexpr GaussRule<N> make_gauss_rule() {
    static_assert(N >= 2);
    GaussRule<N> rule;
    // The N roots are simple and more than 1/N² apart: a scan brackets each one, Newton's method refines it.
    const std::size_t steps = 4 * N * N;
    std::size_t found = 0;
    for (std::size_t i = 0; i < steps && found < N; ++i) {
        const double left = -1.0 + (2.0 * static_cast<double>(i) + 1e-6) / static_cast<double>(steps);
        const double right = left + 2.0 / static_cast<double>(steps);
        if ((legendre(N, left).value < 0.0) == (legendre(N, right < 1.0 ? right : 1.0 - 1e-9).value < 0.0))
            continue;
        double x = 0.5 * (left + right);
        for (int k = 0; k < 8; ++k) {
            const Legendre p = legendre(N, x);
            x -= p.value / p.slope;
        }
        const double slope = legendre(N, x).slope;
        rule.node[found] = 0.5 + 0.5 * x;
        rule.weight[found] = 1.0 / ((1.0 - x * x) * slope * slope);
        ++found;
    }
    return rule;
}

} // namespace quadrature_detail

template <std::size_t N>
inline constexpr GaussRule<N> gauss_rule = quadrature_detail::make_gauss_rule<N>();

/// An interval with a change of variable that removes a square-root (or milder) singularity at either end: x
/// = x(s), 0 ≤ s ≤ 1, with dx/ds = 0 at a soft end. Intervals without one are mapped linearly.
struct SoftInterval {
    double from = 0.0;
    double to = 1.0;
    bool soft_from = false;
    bool soft_to = false;

    [[nodiscard]] constexpr double at(double s) const {
        const double l = to - from;
        if (soft_from && soft_to) return from + l * s * s * (3.0 - 2.0 * s);
        if (soft_from) return from + l * s * s;
        if (soft_to) return to - l * (1.0 - s) * (1.0 - s);
        return from + l * s;
    }

    /// dx/ds.
    [[nodiscard]] constexpr double stretch(double s) const {
        const double l = to - from;
        if (soft_from && soft_to) return 6.0 * l * s * (1.0 - s);
        if (soft_from) return 2.0 * l * s;
        if (soft_to) return 2.0 * l * (1.0 - s);
        return l;
    }
};

} // namespace evenfall
