// A slender body of 140 mm. Its numbers are regression values of a prototype, not published truth.

#include "unit/water/afloat/forms.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using namespace evenfall;
using namespace evenfall::afloat;
using namespace evenfall::support;
using Catch::Matchers::WithinAbs;

namespace {

BareHull body_f() {
    return bare_hull(shape::drawn_lines(prototype_shape()).value());
}

} // namespace

TEST_CASE("GM of a deep slender floater, level, by share under water and depth of G (regression values of a "
          "prototype)") {
    const BareHull f = body_f();
    CHECK_THAT(f.hull.volume_m3() * 1e6, WithinAbs(57.4377, 0.0002));
    const double share[] = {0.5, 0.7, 0.8, 0.9, 0.95, 0.98};
    const double gm_mm[3][6] = {{-4.07, -1.97, -0.94, 0.07, 0.56, 0.84},
                                {-3.07, -0.97, 0.06, 1.07, 1.56, 1.84},
                                {-1.07, 1.03, 2.06, 3.07, 3.56, 3.84}};
    const double g_low_mm[] = {1.0, 2.0, 4.0};
    for (int row = 0; row < 3; ++row) {
        for (int k = 0; k < 6; ++k) {
            const Vec3 up{0.0, 0.0, 1.0};
            const Immersion i = f.hull.immersed(up, f.hull.depth_for(up, share[k] * f.hull.volume_m3(), 0.0));
            const double gm = i.b_m().z + i.own_across_m4() / i.volume_m3 + 1e-3 * g_low_mm[row];
            CHECK_THAT(gm * 1e3, WithinAbs(gm_mm[row][k], 0.011)); // printed to 0.01
        }
    }
}

TEST_CASE("a floater trims far less than it would hang: the waterplane helps, and the rest found balances in "
          "plain strips") {
    const BareHull f = body_f();
    const Vec3 b = f.hull.centroid_m();
    const Afloat a = floating(f, 0.97, {b.x - 0.001, 0.0, b.z - 0.004});
    const auto rest = upright_rest(a);
    REQUIRE(rest.has_value());
    CHECK(rest->gm_transverse_m > 0.0);
    CHECK(rest->pitch_rad < 0.0);
    CHECK(rest->pitch_rad > -0.5 * std::atan(0.25)); // hang: 14.0°

    // The same cut in 2000 slices of 2000 strips, nothing shared with the hull but the lines.
    const shape::Lines& lines = *f.body.lines;
    constexpr int slices = 2000;
    constexpr int strips = 2000;
    std::vector<double> area(strips + 1, 0.0);
    std::vector<double> moment(strips + 1, 0.0);
    for (int i = 0; i < strips; ++i) {
        const double z = -1.0 + 2.0 * (i + 0.5) / strips;
        const double strip = 2.0 * lines.family().half_width(2.6, z) * 2.0 / strips;
        area[static_cast<std::size_t>(i) + 1] = area[static_cast<std::size_t>(i)] + strip;
        moment[static_cast<std::size_t>(i) + 1] = moment[static_cast<std::size_t>(i)] + strip * z;
    }
    const auto upto = [](const std::vector<double>& sums, double z) {
        const double at = std::clamp(0.5 * (z + 1.0) * strips, 0.0, strips - 1e-9);
        const auto k = static_cast<std::size_t>(at);
        return sums[k] + (at - static_cast<double>(k)) * (sums[k + 1] - sums[k]);
    };
    double volume = 0.0;
    double x = 0.0;
    double z = 0.0;
    for (int i = 0; i < slices; ++i) {
        const double at = 0.140 * (i + 0.5) / slices;
        const shape::Station s = lines.at(at);
        const double level = (rest->depth_m - rest->up.x * at) / rest->up.z / s.half_height_m;
        const double slice = s.half_width_m * s.half_height_m * 0.140 / slices;
        volume += slice * upto(area, level);
        x += slice * upto(area, level) * at;
        z += slice * upto(moment, level) * s.half_height_m;
    }
    CHECK_THAT(volume / (0.97 * f.hull.volume_m3()), WithinAbs(1.0, 2e-5));
    const double arm = (a.g_m.x - x / volume) * std::cos(rest->pitch_rad) +
                       (a.g_m.z - z / volume) * std::sin(rest->pitch_rad);
    CHECK_THAT(arm, WithinAbs(0.0, 2e-6)); // 2 µm of arm against 10 mm of stiffness: 0.01°
}
