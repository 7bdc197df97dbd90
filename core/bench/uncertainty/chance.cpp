#include "bench/uncertainty/chance.hpp"

#include "base/quadrature.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace evenfall::bench {

namespace {

/// Chance of a standard normal between two bounds.
double between(double low, double high) {
    // From the side on which both tails are small, so that nothing cancels.
    if (low > 0.0)
        return 0.5 * (std::erfc(low / std::numbers::sqrt2) - std::erfc(high / std::numbers::sqrt2));
    return 0.5 * (std::erfc(-high / std::numbers::sqrt2) - std::erfc(-low / std::numbers::sqrt2));
}

double root(double square) {
    return std::sqrt(std::max(square, 0.0));
}

} // namespace

Chances chances(const Forecast& t, const Asked& asked) {
    constexpr int nodes = 64;
    constexpr double reach = 4.5;
    constexpr double least_kg = 1e-12; // no spread is quite nothing: keeps the divisions
    constexpr double least_rad = 1e-12;
    const Eigen::Matrix3d& c = t.covariance;
    const double drag_sigma = asked.with_drag ? root(c(1, 1)) : 0.0;
    // Mass and hang given drag; hang given mass and drag.
    const bool spreads = drag_sigma > 0.0;
    const double mass_per = spreads ? c(0, 1) / c(1, 1) : 0.0;
    const double hang_per = spreads ? c(2, 1) / c(1, 1) : 0.0;
    const double mass_variance = c(0, 0) - mass_per * (spreads ? c(0, 1) : 0.0);
    const double hang_variance = c(2, 2) - hang_per * (spreads ? c(2, 1) : 0.0);
    const double joint = c(0, 2) - mass_per * (spreads ? c(2, 1) : 0.0);
    const double mass_sigma = std::max(root(mass_variance), least_kg);
    const double slope = joint / (mass_sigma * mass_sigma);
    const double hang_sigma = std::max(root(hang_variance - slope * joint), least_rad);
    Chances sum;
    double weights = 0.0;
    const int count = spreads ? nodes : 1;
    for (int i = 0; i < count; ++i) {
        const double z = spreads ? reach * (2.0 * (i + 0.5) / count - 1.0) : 0.0;
        const double weight = std::exp(-0.5 * z * z);
        weights += weight;
        const double x = z * drag_sigma;
        const double growth = asked.with_drag ? std::exp(x) : 1.0;
        const double mass = t.mean(0) + mass_per * x;
        const double low = (asked.low_kg * growth - mass) / mass_sigma;
        const double high = (asked.high_kg * growth - mass) / mass_sigma;
        sum.fall += weight * between(low, high);
        const double from = std::max(low, -reach);
        const double to = std::min(high, reach);
        if (!(to > from)) continue;
        const auto add = [&](const auto& rule) {
            for (std::size_t k = 0; k < rule.node.size(); ++k) {
                const double m = from + (to - from) * rule.node[k];
                const double hang = t.mean(2) + hang_per * x + slope * mass_sigma * m - asked.pitch_rad;
                const double density = std::exp(-0.5 * m * m) / std::sqrt(2.0 * std::numbers::pi);
                sum.both += weight * rule.weight[k] * (to - from) * density *
                            between((-asked.pitch_band_rad - hang) / hang_sigma,
                                    (asked.pitch_band_rad - hang) / hang_sigma);
            }
        };
        // Four points do for a stretch of less than three standard deviations.
        if (to - from < 3.0)
            add(gauss_rule<4>);
        else
            add(gauss_rule<10>);
    }
    sum.fall /= weights;
    sum.both /= weights;
    const double sigma = std::max(root(c(2, 2)), least_rad);
    const double off = t.mean(2) - asked.pitch_rad;
    sum.pitch = between((-asked.pitch_band_rad - off) / sigma, (asked.pitch_band_rad - off) / sigma);
    if (!std::isfinite(t.mean(2))) sum.pitch = sum.both = 0.0;
    return sum;
}

double share_below(const Forecast& t, double kg) {
    // Weight less drag times kg, its first two moments taken exactly (drag is lognormal) and itself as
    // Gaussian.
    const double variance = t.covariance(1, 1);
    const double mean_drag = std::exp(0.5 * variance);
    const double drag_variance = mean_drag * mean_drag * std::expm1(variance);
    const double mean = t.mean(0) - kg * mean_drag;
    const double square =
        t.covariance(0, 0) + kg * kg * drag_variance - 2.0 * kg * mean_drag * t.covariance(0, 1);
    return 0.5 * std::erfc(mean / std::max(root(square), 1e-15) / std::numbers::sqrt2);
}

Chances chances_put_right(const Forecast& forecast, const Asked& asked) {
    Forecast right = forecast;
    right.mean(0) = asked.aim_kg;
    right.mean(2) = asked.pitch_rad;
    return chances(right, asked);
}

} // namespace evenfall::bench
