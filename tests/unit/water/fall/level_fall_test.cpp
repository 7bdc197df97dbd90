#include "water/fall/level_fall.hpp"

#include "base/trade.hpp"
#include "support/bars.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <limits>

using namespace evenfall;
using namespace evenfall::fall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr materials::WaterProperties tap{998.2, 1.0016e-3};
constexpr double in_water[] = {1e-9, 1e-6, 0.0001, 0.0005, 0.001, 0.002, 0.004, 0.008, 0.1, 10.0};

const support::EllipsoidLines& lure() {
    static const support::EllipsoidLines lines(0.150, 0.012, 0.022);
    return lines;
}

/// Drag [N] at a speed, strip by strip from the drag coefficients: the slow way round.
double drag_n(const shape::Lines& lines, double speed, double end_effect_kappa,
              const materials::WaterProperties& water) {
    double drag = 0.0;
    for (const Strip& s : strips(lines)) {
        drag += 0.5 * water.density_kg_m3 * end_effect_kappa * section_drag_coefficient(s, speed, water) *
                s.width_m * s.length_m * speed * speed;
    }
    return drag;
}

} // namespace

TEST_CASE("at the steady speed drag carries the in-water weight, at each end of the band too", "[fall]") {
    const LevelFall fall(lure());
    for (double mass : in_water) {
        INFO(mass << " kg in water");
        const auto speeds = fall.speeds(mass, tap);
        REQUIRE(speeds);
        const double weight = mass * units::standard_gravity_m_s2;
        CHECK_THAT(drag_n(lure(), speeds->usual_m_s, end_effect.usual, tap), WithinRel(weight, 1e-12));
        CHECK_THAT(drag_n(lure(), speeds->slow_m_s, end_effect.high, tap), WithinRel(weight, 1e-12));
        CHECK_THAT(drag_n(lure(), speeds->fast_m_s, end_effect.low, tap), WithinRel(weight, 1e-12));
        CHECK((speeds->slow_m_s < speeds->usual_m_s && speeds->usual_m_s < speeds->fast_m_s));
        CHECK(fall.speed_m_s(mass, tap) == speeds->usual_m_s);
    }
}

TEST_CASE("speed and in-water mass are each other's inverse", "[fall]") {
    const LevelFall fall(lure());
    for (double mass : in_water) {
        CHECK_THAT(fall.in_water_kg(*fall.speed_m_s(mass, tap), tap), WithinRel(mass, 1e-12));
    }
    for (double speed : {0.001, 0.05, 0.15, 0.3, 2.0}) {
        CHECK_THAT(*fall.speed_m_s(fall.in_water_kg(speed, tap), tap), WithinRel(speed, 1e-12));
    }
}

TEST_CASE("from lines or from the hull that was made of them the speed is the same", "[fall]") {
    const LevelFall of_lines(lure());
    const LevelFall of_hull(hull(lure(), 0.01, 0.0));
    for (double mass : in_water)
        CHECK(of_lines.speed_m_s(mass, tap) == of_hull.speed_m_s(mass, tap));
}

TEST_CASE("what is not heavier than its water does not fall", "[fall]") {
    const LevelFall fall(lure());
    for (double mass : {0.0, -0.0, -0.001, std::nan(""), std::numeric_limits<double>::infinity(),
                        -std::numeric_limits<double>::infinity()}) {
        CHECK_FALSE(fall.speeds(mass, tap));
        CHECK_FALSE(fall.speed_m_s(mass, tap));
    }
    CHECK(fall.in_water_kg(0.0, tap) == 0.0);
    CHECK(fall.in_water_kg(-0.1, tap) == 0.0);
    CHECK(fall.in_water_kg(std::nan(""), tap) == 0.0);
    const auto crawl = fall.speed_m_s(std::numeric_limits<double>::min(), tap);
    REQUIRE(crawl);
    CHECK((*crawl >= 0.0 && *crawl < 1e-12));
}

TEST_CASE("a heavier lure falls faster", "[fall]") {
    const LevelFall fall(lure());
    for (double mass = 1e-5; mass < 0.1; mass *= 1.05) {
        CHECK(*fall.speed_m_s(mass, tap) < *fall.speed_m_s(mass * 1.05, tap));
    }
}

TEST_CASE("speed goes with the root of in-water mass, a little more where friction counts", "[fall]") {
    const LevelFall fall(lure());
    for (double mass : {0.0005, 0.001, 0.002, 0.004}) {
        const double doubled = *fall.speed_m_s(2.0 * mass, tap) / *fall.speed_m_s(mass, tap);
        CHECK(doubled > std::sqrt(2.0));
        CHECK(doubled < std::cbrt(4.0)); // friction alone: v^1.5 goes with mass
    }
    // Without friction it is the root itself.
    const materials::WaterProperties thin{998.2, 1e-300};
    CHECK_THAT(*fall.speed_m_s(0.002, thin) / *fall.speed_m_s(0.001, thin), WithinRel(std::sqrt(2.0), 1e-12));
}

TEST_CASE("colder water, which is thicker, slows the same in-water mass", "[fall]") {
    const LevelFall fall(lure());
    const auto cold = materials::water_properties(5.0, 0.0);
    const auto warm = materials::water_properties(25.0, 0.0);
    REQUIRE((cold.ok() && warm.ok()));
    CHECK(*fall.speed_m_s(0.002, *cold) < *fall.speed_m_s(0.002, *warm));
}

TEST_CASE("a slender bar twice as long falls at the same speed with twice the in-water mass", "[fall]") {
    const LevelFall one(support::BarLines(0.150, 0.010, 0.017, 2.6));
    const LevelFall two(support::BarLines(0.300, 0.010, 0.017, 2.6));
    CHECK_THAT(*two.speed_m_s(0.004, tap), WithinRel(*one.speed_m_s(0.002, tap), 1e-12));
}

TEST_CASE("the band reaches from eight per cent slower to ten per cent faster, less where friction counts",
          "[fall]") {
    const auto speeds = LevelFall(lure()).speeds(0.002, tap);
    REQUIRE(speeds);
    const double slow = speeds->slow_m_s / speeds->usual_m_s;
    const double fast = speeds->fast_m_s / speeds->usual_m_s;
    // Between drag with v² and drag with v^1.5.
    CHECK((slow < std::sqrt(0.80 / 0.95) && slow > std::pow(0.80 / 0.95, 2.0 / 3.0)));
    CHECK((fast > std::sqrt(0.80 / 0.67) && fast < std::pow(0.80 / 0.67, 2.0 / 3.0)));
}
