#include "workshop/hook_swing.hpp"

#include "unit/workshop/hinged_block.hpp"
#include "workshop/joint_answers.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

using namespace evenfall;
using namespace evenfall::joints;
using Catch::Matchers::WithinAbs;
using support::hinged_block;

namespace {

/// A part whose hanger, if it has a reach, stands at this place.
document::Part hung(Vec3 hanger_m, double reach_m, const char* material = "steel") {
    document::Part p;
    p.stage = Stage::rigged;
    p.material = material;
    p.mass_kg = 0.001;
    p.at_m = hanger_m;
    p.at_m.z -= hanger_share * reach_m;
    if (reach_m > 0.0) p.reach_m = reach_m;
    return p;
}

/// The block is 30 mm high and 20 mm wide, cut at 60 mm; its joint turns by `swing_rad` both ways about the
/// cut's middle.
std::vector<HookFoul> fouls(const document::Document& d, double swing_rad = 0.0) {
    const auto lines = shape::drawn_lines(d.shape);
    REQUIRE(lines.ok());
    const auto body = shape::cut(*lines, d.joints);
    REQUIRE(body.ok());
    std::vector<Pin> pins;
    Swings swings;
    for (const document::Joint& j : d.joints) {
        pins.push_back({j.at_m, 0.0});
        for (auto& way : swings)
            way.push_back(swing_rad);
    }
    return hook_fouls(d, *body, pins, swings);
}

} // namespace

TEST_CASE("hooks overlap by their reaches less the true distance of their hangers, in all directions",
          "[joints]") {
    document::Document d = hinged_block();
    d.parts = {hung({0.015, 0.0, -0.015}, 0.015), hung({0.035, 0.0, -0.015}, 0.010)};
    auto f = fouls(d);
    REQUIRE(f.size() == 1);
    CHECK(f[0].what == FoulKind::hook);
    CHECK_THAT(f[0].over_m, WithinAbs(0.005, 1e-12));
    // 15 mm to the side or in height: 20, 15, 25 is a right triangle.
    d.parts[1].at_m.y = 0.0151;
    CHECK(fouls(d).empty());
    d.parts[1].at_m.y = 0.0;
    d.parts[1].at_m.z += 0.015;
    d.parts[1].reach_m = 0.0104;
    d.parts[1].at_m.z -= hanger_share * 0.0004; // the same hanger
    f = fouls(d);
    REQUIRE(f.size() == 1);
    CHECK_THAT(f[0].over_m, WithinAbs(0.0004, 1e-12));
}

TEST_CASE("a hook reaches a joint at the nearest edge of its cut, under the belly or from the side",
          "[joints]") {
    document::Document d = hinged_block();
    // 12 mm before the cut and 5 mm under the belly: 13 mm.
    d.parts = {hung({0.048, 0.0, -0.020}, 0.0135)};
    auto f = fouls(d);
    REQUIRE(f.size() == 1);
    CHECK(f[0].what == FoulKind::joint);
    CHECK_THAT(f[0].over_m, WithinAbs(0.0005, 1e-12));
    // Beside the body, 5 mm off its flank and 12 mm before the cut, at half depth.
    d.parts = {hung({0.048, 0.015, -0.0075}, 0.0135)};
    f = fouls(d);
    REQUIRE(f.size() == 1);
    CHECK_THAT(f[0].over_m, WithinAbs(0.0005, 1e-9));
    d.parts = {hung({0.048, 0.0, -0.020}, 0.0125)};
    CHECK(fouls(d).empty());
}

TEST_CASE("a hook reaches the middle of a soft tail behind it, and none before it", "[joints]") {
    document::Document d = hinged_block();
    d.parts = {hung({0.100, 0.0, -0.012}, 0.0135), hung({0.112, 0.0, -0.007}, 0.0, "plastisol")};
    auto f = fouls(d);
    REQUIRE(f.size() == 1);
    CHECK(f[0].what == FoulKind::tail);
    CHECK_THAT(f[0].over_m, WithinAbs(0.0005, 1e-12));
    d.parts[1].at_m.x = 0.090;
    CHECK(fouls(d).empty());
}

TEST_CASE(
    "hooks of neighbouring segments that are clear when straight foul when bent, by the chord of their pin",
    "[joints]") {
    document::Document d = hinged_block();
    // 20 mm before and behind the pin: 40·cos(ψ/2) apart.
    d.parts = {hung({0.040, 0.0, -0.015}, 0.0185), hung({0.080, 0.0, -0.015}, 0.0185)};
    CHECK(fouls(d, 0.7).empty());
    const double swing_rad = 1.0;
    auto f = fouls(d, swing_rad);
    REQUIRE(f.size() == 1);
    CHECK(f[0].bent.has_value());
    CHECK_THAT(f[0].over_m, WithinAbs(0.037 - 0.040 * std::cos(0.5 * swing_rad), 1e-12));
    // Fouling already when straight, the bend is no news.
    d.parts[0].reach_m = d.parts[1].reach_m = 0.0195;
    d.parts[0].at_m.x = 0.0415;
    d.parts[0].segment = 0;
    f = fouls(d, swing_rad);
    REQUIRE_FALSE(f.empty());
    CHECK(std::any_of(f.begin(), f.end(),
                      [](const HookFoul& one) { return one.what == FoulKind::hook && !one.bent; }));
}

TEST_CASE("a hook to one side comes nearer when the tail swings to that side", "[joints]") {
    document::Document d = hinged_block();
    d.parts = {hung({0.040, 0.012, -0.015}, 0.016), hung({0.080, 0.012, -0.015}, 0.016)};
    const auto f = fouls(d, 0.8);
    REQUIRE(f.size() == 1);
    CHECK(f[0].bent == SwingSide::starboard);
}

TEST_CASE("hooks that pass each other on the way foul, clear as they are straight and all the way round",
          "[joints]") {
    document::Document d = hinged_block();
    // 12 mm to starboard of the pin's line, 12 mm before and behind it: straight 24 mm apart, at 90° in one
    // place, at 120° 8.8 mm.
    d.parts = {hung({0.048, 0.012, -0.015}, 0.004), hung({0.072, 0.012, -0.015}, 0.004)};
    CHECK(fouls(d).empty());
    auto f = fouls(d, 2.0 * std::numbers::pi / 3.0);
    REQUIRE(f.size() == 1);
    CHECK(f[0].bent == SwingSide::starboard);
    CHECK(f[0].part_way);
    CHECK_THAT(f[0].over_m, WithinAbs(0.008, 1e-12)); // six eighths of 120°
    // Swung no farther than where they meet, all the way is worst.
    f = fouls(d, 0.5 * std::numbers::pi);
    REQUIRE(f.size() == 1);
    CHECK_FALSE(f[0].part_way);
}

TEST_CASE("a hook that trails reaches a soft tail behind its hanger, drawn or a part", "[joints]") {
    // The hanger stands 11 mm ahead of the hook's own middle, at 121 mm; the tail's middle at 128 mm is 7 mm
    // behind that.
    document::Document d = hinged_block();
    document::Part hook = hung({0.132, 0.0, 0.0}, 0.0);
    hook.reach_m = 0.020;
    d.parts = {hook, hung({0.128, 0.0, 0.0}, 0.0, "plastisol")};
    auto f = fouls(d);
    REQUIRE(f.size() == 1);
    CHECK(f[0].what == FoulKind::tail);
    CHECK_THAT(f[0].over_m, WithinAbs(0.013, 1e-12));
    d.parts[1].at_m.x = 0.120;
    CHECK(fouls(d).empty());
    d.parts = {hook};
    d.parts[0].material = "plastisol"; // does not reach itself
    CHECK(fouls(d).empty());
}

TEST_CASE("a hook that trails behind the tail hangs ahead of its middle, any other one above it",
          "[joints]") {
    const document::Document d = hinged_block();
    const auto body = shape::cut(*shape::drawn_lines(d.shape), d.joints);
    REQUIRE(body.ok());
    document::Part hook = hung({0.050, 0.0, -0.015}, 0.020);
    CHECK_THAT(hanger_of(hook, *body).at_m.z, WithinAbs(-0.015, 1e-12));
    CHECK(hanger_of(hook, *body).segment == 0);
    hook.at_m = {0.130, 0.0, -0.002};
    CHECK_THAT(hanger_of(hook, *body).at_m.x, WithinAbs(0.119, 1e-12));
    CHECK_THAT(hanger_of(hook, *body).at_m.z, WithinAbs(-0.002, 1e-12));
    CHECK(hanger_of(hook, *body).segment == 1);
}

TEST_CASE("the joint answers warn of hooks that meet only in the bend by their own words", "[joints]") {
    document::Document d = hinged_block();
    d.joints[0].relief_fore_rad = d.joints[0].relief_aft_rad = 0.5;
    d.pockets.clear();
    d.parts = {hung({0.040, 0.0, -0.017}, 0.019), hung({0.080, 0.0, -0.017}, 0.019)};
    const auto a = joint_answers(d);
    REQUIRE(a.ok());
    REQUIRE(a->joints[0].swing_rad[0] > 0.9);
    CHECK(std::any_of(a->warnings.begin(), a->warnings.end(), [](const Problem& p) {
        return p.sentence.text(evenfall::units::metric).find("With the joints swung") == 0;
    }));
}
