#include "surety/chance.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace evenfall::bench {

namespace {

/// Chance of a standard normal between two bounds.
double between(double low, double high) {
    // From the side on which both tails are small, so that nothing cancels.
    if (low > 0.0) return 0.5 * (std::erfc(low / std::numbers::sqrt2) - std::erfc(high / std::numbers::sqrt2));
    return 0.5 * (std::erfc(-high / std::numbers::sqrt2) - std::erfc(-low / std::numbers::sqrt2));
}

// Gauss-Legendre, ten points on −1 to 1 (Abramowitz and Stegun, chapter 25; from memory, tests hold the chances they give).
constexpr std::array<std::array<double, 2>, 5> legendre{{{0.1488743389816312, 0.2955242247147529},
                                                         {0.4333953941292472, 0.2692667193099963},
                                                         {0.6794095682990244, 0.2190863625159820},
                                                         {0.8650633666889845, 0.1494513491505806},
                                                         {0.9739065285171717, 0.0666713443086881}}};

/// Four points, for a stretch of less than three standard deviations (as above).
constexpr std::array<std::array<double, 2>, 2> short_legendre{{{0.3399810435848563, 0.6521451548625461},
                                                               {0.8611363115940526, 0.3478548451374538}}};

double root(double square) { return std::sqrt(std::max(square, 0.0)); }

}  // namespace

Chances chances(const Trio& t, const Asked& asked) {
    constexpr int nodes = 64;
    constexpr double reach = 4.5;
    constexpr double least_kg = 1e-12;  // no spread is quite nothing: keeps the divisions
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
        const double middle = 0.5 * (from + to);
        const double half = 0.5 * (to - from);
        const auto add = [&](double at, double share) {
            for (const double side : {-1.0, 1.0}) {
                const double m = middle + side * half * at;
                const double hang = t.mean(2) + hang_per * x + slope * mass_sigma * m - asked.pitch_rad;
                const double density = std::exp(-0.5 * m * m) / std::sqrt(2.0 * std::numbers::pi);
                sum.both += weight * share * half * density *
                            between((-asked.pitch_band_rad - hang) / hang_sigma, (asked.pitch_band_rad - hang) / hang_sigma);
            }
        };
        if (half < 1.5) {
            for (const auto& [at, share] : short_legendre) add(at, share);
        } else {
            for (const auto& [at, share] : legendre) add(at, share);
        }
    }
    sum.fall /= weights;
    sum.both /= weights;
    const double sigma = std::max(root(c(2, 2)), least_rad);
    const double off = t.mean(2) - asked.pitch_rad;
    sum.pitch = between((-asked.pitch_band_rad - off) / sigma, (asked.pitch_band_rad - off) / sigma);
    if (!std::isfinite(t.mean(2))) sum.pitch = sum.both = 0.0;
    return sum;
}

double share_below(const Trio& t, double kg) {
    // Weight less drag times kg, its first two moments taken exactly (drag is lognormal) and itself as Gaussian.
    const double variance = t.covariance(1, 1);
    const double mean_drag = std::exp(0.5 * variance);
    const double drag_variance = mean_drag * mean_drag * std::expm1(variance);
    const double mean = t.mean(0) - kg * mean_drag;
    const double square = t.covariance(0, 0) + kg * kg * drag_variance - 2.0 * kg * mean_drag * t.covariance(0, 1);
    return 0.5 * std::erfc(mean / std::max(root(square), 1e-15) / std::numbers::sqrt2);
}

Chances chances_put_right(const Trio& trio, const Asked& asked) {
    Trio right = trio;
    right.mean(0) = asked.aim_kg;
    right.mean(2) = asked.pitch_rad;
    return chances(right, asked);
}

}  // namespace evenfall::bench
