#include "bench/uncertainty/chance.hpp"

#include "base/quadrature.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace evenfall::bench {

namespace {

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

constexpr int nodes = 64;          // over drag
constexpr double reach = 4.5;      // standard deviations to each side
constexpr double least_kg = 1e-12; // keeps divisions by a standard deviation finite
constexpr double least_rad = 1e-12;

/// Mass and hang conditional on drag, and hang conditional on mass and drag.
struct Conditional {
    double drag_sigma = 0.0;
    Eigen::Vector2d per_drag = Eigen::Vector2d::Zero(); ///< of the means of mass and hang
    double mass_sigma = 0.0;                            ///< given drag
    double hang_per_kg = 0.0;                           ///< of the mean of hang, given drag
    double hang_sigma = 0.0;                            ///< given mass and drag
};
Conditional conditional(const Eigen::Matrix3d& c, bool scales_with_drag) {
    Conditional out;
    out.drag_sigma = scales_with_drag ? root(c(figure::drag, figure::drag)) : 0.0;
    Eigen::Matrix2d rest; // covariance of mass and hang
    rest << c(figure::mass, figure::mass), c(figure::mass, figure::hang), c(figure::hang, figure::mass),
        c(figure::hang, figure::hang);
    if (out.drag_sigma > 0.0) {
        const Eigen::Vector2d with_drag(c(figure::mass, figure::drag), c(figure::hang, figure::drag));
        out.per_drag = with_drag / c(figure::drag, figure::drag);
        rest -= out.per_drag * with_drag.transpose();
    }
    const double joint = rest(0, 1);
    out.mass_sigma = std::max(root(rest(0, 0)), least_kg);
    out.hang_per_kg = joint / (out.mass_sigma * out.mass_sigma);
    out.hang_sigma = std::max(root(rest(1, 1) - out.hang_per_kg * joint), least_rad);
    return out;
}

/// Chance that a Gaussian hang is within the target's band.
double hang_chance(double mean_rad, double sigma_rad, const TargetBand& target) {
    const double off = mean_rad - target.pitch_rad;
    return between((-target.pitch_band_rad - off) / sigma_rad, (target.pitch_band_rad - off) / sigma_rad);
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

Chances chances(const Forecast& forecast, const TargetBand& target) {
    const Eigen::Vector3d& mean = forecast.mean;
    const Conditional given = conditional(forecast.covariance, target.scales_with_drag);
    Chances sum;
    double weights = 0.0;
    const int count = given.drag_sigma > 0.0 ? nodes : 1;
    for (int i = 0; i < count; ++i) {
        const double z = count > 1 ? reach * (2.0 * (i + 0.5) / count - 1.0) : 0.0;
        const double weight = std::exp(-0.5 * z * z);
        weights += weight;
        const double drag = z * given.drag_sigma;
        const double growth = target.scales_with_drag ? std::exp(drag) : 1.0; // of the weights asked for
        const double mass = mean(figure::mass) + given.per_drag(0) * drag;
        const double hang = mean(figure::hang) + given.per_drag(1) * drag;
        const double low = (target.low_kg * growth - mass) / given.mass_sigma;
        const double high = (target.high_kg * growth - mass) / given.mass_sigma;
        sum.fall += weight * between(low, high);
        const double from = std::max(low, -reach);
        const double to = std::min(high, reach);
        if (!(to > from)) continue;
        sum.both +=
            weight * over_mass(from, to, [&](double m) {
                return hang_chance(hang + given.hang_per_kg * given.mass_sigma * m, given.hang_sigma, target);
            });
    }
    sum.fall /= weights;
    sum.both /= weights;
    const double hang_sigma = std::max(root(forecast.covariance(figure::hang, figure::hang)), least_rad);
    sum.pitch = hang_chance(mean(figure::hang), hang_sigma, target);
    if (!std::isfinite(mean(figure::hang))) sum.pitch = sum.both = 0.0;
    return sum;
}

double share_below(const Forecast& forecast, double kg) {
    // A rise: what is below lies beyond zero, where the Gaussian below would put drags under zero. So over
    // drag, by quadrature.
    if (kg < 0.0) {
        const Conditional given = conditional(forecast.covariance, true);
        double sum = 0.0;
        double weights = 0.0;
        for (int i = 0; i < nodes; ++i) {
            const double z = reach * (2.0 * (i + 0.5) / nodes - 1.0);
            const double weight = std::exp(-0.5 * z * z);
            const double drag = z * given.drag_sigma;
            const double mass = forecast.mean(figure::mass) + given.per_drag(0) * drag;
            sum += weight * 0.5 *
                   std::erfc((mass - kg * std::exp(drag)) / given.mass_sigma / std::numbers::sqrt2);
            weights += weight;
        }
        return sum / weights;
    }
    // Of mass − drag·kg, the first two moments are exact (drag is lognormal); its distribution is taken as
    // Gaussian.
    const Eigen::Matrix3d& c = forecast.covariance;
    const double variance = c(figure::drag, figure::drag);
    const double mean_drag = std::exp(0.5 * variance);
    const double drag_variance = mean_drag * mean_drag * std::expm1(variance);
    const double mean = forecast.mean(figure::mass) - kg * mean_drag;
    const double square = c(figure::mass, figure::mass) + kg * kg * drag_variance -
                          2.0 * kg * mean_drag * c(figure::mass, figure::drag);
    return 0.5 * std::erfc(mean / std::max(root(square), 1e-15) / std::numbers::sqrt2);
}

Chances chances_after_correction(const Forecast& forecast, const TargetBand& target) {
    return chances_after_change(forecast, target, 0.0, target.pitch_rad);
}

Chances chances_after_change(const Forecast& forecast, const TargetBand& target, double weight_off_kg,
                             std::optional<double> hang_rad) {
    Forecast changed = forecast;
    changed.mean(figure::mass) = target.target_kg + weight_off_kg;
    changed.mean(figure::hang) = hang_rad.value_or(std::nan(""));
    return chances(changed, target);
}

} // namespace evenfall::bench
