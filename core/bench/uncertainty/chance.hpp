#pragma once

#include "bench/uncertainty/uncertainty.hpp"

#include <Eigen/Core>

namespace evenfall::bench {

/// Indices of the figures of the finished lure that chances depend on.
namespace figure {
enum : Eigen::Index {
    mass,     ///< equivalent in-water mass [kg] (model.hpp); the in-water mass where no fall is the target
    drag,     ///< logarithm of the weight needed for a speed; depends on drag alone
    hang,     ///< angle [rad]
    in_water, ///< in-water mass [kg]
    count
};
}

/// The first three figures, jointly Gaussian.
struct Forecast {
    Eigen::Vector3d mean = Eigen::Vector3d::Zero();
    Eigen::Matrix3d covariance = Eigen::Matrix3d::Zero();
};

/// The target and its bands. In-water masses hold at the mean of drag and are proportional to the weight
/// needed for a speed, unless a weight in water is the target.
struct TargetBand {
    double low_kg = 0.0;
    double target_kg = 0.0;
    double high_kg = 0.0;
    bool scales_with_drag = true;
    double pitch_rad = 0.0;
    double pitch_band_rad = 0.0;
};

/// The chances of weight, hang and both, by quadrature over drag and mass with the hang conditional on them.
/// Error below 2e-3, below 2e-4 where no standard deviation is less than a tenth of its band.
[[nodiscard]] Chances chances(const Forecast& forecast, const TargetBand& target);

/// The same once the lead is corrected: expected weight and hang on target, covariance as it is.
[[nodiscard]] Chances chances_after_correction(const Forecast& forecast, const TargetBand& target);

/// The same where the correction misses the target by so much weight, and ends at this hang.
[[nodiscard]] Chances chances_after_change(const Forecast& forecast, const TargetBand& target,
                                           double weight_off_kg, std::optional<double> hang_rad);

/// The chance that the lure falls slower than one of in-water mass `kg` at the mean of drag; with `kg` below
/// zero, that it rises faster.
[[nodiscard]] double share_below(const Forecast& forecast, double kg);

} // namespace evenfall::bench
