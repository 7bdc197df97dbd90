#include "water/hang.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>

using namespace evenfall;
using Catch::Matchers::WithinAbs;

namespace {

/// A body of one kilogram and one litre with G and B where we want them.
ledger::Sum body(Vec3 g, Vec3 b) {
    ledger::Line mass;
    mass.mass_kg = 1.0;
    mass.at_m = g;
    ledger::Line water;
    water.displaced_m3 = 0.001;
    water.at_m = b;
    ledger::Sum sum;
    sum += mass;
    sum += water;
    return sum;
}

} // namespace

TEST_CASE("a body hangs with G plumb below B: tan θ = −e/BG, nose down where G is forward") {
    const auto h = water::hang(body({0.060, 0.0, -0.004}, {0.061, 0.0, 0.0}));
    REQUIRE(h.pitch_rad.has_value());
    CHECK_THAT(*h.pitch_rad, WithinAbs(-std::atan(1.0 / 4.0), 1e-12)); // −14.04°
    CHECK_THAT(h.bg_m, WithinAbs(0.004, 1e-15));
}

TEST_CASE("G 0.2 mm to starboard with BG 2 mm heels 5.7° to starboard (tan φ = y/BG)") {
    const auto h = water::hang(body({0.0, 0.0002, -0.002}, {}));
    REQUIRE(h.roll_rad.has_value());
    CHECK_THAT(*h.roll_rad * 57.29577951308232, WithinAbs(5.7106, 1e-3));
}

TEST_CASE("a body with G off the middle rolls and then its long axis leans as the arm from G to B does, by "
          "the angle between the two") {
    for (const Vec3 g :
         {Vec3{0.064, 0.005, -0.004}, Vec3{0.055, -0.003, -0.001}, Vec3{0.061, 0.002, -0.006}}) {
        const auto sum = body(g, {0.060, 0.0, 0.0});
        const auto h = water::hang(sum);
        REQUIRE(h.pitch_rad.has_value());
        // Up, in the body's axes, is the way from G to B: the nose (−x) stands as high over level as that way
        // leans towards it.
        const Vec3 up = (sum.b_m() - g) / length(sum.b_m() - g);
        CHECK_THAT(std::sin(*h.pitch_rad), WithinAbs(-up.x, 1e-12));
        CHECK_THAT(std::tan(*h.roll_rad), WithinAbs(-up.y / up.z, 1e-12));
        CHECK_THAT(water::pitch_residual_kg_m(sum, *h.pitch_rad), WithinAbs(0.0, 1e-15));
    }
}

TEST_CASE("with G at or above B there is no hang to speak of") {
    CHECK_FALSE(water::hang(body({0.0, 0.0, 0.001}, {})).pitch_rad.has_value());
    CHECK_FALSE(water::hang(body({}, {})).pitch_rad.has_value());
}

TEST_CASE("the pitch residual is zero at the hang and falls nose-down where G is too far forward") {
    const auto sum = body({0.060, 0.0, -0.004}, {0.061, 0.0, 0.001});
    const auto h = water::hang(sum);
    CHECK_THAT(water::pitch_residual_kg_m(sum, *h.pitch_rad), WithinAbs(0.0, 1e-15));
    CHECK(water::pitch_residual_kg_m(sum, 0.0) > 0.0);
}
