// Regression values of a prototype, not published truth: the level fall of a body of 140 mm in fresh water of
// 20 °C. They are printed to 1 mm/s and to two or three digits of seconds per foot; held within 1 %.

#include "base/trade.hpp"
#include "materials/water_properties.hpp"
#include "support/prototype_body.hpp"
#include "water/fall/level_fall.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

using support::prototype_body;

struct Row {
    double in_water_g;
    double usual_mm_s, slow_mm_s, fast_mm_s;
    double usual_s_ft;
    double half_last_digit_s_ft; ///< what printing it may have taken or added
};
constexpr Row rows[] = {
    {0.5, 77, 71, 85, 3.9, 0.05},      {1.0, 111, 101, 122, 2.75, 0.005}, {2.0, 159, 145, 174, 1.92, 0.005},
    {4.0, 227, 208, 248, 1.34, 0.005}, {8.0, 323, 296, 354, 0.94, 0.005},
};

} // namespace

TEST_CASE("a body of 140 mm falls at the speeds of the prototype's table (regression values of a prototype, "
          "not published truth)",
          "[fall]") {
    const auto water = materials::water_properties(20.0, 0.0);
    REQUIRE(water.ok());
    const fall::LevelFall fall(*prototype_body());
    for (const Row& row : rows) {
        INFO(row.in_water_g << " g in water");
        const auto speeds = fall.speeds(row.in_water_g * 1e-3, *water);
        REQUIRE(speeds);
        CHECK_THAT(speeds->usual_m_s * 1e3, WithinRel(row.usual_mm_s, 0.01));
        CHECK_THAT(speeds->slow_m_s * 1e3, WithinRel(row.slow_mm_s, 0.01));
        CHECK_THAT(speeds->fast_m_s * 1e3, WithinRel(row.fast_mm_s, 0.01));
        CHECK_THAT(units::s_ft_from_m_s(speeds->usual_m_s),
                   WithinAbs(row.usual_s_ft, 0.01 * row.usual_s_ft + row.half_last_digit_s_ft));
    }
}

TEST_CASE("from 0.5 to 8 g in water the speed of that body goes with mass to the power 0.516, and 1.43 times "
          "for twice the mass "
          "(regression values of a prototype, not published truth)",
          "[fall]") {
    const auto water = materials::water_properties(20.0, 0.0);
    REQUIRE(water.ok());
    const fall::LevelFall fall(*prototype_body());
    const double light = *fall.speed_m_s(0.0005, *water);
    const double heavy = *fall.speed_m_s(0.008, *water);
    CHECK_THAT(std::log(heavy / light) / std::log(16.0), WithinAbs(0.516, 0.001));
    CHECK_THAT(*fall.speed_m_s(0.004, *water) / *fall.speed_m_s(0.002, *water), WithinAbs(1.43, 0.005));
}
