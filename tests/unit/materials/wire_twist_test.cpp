#include "materials/wire_twist.hpp"

#include "base/trade.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <limits>
#include <numbers>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using wire::TwistedEye;

namespace {

wire::TwistAnswer made(const TwistedEye& eye, double yield_pa = 0.0) {
    const auto a = wire::twisted_eye(eye, 7900.0, yield_pa);
    REQUIRE(a.ok());
    return *a;
}

} // namespace

TEST_CASE("without twist and legs, a closed eye takes the circumference of its wire's middle", "[wire]") {
    TwistedEye eye;
    eye.wrap_rad = 2.0 * std::numbers::pi;
    eye.turns = 0.0;
    eye.leg_m = 0.0;
    CHECK_THAT(made(eye).cut_m, WithinRel(std::numbers::pi * (eye.inside_m + eye.wire_m), 1e-12));
}

TEST_CASE("a twist takes the length of two helices measured along them", "[wire]") {
    TwistedEye eye;
    eye.turns = 6.0;
    TwistedEye straight = eye;
    straight.turns = 0.0;
    // Walked along one leg in small steps: its middle circles the axis at half a wire's distance.
    const int steps = 600000;
    const double pitch = 4.5 * eye.wire_m;
    double walked = 0.0;
    double x0 = 0.5 * eye.wire_m, y0 = 0.0, z0 = 0.0;
    for (int k = 1; k <= steps; ++k) {
        const double turn = 2.0 * std::numbers::pi * eye.turns * k / steps;
        const double x = 0.5 * eye.wire_m * std::cos(turn), y = 0.5 * eye.wire_m * std::sin(turn),
                     z = pitch * eye.turns * k / steps;
        walked += std::sqrt((x - x0) * (x - x0) + (y - y0) * (y - y0) + (z - z0) * (z - z0));
        x0 = x, y0 = y, z0 = z;
    }
    CHECK_THAT(made(eye).cut_m - made(straight).cut_m, WithinRel(2.0 * walked, 1e-8));
}

TEST_CASE("a finished eye measures from its crown over wire, hole, wire, twist and leg", "[wire]") {
    TwistedEye eye;
    eye.wire_m = 0.0008;
    eye.inside_m = 0.003;
    eye.turns = 4.0;
    eye.pitch_m = 0.004;
    eye.leg_m = 0.007;
    CHECK_THAT(made(eye).finished_m, WithinAbs(0.0008 + 0.003 + 0.0008 + 4.0 * 0.004 + 0.007, 1e-12));
}

TEST_CASE("the prototype's hanger is cut 70.9 mm long, weighs 0.356 g and twists over 24.3 mm",
          "[wire][regression]") {
    const auto a = made(TwistedEye{});
    CHECK_THAT(units::mm_from_m(a.cut_m), WithinAbs(70.9, 0.05));
    CHECK_THAT(units::g_from_kg(a.mass_kg), WithinAbs(0.356, 0.0005));
    CHECK_THAT(units::mm_from_m(a.twist_m), WithinAbs(24.3, 1e-9));
    CHECK_THAT(units::mm_from_m(a.twist_outside_m), WithinAbs(1.8, 1e-12));
}

TEST_CASE("three wires twisted fill the circle round three touching circles", "[wire]") {
    // Centres of three touching circles of diameter 1 lie 1/√3 from their common middle.
    CHECK_THAT(wire::twist_outside(3), WithinRel(2.0 * (1.0 / std::numbers::sqrt3 + 0.5), 1e-12));
    CHECK(std::isnan(wire::twist_outside(5)));
}

TEST_CASE("hard wire wants a thinner rod than the eye, soft wire hardly", "[wire]") {
    const TwistedEye eye;
    const double plain = made(eye).mandrel_m;
    const double soft = made(eye, 250e6).mandrel_m;
    const double spring = made(eye, 1600e6).mandrel_m;
    CHECK_THAT(plain, WithinAbs(eye.inside_m, 1e-15));
    CHECK(soft < plain);
    CHECK(spring < soft);
    // By hand, 1600 MPa: opens by 32·1600/(3π·193000·0.9 mm) = 0.03128 per mm; 2/(1/1.45 + 0.03128) − 0.9
    // = 1.8742 mm.
    CHECK_THAT(units::mm_from_m(spring), WithinAbs(1.8742, 2e-4));
}

TEST_CASE("a wire, eye or twist off its limits is refused by name", "[wire]") {
    const auto refused = [](TwistedEye eye, const char* key) {
        const auto a = wire::twisted_eye(eye, 7900.0, 0.0, "/hinge");
        REQUIRE_FALSE(a.ok());
        CHECK(a.problems().front().path == std::string("/hinge/") + key);
        CHECK_FALSE(a.problems().front().sentence.empty());
    };
    TwistedEye eye;
    eye.wire_m = std::numeric_limits<double>::quiet_NaN();
    refused(eye, "wire_mm");
    eye = {};
    eye.inside_m = 0.0;
    refused(eye, "eye_inside_mm");
    eye = {};
    for (const double pitch_m : {1.5 * eye.wire_m, -1.0, -1e-9, std::numeric_limits<double>::quiet_NaN()}) {
        eye.pitch_m = pitch_m;
        refused(eye, "pitch_mm");
    }
    eye = {};
    eye.turns = -1.0;
    refused(eye, "turns");
}

TEST_CASE(
    "wire is bent farther by the ratio of the radii before and after it springs back, spring hard wire most",
    "[wire]") {
    const TwistedEye eye;
    CHECK(made(eye).overbend == 0.0);
    const auto soft = made(eye, 400e6);
    const auto spring = made(eye, 1500e6);
    CHECK(soft.overbend > 0.0);
    CHECK(spring.overbend > 3.0 * soft.overbend);
    // The same length of wire on both radii: angle by radius stays.
    const double bent_rad = eye.wrap_rad * (1.0 + spring.overbend);
    CHECK_THAT(bent_rad * (spring.mandrel_m + eye.wire_m),
               WithinRel(eye.wrap_rad * (eye.inside_m + eye.wire_m), 1e-12));
}
