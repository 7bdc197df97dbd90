#pragma once

#include "bench/uncertainty/uncertainty.hpp"

#include <Eigen/Core>
#include <optional>

namespace evenfall::bench {

/// Indices of the figures of the finished lure that chances depend on.
namespace figure {
enum : Eigen::Index {
    mass,      ///< equivalent in-water mass [kg] (model.hpp); the in-water mass where no fall is the target
    drag,      ///< logarithm of the weight needed for a speed; depends on drag alone
    past_low,  ///< how far G is aft of where it would hang at the lower end of the target's band [m]
    past_high, ///< the same of the upper end; the hang is right where this is < 0 and past_low > 0
    in_water,  ///< in-water mass [kg]
    count
};
inline constexpr Eigen::Index of_chance = 4; ///< the first four
} // namespace figure

/// Where G is seen from B, once the lure has rolled as it hangs (water/hang.hpp).
struct Arm {
    double aft_m = 0.0;
    double across_m = 0.0; ///< below
};
/// Absent where G is not below B.
[[nodiscard]] std::optional<Arm> arm_of(const Vec3& g_m, const Vec3& b_m);

/// The first four figures, jointly Gaussian. The hang itself is an angle, and bends: where G is near B, the
/// ends of its spread lie far apart. Past either end of a band G is by a length that follows the inputs
/// straight.
struct Forecast {
    Eigen::Vector4d mean = Eigen::Vector4d::Zero();
    Eigen::Matrix4d covariance = Eigen::Matrix4d::Zero();
    bool hangs = true; ///< G is below B
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

    /// Aft over across at the ends of the hang's band, short of 90° either way.
    [[nodiscard]] double low_slope() const;
    [[nodiscard]] double high_slope() const;
    /// Figures past_low and past_high of an arm.
    [[nodiscard]] Eigen::Vector2d past(const Arm& arm) const {
        return {arm.aft_m - low_slope() * arm.across_m, arm.aft_m - high_slope() * arm.across_m};
    }
};

/// The chances of weight, hang and both, by quadrature over drag and mass with the hang conditional on them.
/// Error below 2e-3, below 2e-4 where no standard deviation is less than a tenth of its band; and the chance
/// that G comes above B is left out of account.
[[nodiscard]] Chances chances(const Forecast& forecast, const TargetBand& target);

/// The same once the lead is corrected: expected weight and hang on target, covariance as it is.
[[nodiscard]] Chances chances_after_correction(const Forecast& forecast, const TargetBand& target);

/// The same where the correction misses the target by so much weight, and ends with this arm; absent where it
/// rolls over then.
[[nodiscard]] Chances chances_after_change(const Forecast& forecast, const TargetBand& target,
                                           double weight_off_kg, const std::optional<Arm>& arm);

/// The chance that the lure falls slower than one of in-water mass `kg` at the mean of drag; with `kg` below
/// zero, that it rises faster.
[[nodiscard]] double share_below(const Forecast& forecast, double kg);

} // namespace evenfall::bench
