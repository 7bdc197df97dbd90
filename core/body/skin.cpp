#include "body/body.hpp"

#include <array>
#include <cmath>
#include <limits>

namespace evenfall::shape {

SkinHeights skin_heights(const Lines& lines, double x_m, double y_m) {
    constexpr double none = std::numeric_limits<double>::quiet_NaN();
    if (!(x_m >= lines.nose_m() && x_m <= lines.tail_m())) return {none, none};
    const Station s = lines.at(x_m);
    const double y = std::abs(y_m);
    if (!(y <= s.half_width_m && s.half_width_m > 0.0)) return {none, none};
    const double share = y / s.half_width_m;
    return {s.centre_z_m + s.half_height_m * lines.family().upper_z(s.parameter, share),
            s.centre_z_m + s.half_height_m * lines.family().lower_z(s.parameter, share)};
}

double skin_half_width(const Lines& lines, double x_m, double z_m) {
    if (!(x_m >= lines.nose_m() && x_m <= lines.tail_m())) return 0.0;
    const Station s = lines.at(x_m);
    const double share = (z_m - s.centre_z_m) / s.half_height_m;
    if (!(std::abs(share) <= 1.0)) return 0.0;
    return s.half_width_m * lines.family().half_width(s.parameter, share);
}

ColumnSkin column_skin(const Lines& lines, double x_m, double y_m, double diameter_m) {
    // The centre with weight 1/4, and six points at √(2/3) of the radius with 1/8 each.
    struct Spoke {
        double x;
        double y;
    };
    constexpr double half_root_3 = 0.86602540378443865;
    constexpr std::array<Spoke, 6> spokes{{{1.0, 0.0},
                                           {0.5, half_root_3},
                                           {-0.5, half_root_3},
                                           {-1.0, 0.0},
                                           {-0.5, -half_root_3},
                                           {0.5, -half_root_3}}};
    const double reach = 0.5 * diameter_m * 0.81649658092772603;
    const SkinHeights axis = skin_heights(lines, x_m, y_m);
    ColumnSkin column{axis.back_z_m, 0.25 * axis.back_z_m, axis.belly_z_m, 0.25 * axis.belly_z_m};
    for (const Spoke& spoke : spokes) {
        const SkinHeights h = skin_heights(lines, x_m + reach * spoke.x, y_m + reach * spoke.y);
        column.back_mean_z_m += 0.125 * h.back_z_m;
        column.belly_mean_z_m += 0.125 * h.belly_z_m;
    }
    return column;
}

} // namespace evenfall::shape
