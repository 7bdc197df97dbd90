#include "bench/uncertainty/chance.hpp"

#include "base/quadrature.hpp"
#include "water/hang.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace evenfall::bench {

namespace {

double slope_at(double pitch_rad) {
    constexpr double most_rad = 1.57; // beyond it lies no hang
    return std::tan(std::clamp(pitch_rad, -most_rad, most_rad));
}

/// Chance of a standard normal between two bounds.
double between(double low, double high) {
    // By the tails of the side where both are small, so that nothing cancels.
    if (low > 0.0)
        return 0.5 * (std::erfc(low / std::numbers::sqrt2) - std::erfc(high / std::numbers::sqrt2));
    return 0.5 * (std::erfc(-high / std::numbers::sqrt2) - std::erfc(-low / std::numbers::sqrt2));
}

double root(double square) {
    return std::sqrt(std::max(square, 0.0));
}

constexpr double reach = 4.5;      // standard deviations to each side
constexpr double least_kg = 1e-12; // keeps divisions by a standard deviation finite
constexpr double least_m = 1e-15;

/// A figure conditional on drag, and on mass and drag.
struct PastEnd {
    double per_drag = 0.0;
    double per_mass = 0.0; ///< of one standard deviation of the mass given drag
    double sigma = 0.0;    ///< given both
};

struct Conditional {
    double drag_sigma = 0.0;
    double mass_per_drag = 0.0;
    double mass_sigma = 0.0; ///< given drag
    PastEnd low, high;
};

/// Nodes of the midpoint rule over `reach` standard deviations of drag to each side, for chances whose
/// bounds move by up to `steepest` of their own standard deviation with one of drag. The rule's error on a
/// Gaussian times such a chance is exp(−2π²/(h²(1 + steepest²))) with steps h (Poisson's sum): 2e-8 with
/// these.
int nodes_for(double steepest) {
    constexpr double least = 10.0;
    constexpr double most = 64.0;
    return static_cast<int>(std::clamp(std::ceil(8.5 * std::sqrt(1.0 + steepest * steepest)), least, most));
}

Conditional conditional(const Eigen::Matrix4d& c, bool scales_with_drag) {
    Conditional out;
    out.drag_sigma = scales_with_drag ? root(c(figure::drag, figure::drag)) : 0.0;
    const double by_drag = out.drag_sigma > 0.0 ? 1.0 / c(figure::drag, figure::drag) : 0.0;
    const auto given_drag = [&](Eigen::Index i, Eigen::Index k) {
        return c(i, k) - by_drag * c(i, figure::drag) * c(k, figure::drag);
    };
    out.mass_per_drag = by_drag * c(figure::mass, figure::drag);
    out.mass_sigma = std::max(root(given_drag(figure::mass, figure::mass)), least_kg);
    const auto end = [&](Eigen::Index i) {
        PastEnd e;
        e.per_drag = by_drag * c(i, figure::drag);
        e.per_mass = given_drag(i, figure::mass) / out.mass_sigma;
        e.sigma = std::max(root(given_drag(i, i) - e.per_mass * e.per_mass), least_m);
        return e;
    };
    out.low = end(figure::past_low);
    out.high = end(figure::past_high);
    return out;
}

/// Chance of being past the lower end and not past the upper one. Whatever is past the upper end is past the
/// lower, as long as G is below B.
double hang_chance(double past_low, double low_sigma, double past_high, double high_sigma) {
    return std::max(0.0, between(-past_low / low_sigma, -past_high / high_sigma));
}

/// The integral of density(m)·chance(m) over standard normal deviations m of the mass.
template <class HangChance>
double over_mass(double low, double high, const HangChance& chance) {
    double sum = 0.0;
    const auto add = [&](const auto& rule) {
        for (std::size_t k = 0; k < rule.node.size(); ++k) {
            const double m = low + (high - low) * rule.node[k];
            const double density = std::exp(-0.5 * m * m) / std::sqrt(2.0 * std::numbers::pi);
            sum += rule.weight[k] * (high - low) * density * chance(m);
        }
    };
    // Four points are enough for less than three standard deviations.
    if (high - low < 3.0)
        add(gauss_rule<4>);
    else
        add(gauss_rule<10>);
    return sum;
}

} // namespace

std::optional<Arm> arm_of(const Vec3& g_m, const Vec3& b_m) {
    const double across_m = water::bg_across_m(b_m - g_m);
    if (!(across_m > 0.0)) return std::nullopt;
    return Arm{g_m.x - b_m.x, across_m};
}

double TargetBand::low_slope() const {
    return slope_at(pitch_rad - pitch_band_rad);
}

double TargetBand::high_slope() const {
    return slope_at(pitch_rad + pitch_band_rad);
}

Chances chances(const Forecast& forecast, const TargetBand& target) {
    const Eigen::Vector4d& mean = forecast.mean;
    const Conditional given = conditional(forecast.covariance, target.scales_with_drag);
    Chances sum;
    double weights = 0.0;
    const double steepest = std::max({std::abs(target.low_kg - given.mass_per_drag) / given.mass_sigma,
                                      std::abs(target.high_kg - given.mass_per_drag) / given.mass_sigma,
                                      std::abs(given.low.per_drag) / given.low.sigma,
                                      std::abs(given.high.per_drag) / given.high.sigma}) *
                            given.drag_sigma;
    const int count = given.drag_sigma > 0.0 ? nodes_for(steepest) : 1;
    for (int i = 0; i < count; ++i) {
        const double z = count > 1 ? reach * (2.0 * (i + 0.5) / count - 1.0) : 0.0;
        const double weight = std::exp(-0.5 * z * z);
        weights += weight;
        const double drag = z * given.drag_sigma;
        const double growth = target.scales_with_drag ? std::exp(drag) : 1.0; // of the weights asked for
        const double mass = mean(figure::mass) + given.mass_per_drag * drag;
        const double past_low = mean(figure::past_low) + given.low.per_drag * drag;
        const double past_high = mean(figure::past_high) + given.high.per_drag * drag;
        const double low = (target.low_kg * growth - mass) / given.mass_sigma;
        const double high = (target.high_kg * growth - mass) / given.mass_sigma;
        sum.fall += weight * between(low, high);
        const double from = std::max(low, -reach);
        const double to = std::min(high, reach);
        if (!(to > from)) continue;
        sum.both += weight * over_mass(from, to, [&](double m) {
                        return hang_chance(past_low + given.low.per_mass * m, given.low.sigma,
                                           past_high + given.high.per_mass * m, given.high.sigma);
                    });
    }
    sum.fall /= weights;
    sum.both /= weights;
    const auto sigma = [&](Eigen::Index i) { return std::max(root(forecast.covariance(i, i)), least_m); };
    sum.pitch = hang_chance(mean(figure::past_low), sigma(figure::past_low), mean(figure::past_high),
                            sigma(figure::past_high));
    if (!forecast.hangs) sum.pitch = sum.both = 0.0;
    return sum;
}

double share_below(const Forecast& forecast, double kg) {
    // A rise: what is below lies beyond zero, where the Gaussian below would put drags under zero. So over
    // drag, by quadrature.
    if (kg < 0.0) {
        const Conditional given = conditional(forecast.covariance, true);
        const int count = nodes_for(std::abs(kg - given.mass_per_drag) / given.mass_sigma * given.drag_sigma);
        double sum = 0.0;
        double weights = 0.0;
        for (int i = 0; i < count; ++i) {
            const double z = reach * (2.0 * (i + 0.5) / count - 1.0);
            const double weight = std::exp(-0.5 * z * z);
            const double drag = z * given.drag_sigma;
            const double mass = forecast.mean(figure::mass) + given.mass_per_drag * drag;
            sum += weight * 0.5 *
                   std::erfc((mass - kg * std::exp(drag)) / given.mass_sigma / std::numbers::sqrt2);
            weights += weight;
        }
        return sum / weights;
    }
    // Of mass − drag·kg, the first two moments are exact (drag is lognormal); its distribution is taken as
    // Gaussian.
    const Eigen::Matrix4d& c = forecast.covariance;
    const double variance = c(figure::drag, figure::drag);
    const double mean_drag = std::exp(0.5 * variance);
    const double drag_variance = mean_drag * mean_drag * std::expm1(variance);
    const double mean = forecast.mean(figure::mass) - kg * mean_drag;
    const double square = c(figure::mass, figure::mass) + kg * kg * drag_variance -
                          2.0 * kg * mean_drag * c(figure::mass, figure::drag);
    return 0.5 * std::erfc(mean / std::max(root(square), 1e-15) / std::numbers::sqrt2);
}

Chances chances_after_correction(const Forecast& forecast, const TargetBand& target) {
    if (!forecast.hangs) return chances_after_change(forecast, target, 0.0, std::nullopt);
    // As far below B as it is now.
    const double across_m = (forecast.mean(figure::past_low) - forecast.mean(figure::past_high)) /
                            (target.high_slope() - target.low_slope());
    return chances_after_change(forecast, target, 0.0, Arm{std::tan(target.pitch_rad) * across_m, across_m});
}

Chances chances_after_change(const Forecast& forecast, const TargetBand& target, double weight_off_kg,
                             const std::optional<Arm>& arm) {
    Forecast changed = forecast;
    changed.mean(figure::mass) = target.target_kg + weight_off_kg;
    changed.hangs = arm.has_value();
    if (arm) changed.mean.segment<2>(figure::past_low) = target.past(*arm);
    return chances(changed, target);
}

} // namespace evenfall::bench
