#include "materials/wire_strength.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace evenfall::wire {

namespace {

struct Row {
    double wire_m;
    double low_pa;
    double high_pa;
};

// ASTM A313, type 302 class 1: the largest wire size of each row and its range, converted from ksi.
constexpr std::array spring_rows{Row{0.508e-3, 2068e6, 2275e6}, Row{0.635e-3, 2006e6, 2206e6},
                                 Row{0.813e-3, 1944e6, 2137e6}, Row{1.041e-3, 1896e6, 2096e6},
                                 Row{1.295e-3, 1827e6, 2020e6}};
constexpr StrengthRange soft_range{517e6, 827e6};

constexpr double bent_share = 0.6;
constexpr double shear_share = 0.6;
constexpr double wet_and_weak_share = 0.43;
constexpr double two_eyes_share = 1.5;

double disc(double diameter_m) {
    return 0.25 * std::numbers::pi * diameter_m * diameter_m;
}

} // namespace

StrengthRange tensile(Temper temper, double wire_m) {
    if (temper == Temper::soft) return soft_range;
    if (wire_m <= spring_rows.front().wire_m)
        return {spring_rows.front().low_pa, spring_rows.front().high_pa};
    for (std::size_t k = 1; k < spring_rows.size(); ++k) {
        const Row& thin = spring_rows[k - 1];
        const Row& thick = spring_rows[k];
        if (wire_m > thick.wire_m) continue;
        const double share = (wire_m - thin.wire_m) / (thick.wire_m - thin.wire_m);
        return {std::lerp(thin.low_pa, thick.low_pa, share), std::lerp(thin.high_pa, thick.high_pa, share)};
    }
    return {spring_rows.back().low_pa, spring_rows.back().high_pa};
}

Strength strength(const PinAndWire& hold, double line_n) {
    const double eyes = hold.eyes > 1 ? two_eyes_share : 1.0;
    const double eye_pa = tensile(hold.temper, hold.wire_m).low_pa;
    const double along_grain_pa = wet_and_weak_share * hold.wood_shear_pa;
    Strength s;
    s.eye_n = eyes * 2.0 * disc(hold.wire_m) * eye_pa * bent_share;
    s.pull_out_n = eyes * std::numbers::pi * hold.hole_m * hold.glued_m * along_grain_pa;
    std::array<std::pair<Weakest, double>, 6> links{
        {{Weakest::eye_opens, s.eye_n},
         {Weakest::twist_pulls_out, s.pull_out_n},
         {Weakest::pin_shears, std::numeric_limits<double>::infinity()},
         {Weakest::pin_bends, std::numeric_limits<double>::infinity()},
         {Weakest::wood_under_pin, std::numeric_limits<double>::infinity()},
         {Weakest::wall_before_pin, std::numeric_limits<double>::infinity()}}};
    if (hold.has_pin) {
        const double pin_pa = tensile(hold.temper, hold.pin_m).low_pa;
        s.pin_shear_n = eyes * 2.0 * disc(hold.pin_m) * shear_share * pin_pa;
        s.pin_bend_n = eyes * 4.0 * pin_pa * hold.pin_m * hold.pin_m * hold.pin_m / 6.0 / hold.pin_span_m;
        s.wood_n = hold.wood_bearing_pa * hold.pin_m * hold.pin_in_wood_m;
        links[2].second = s.pin_shear_n;
        links[3].second = s.pin_bend_n;
        s.wall_n = 2.0 * std::max(0.0, hold.pin_wall_m) * hold.pin_in_wood_m * along_grain_pa;
        links[4].second = s.wood_n;
        links[5].second = s.wall_n;
    }
    const auto least = std::min_element(links.begin(), links.end(),
                                        [](const auto& a, const auto& b) { return a.second < b.second; });
    s.weakest = least->first;
    s.least_n = least->second;
    s.safety = line_n > 0.0 ? s.least_n / line_n : std::numeric_limits<double>::infinity();
    return s;
}

} // namespace evenfall::wire
