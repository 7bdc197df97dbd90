#pragma once

#include "document/document.hpp"

#include <array>
#include <cstddef>
#include <vector>

namespace evenfall::shape {

/// A cubic in t: c[0] + c[1]t + c[2]t² + c[3]t³.
using Cubic = std::array<double, 4>;

struct CurveValue {
    double value = 0.0;
    double slope = 0.0; ///< per metre of x
};

inline CurveValue evaluated(const Cubic& c, double t) {
    return {c[0] + t * (c[1] + t * (c[2] + t * c[3])), c[1] + t * (2.0 * c[2] + t * 3.0 * c[3])};
}

/// The same cubic about a new origin: result(t) = c(t + shift).
[[nodiscard]] Cubic shifted(const Cubic& c, double shift);

/// A smooth curve through drawn points that never over- or undershoots them: monotone piecewise cubic Hermite
/// interpolation (Fritsch and Carlson 1980, SIAM J. Numer. Anal. 17, 238–246), inner slopes by the weighted
/// harmonic mean (Fritsch and Butland 1984, SIAM J. Sci. Stat. Comput. 5, 300–304), end slopes by the
/// three-point one-sided formula, reduced where it would break monotony. Slopes are continuous, curvature is
/// not.
///
/// One point gives a constant, two a straight line. Beyond its ends the curve keeps the end value with slope
/// 0. Points must be finite and ascend in x; drawing_check.hpp checks that.
class Curve {
public:
    explicit Curve(const document::CurvePoints& points);

    [[nodiscard]] CurveValue at(double x_m) const;

    /// The cubic between the two points around x, as a function of t = x − `origin_m`.
    [[nodiscard]] Cubic piece_at(double x_m, double origin_m) const;

    /// Minimum and maximum over the whole curve.
    [[nodiscard]] double least() const { return least_; }
    [[nodiscard]] double greatest() const { return greatest_; }

private:
    std::vector<double> x_m_;
    std::vector<Cubic> pieces_; ///< each as a function of the distance from its left point
    double first_ = 0.0;
    double last_ = 0.0;
    double least_ = 0.0;
    double greatest_ = 0.0;
};

} // namespace evenfall::shape
