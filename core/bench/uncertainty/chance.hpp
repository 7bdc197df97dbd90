#pragma once

#include "bench/uncertainty/uncertainty.hpp"

#include <Eigen/Core>

namespace evenfall::bench {

/// Finished in-water mass as the fall feels it [kg] (model.hpp), logarithm of the weight that drag asks for
/// at a speed, and hang [rad], jointly Gaussian.
struct Forecast {
    Eigen::Vector3d mean = Eigen::Vector3d::Zero();
    Eigen::Matrix3d covariance = Eigen::Matrix3d::Zero();
};

/// What is asked of them. In-water masses hold at the mean of drag and go up with it, since weight over drag
/// gives the speed; not so where a weight in water is asked.
struct Asked {
    double low_kg = 0.0;
    double aim_kg = 0.0;
    double high_kg = 0.0;
    bool with_drag = true;
    double pitch_rad = 0.0;
    double pitch_band_rad = 0.0;
};

/// The chance of both, by quadrature over drag and mass with the hang conditional on them. Error below 2e-3,
/// below 1e-4 where no spread is a tenth of its band.
[[nodiscard]] Chances chances(const Forecast& forecast, const Asked& asked);

/// The same for a lure put right: its expected weight and hang as asked, the spread what it is.
[[nodiscard]] Chances chances_put_right(const Forecast& forecast, const Asked& asked);

/// The share of lures lighter in water than `kg` times drag: those that fall slower than a lure of just that
/// weight does.
[[nodiscard]] double share_below(const Forecast& forecast, double kg);

} // namespace evenfall::bench
