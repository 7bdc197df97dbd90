#include "water/afloat/rest.hpp"

#include "unit/water/afloat/forms.hpp"
#include "water/afloat/descent.hpp"
#include "water/afloat/righting.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

using namespace evenfall;
using namespace evenfall::afloat;
using namespace evenfall::support;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("up, pitch and heel tell the same attitude: nose up and starboard down are positive") {
    const Vec3 nose_up = up_of({0.3, 0.0});
    CHECK(nose_up.x < 0.0); // the nose (towards −x) points up
    const Vec3 starboard_down = up_of({0.0, 0.3});
    CHECK(starboard_down.y < 0.0);
    for (const Attitude a : {Attitude{0.3, -2.0}, Attitude{-1.2, 3.0}, Attitude{0.0, 0.0}}) {
        const Vec3 up = up_of(a);
        CHECK_THAT(length(up), WithinAbs(1.0, 1e-15));
        CHECK_THAT(attitude_of(up).pitch_rad, WithinAbs(a.pitch_rad, 1e-12));
        CHECK_THAT(attitude_of(up).heel_rad, WithinAbs(a.heel_rad, 1e-12));
        const LevelAxes level = level_axes(up);
        CHECK_THAT(dot(level.along, up), WithinAbs(0.0, 1e-15));
        CHECK_THAT(dot(level.across, up), WithinAbs(0.0, 1e-15));
        CHECK_THAT(dot(level.along, level.across), WithinAbs(0.0, 1e-15));
    }
}

TEST_CASE("a box afloat tells draft, freeboard, what shows and where its waterline meets the ends") {
    const BareHull box = bare_hull(box_lines(0.120, 0.040, 0.020));
    const auto rest = upright_rest(uniform(box, 0.75));
    REQUIRE(rest.has_value());
    CHECK_THAT(rest->draft_fore_m, WithinAbs(0.015, 1e-9));
    CHECK_THAT(rest->draft_aft_m, WithinAbs(0.015, 1e-9));
    CHECK_THAT(rest->deepest_m, WithinAbs(0.015, 1e-9));
    CHECK_THAT(rest->freeboard_m, WithinAbs(0.005, 1e-9));
    CHECK_THAT(rest->volume_out, WithinAbs(0.25, 1e-12));
    CHECK(rest->back_line_out == 1.0);
    CHECK_THAT(rest->nose_waterline_z_m.value(), WithinAbs(0.005, 1e-9));
    CHECK_THAT(rest->tail_waterline_z_m.value(), WithinAbs(0.005, 1e-9));
    CHECK_THAT(rest->pitch_rad, WithinAbs(0.0, 1e-9));
    CHECK(rest->posture == Posture::upright);
    CHECK_FALSE(rest->has_twin);
    CHECK_THAT(
        rest->righting_nm_per_deg,
        WithinRel(0.75 * 1000.0 * 0.120 * 0.040 * 0.020 * 9.80665 * rest->gm_transverse_m * degree, 1e-9));
}

TEST_CASE(
    "G forward puts the nose down by tan θ = e/GM along a box, while neither end leaves or dips under") {
    // A box of draft T trimmed by θ: exactly e = tan θ (BM (1 + ½ tan² θ) + B over G), the wall-sided formula
    // along it.
    const BareHull box = bare_hull(box_lines(0.120, 0.040, 0.020));
    const Afloat a = floating(box, 0.5, {0.060 - 0.004, 0.0, -0.002});
    const auto rest = upright_rest(a);
    REQUIRE(rest.has_value());
    CHECK(rest->pitch_rad < 0.0);
    const double t = std::tan(-rest->pitch_rad);
    const double bm = 0.120 * 0.120 / (12.0 * 0.010);
    CHECK_THAT(t * (bm * (1.0 + 0.5 * t * t) + 0.002 - 0.005), WithinAbs(0.004, 1e-9));
    CHECK(rest->draft_fore_m > rest->draft_aft_m);
    CHECK(rest->nose_waterline_z_m.value() > rest->tail_waterline_z_m.value());
}

TEST_CASE("a walk that begins with a step far too deep takes shorter ones, and comes to rest at the closed "
          "form's draft") {
    // A light square log, corner down, with its corner hardly wet: so narrow a waterplane asks for a step
    // many times too deep.
    const double side = 0.040;
    const BareHull log = bare_hull(corner_down_lines(0.200, side));
    Afloat a = uniform(log, 0.02);
    a.g_m.z = -0.020; // ballast below keeps it corner down
    const Vec3 up{0.0, 0.0, 1.0};
    const double corner_m = -side / std::sqrt(2.0);
    const FloatState start = state_at(a, up, corner_m + 0.0005);
    const DescentEnd r = minimised(a, start, {});
    CHECK(r.arrived);
    CHECK(dot(r.state.up, up) > 1.0 - 1e-12);
    // A corner of 90° wet to a depth d has the section d²; two hundredths of the log's are 0.02 side².
    CHECK_THAT(r.state.depth_m, WithinAbs(corner_m + std::sqrt(0.02) * side, 1e-8));
    CHECK(r.cuts < 20);
}

TEST_CASE("G to starboard heels a lure to starboard") {
    const BareHull box = bare_hull(box_lines(0.120, 0.040, 0.020));
    const auto found = rests(floating(box, 0.5, {0.060, 0.001, -0.002}));
    REQUIRE_FALSE(found.empty());
    CHECK(found[0].posture == Posture::upright);
    CHECK(found[0].heel_rad > 0.0);
    CHECK_FALSE(found[0].has_twin);
}

TEST_CASE("a flat board lies on either face and nowhere else; weighted, its back is a rest still, and the "
          "higher one") {
    const BareHull board = bare_hull(box_lines(0.120, 0.040, 0.012));
    auto found = rests(uniform(board, 0.5));
    REQUIRE(found.size() == 2);
    CHECK(found[0].posture == Posture::upright);
    CHECK(found[1].posture == Posture::on_its_back);
    CHECK_THAT(found[0].energy_j, WithinAbs(found[1].energy_j, 1e-9));
    found = rests(floating(board, 0.5, {0.060, 0.0, -0.003}));
    REQUIRE(found.size() == 2);
    CHECK(found[0].energy_j == 0.0);
    // G goes from 3 mm under the middle to 3 mm over it.
    CHECK_THAT(found[1].energy_j, WithinRel(0.5 * 1000.0 * board.hull.volume_m3() * 9.80665 * 0.006, 1e-6));
}

TEST_CASE("a deep narrow floater lies on its side though its G is low, and is told so in numbers") {
    const BareHull deep = bare_hull(std::make_shared<EllipsoidForm>(0.070, 0.010, 0.018));
    const Afloat a = floating(deep, 0.6, {0.070, 0.0, -0.002});
    const auto found = rests(a);
    REQUIRE(found.size() == 1);
    CHECK(std::abs(found[0].heel_rad) > 30.0 * degree);
    CHECK(found[0].has_twin);
    CHECK(under_water(a).bg_m > 0.0); // under water it would hang upright

    const UprightAdvice advice = upright_advice(a);
    REQUIRE(advice.is_known);
    CHECK_FALSE(advice.is_stable);
    // Done as told, GM is nothing: a hair more and it stays upright, a hair less and it does not.
    REQUIRE(advice.heavier_kg.has_value());
    for (const double hair : {-1e-3, 1e-3}) {
        Afloat lowered = a;
        lowered.g_m.z -= advice.lower_g_m * (1.0 + hair);
        CHECK((upright_rest(lowered)->least_gm_m > 0.0) == (hair > 0.0));
        Afloat loaded = a;
        loaded.mass_kg += *advice.heavier_kg * (1.0 + hair);
        CHECK((upright_rest(loaded)->least_gm_m > 0.0) == (hair > 0.0));
    }
}

TEST_CASE("where G is over B no weight at its own height helps, and the advice says so") {
    const BareHull deep = bare_hull(std::make_shared<EllipsoidForm>(0.070, 0.010, 0.018));
    const UprightAdvice advice = upright_advice(floating(deep, 0.6, {0.070, 0.0, 0.004}));
    REQUIRE(advice.is_known);
    CHECK_FALSE(advice.is_stable);
    CHECK_FALSE(advice.heavier_kg.has_value());
    CHECK(advice.lower_g_m > 0.004);
    const UprightAdvice stable = upright_advice(floating(deep, 0.6, {0.070, 0.0, -0.015}));
    CHECK(stable.is_stable);
    CHECK(stable.lower_g_m == 0.0);
    CHECK(stable.heavier_kg == 0.0);
}

TEST_CASE("a rod with its weight at one end stands in the water, that end down") {
    const BareHull rod = bare_hull(elliptic_bar_lines(0.200, 0.008, 0.008));
    const auto tail_down = rests(floating(rod, 0.7, {0.180, 0.0, 0.0}));
    REQUIRE(tail_down.size() == 1);
    CHECK(tail_down[0].posture == Posture::nose_up);
    CHECK_THAT(tail_down[0].pitch_rad, WithinAbs(90.0 * degree, 0.01 * degree));
    CHECK_THAT(tail_down[0].draft_aft_m, WithinAbs(0.7 * 0.200, 2e-6));
    CHECK_THAT(tail_down[0].least_gm_m,
               WithinRel(0.180 - (0.200 - 0.070) + 0.008 * 0.008 / (4.0 * 0.140), 2e-3));
    CHECK_FALSE(upright_rest(floating(rod, 0.7, {0.180, 0.0, 0.0})).has_value());
    const auto nose_down = rests(floating(rod, 0.7, {0.020, 0.0, 0.0}));
    REQUIRE(nose_down.size() == 1);
    CHECK(nose_down[0].posture == Posture::nose_down);
}

TEST_CASE("what is heavier than its water has no rest, no curve and no advice") {
    const BareHull box = bare_hull(box_lines(0.120, 0.040, 0.020));
    for (const double gravity : {1.0, 1.2}) {
        const Afloat a = uniform(box, gravity);
        CHECK(a.sinks());
        CHECK(rests(a).empty());
        CHECK_FALSE(upright_rest(a).has_value());
        CHECK(righting_curve(a, TrimMode::free).points.empty());
        CHECK_FALSE(upright_advice(a).is_known);
    }
    const double nan = std::numeric_limits<double>::quiet_NaN();
    for (const double mass : {0.0, -1.0, nan}) {
        const Afloat a{&box.hull, mass, {0.060, 0.0, 0.0}, 1000.0};
        CHECK(rests(a).empty());
        CHECK_FALSE(upright_rest(a).has_value());
        CHECK(righting_curve(a, TrimMode::free).points.empty());
        CHECK_FALSE(upright_advice(a).is_known);
    }
}

TEST_CASE("a lure that is all but sunk still finds its rest") {
    const BareHull egg = bare_hull(std::make_shared<EllipsoidForm>(0.070, 0.010, 0.018));
    for (const double gravity : {0.99, 0.999, 0.9999}) {
        const Afloat a = floating(egg, gravity, {0.070, 0.0, -0.004});
        const auto found = rests(a);
        REQUIRE(found.size() == 1);
        CHECK(found[0].posture == Posture::upright);
        CHECK_THAT(found[0].volume_out, WithinAbs(1.0 - gravity, 1e-9));
        CHECK_THAT(found[0].gm_transverse_m, WithinAbs(0.004, 1.5e-3 * std::sqrt((1.0 - gravity) / 0.01)));
        CHECK(found[0].freeboard_m > 0.0);
    }
    for (const double gravity : {0.001, 0.02}) {
        const auto found = rests(floating(egg, gravity, {0.070, 0.0, -0.004}));
        REQUIRE_FALSE(found.empty());
        CHECK(found[0].deepest_m > 0.0);
    }
}
