#include "water/fall/added_mass.hpp"

#include "base/root.hpp"

#include <algorithm>
#include <boost/math/special_functions/ellint_rd.hpp>
#include <cmath>
#include <numbers>

namespace evenfall::fall {

namespace {

/// Carlson's R_D in plain doubles, so that native and page take the same steps.
double carlson_rd(double x, double y, double z) {
    return boost::math::ellint_rd(x, y, z, QuietDoubles());
}

} // namespace

EllipsoidShares ellipsoid_shares(double half_length_m, double half_width_m, double half_height_m) {
    // Shares depend only on the shape: lengths in units of the half length.
    const double b = half_width_m / half_length_m;
    const double c = half_height_m / half_length_m;
    const double b2 = b * b;
    const double c2 = c * c;
    const double alpha = 2.0 / 3.0 * b * c * carlson_rd(b2, c2, 1.0);
    const double gamma = 2.0 / 3.0 * b * c * carlson_rd(1.0, b2, c2);
    EllipsoidShares shares{alpha / (2.0 - alpha), gamma / (2.0 - gamma), 0.0};
    const double unlike = 1.0 - c2;
    if (std::abs(unlike) > 1e-6) {
        const double lift = gamma - alpha;
        shares.pitch_m2 =
            0.2 * half_length_m * half_length_m * unlike * unlike * lift / (2.0 * unlike - (1.0 + c2) * lift);
    }
    return shares;
}

double section_added_mass(double width_per_height, double filled_share) {
    const double r = (width_per_height - 1.0) / (width_per_height + 1.0);
    const double fill = 4.0 / std::numbers::pi * std::clamp(filled_share, 0.5, 1.0);
    const double k = 3.0 + fill + (1.0 - fill) * r * r;
    const double t = (3.0 + std::sqrt(9.0 - 2.0 * k)) / k; // 1 + a₃
    const double a1 = r * t;
    const double a3 = t - 1.0;
    const double half_width = t + a1;
    return ((1.0 + a1) * (1.0 + a1) + 3.0 * a3 * a3) / (half_width * half_width);
}

} // namespace evenfall::fall
