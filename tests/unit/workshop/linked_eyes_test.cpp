#include "workshop/linked_eyes.hpp"

#include "base/trade.hpp"
#include "unit/workshop/hinged_block.hpp"
#include "workshop/joint_answers.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <cmath>

using namespace evenfall;
using namespace evenfall::joints;
using Catch::Matchers::WithinAbs;
using units::deg_from_rad;
using units::rad_from_deg;

namespace {

constexpr double wide_rad = rad_from_deg(170.0);

double swing_deg(double wire_mm, double inside_mm, double lean_deg) {
    return deg_from_rad(link_swing({wire_mm / 1000.0, inside_mm / 1000.0, rad_from_deg(lean_deg)}, wide_rad));
}

/// How far the eye goes one way from midway until it touches, by halving.
double until_touch(const LinkedEyes& eyes, double x, double y, double z) {
    const double middle_m =
        0.5 * (eyes.inside_m + eyes.wire_m); // the aft eye's middle, its crown in the fore eye's
    const auto free = [&](double m) {
        return link_clearance(eyes, 0.0, {middle_m + m * x, m * y, m * z}) > 0.0;
    };
    double from = 0.0;
    double to = eyes.inside_m;
    REQUIRE(free(from));
    REQUIRE_FALSE(free(to));
    while (to - from > 1e-9)
        (free(0.5 * (from + to)) ? from : to) = 0.5 * (from + to);
    return from;
}

document::Document linked_block(double wire_m, double inside_m, double lean_rad) {
    document::Document d = support::hinged_block();
    d.pockets.clear();
    document::Hinge& h = *d.joints[0].hinge;
    h.kind = document::HingeKind::linked;
    h.wire_m = wire_m;
    h.eye_inside_m = inside_m;
    h.lean_rad = lean_rad;
    h.pin_aft_m = 0.0;
    h.lower_z_m = -0.008;
    h.upper_z_m = 0.008;
    d.joints[0].relief_fore_rad = d.joints[0].relief_aft_rad = rad_from_deg(40.0);
    return d;
}

} // namespace

TEST_CASE("linked eyes move from stop to stop by the slop that plain geometry gives, found again by their "
          "clearance",
          "[joints]") {
    for (const double lean_deg : {0.0, 30.0, 45.0, 90.0}) {
        const LinkedEyes eyes{0.9e-3, 2.6e-3, rad_from_deg(lean_deg)};
        const LinkPlay play = link_play(eyes);
        INFO("lean " << lean_deg);
        CHECK_THAT(play.fore_aft_m, WithinAbs(1.7e-3, 1e-12));
        CHECK_THAT(until_touch(eyes, 1.0, 0.0, 0.0) + until_touch(eyes, -1.0, 0.0, 0.0),
                   WithinAbs(play.fore_aft_m, 1e-7));
        CHECK_THAT(until_touch(eyes, 0.0, 1.0, 0.0) + until_touch(eyes, 0.0, -1.0, 0.0),
                   WithinAbs(play.sideways_m, 1e-7));
        CHECK_THAT(until_touch(eyes, 0.0, 0.0, 1.0) + until_touch(eyes, 0.0, 0.0, -1.0),
                   WithinAbs(play.up_down_m, 1e-7));
        const double shares = 1.7e-3 / std::max(std::cos(eyes.lean_rad), std::sin(eyes.lean_rad));
        CHECK(play.sideways_m <= shares + 1e-12);
        CHECK(play.sideways_m > 0.9 * shares);
        if (lean_deg == 0.0 || lean_deg == 90.0) CHECK_THAT(play.sideways_m, WithinAbs(1.7e-3, 1e-12));
    }
}

TEST_CASE("rings hang in each other where one goes through the other's hole once, and anywhere else there is "
          "no clearance to tell",
          "[joints]") {
    // One level, one upright, R the radius of their wires' middles: the upright ring, its middle x aft of the
    // level one's and z above it, goes through the level at x ± √(R² − z²), and hangs in it where one of the
    // two lies within R.
    const LinkedEyes eyes{0.9e-3, 2.6e-3, 0.0};
    const double radius_m = 0.5 * (eyes.inside_m + eyes.wire_m);
    for (const double x : {0.2, 0.6, 1.0, 1.3, 1.5, 1.9}) {
        for (const double z : {0.0, 0.5, 0.9, 1.1}) {
            const double half = std::sqrt(std::max(0.0, 1.0 - z * z));
            const bool hang = z < 1.0 && (std::abs(x - half) < 1.0) != (std::abs(x + half) < 1.0);
            INFO("x " << x << " R, z " << z << " R");
            CHECK(std::isnan(link_clearance(eyes, 0.0, {x * radius_m, 0.0, z * radius_m})) != hang);
        }
    }
}

TEST_CASE("eyes whose wire just goes through turn until neck meets neck, at cosψ = −0.6", "[joints]") {
    CHECK_THAT(swing_deg(0.9, 0.9, 0.0), WithinAbs(deg_from_rad(std::acos(-0.6)), 0.11));
    // One figure, whatever the wire: lengths go by d.
    CHECK_THAT(swing_deg(0.4, 0.4, 0.0), WithinAbs(deg_from_rad(std::acos(-0.6)), 0.11));
    CHECK(swing_deg(0.9, 0.89, 0.0) == 0.0);
}

TEST_CASE("one level and one upright eye never stop each other short of 120°", "[joints]") {
    for (const double inside_mm : {0.9, 1.0, 1.3, 2.0, 4.0})
        CHECK(swing_deg(0.9, inside_mm, 0.0) >= 120.0);
}

TEST_CASE("wider eyes swing farther, and it is all one which of the two leans", "[joints]") {
    for (const double lean_deg : {20.0, 45.0}) {
        double last = 0.0;
        for (const double inside_mm : {1.0, 1.2, 1.6, 2.4}) {
            const double swing = swing_deg(0.9, inside_mm, lean_deg);
            CHECK(swing > last);
            last = swing;
            // The other's lean is 90° less this one's. The search may fall short by half a degree, where
            // anybody asks.
            CHECK_THAT(std::min(swing_deg(0.9, inside_mm, 90.0 - lean_deg), 120.0),
                       WithinAbs(std::min(swing, 120.0), 0.6));
        }
    }
}

TEST_CASE("leaning eyes end the swing before the wood where they are tight, and the answer says so",
          "[joints]") {
    const auto tight = joint_answers(linked_block(0.9e-3, 1.0e-3, rad_from_deg(45.0)));
    REQUIRE(tight.ok());
    const JointAnswer& j = tight->joints[0];
    REQUIRE(j.eyes_rad[0] < j.finished[0].angle_rad);
    CHECK(j.swing_rad[0] == j.eyes_rad[0]);
    CHECK(j.swing_rad[1] == j.swing_rad[0]);
    CHECK(j.stopped_by[0] == StoppedBy::eyes);
    CHECK_THAT(deg_from_rad(j.eyes_rad[0]), WithinAbs(swing_deg(0.9, 1.0, 45.0), 0.6));
    CHECK(std::any_of(tight->warnings.begin(), tight->warnings.end(), [](const Problem& p) {
        return p.sentence.text(evenfall::units::metric).find("linked eyes meet each other at") !=
               std::string::npos;
    }));

    const auto wide = joint_answers(linked_block(0.9e-3, 2.4e-3, 0.0));
    REQUIRE(wide.ok());
    CHECK(wide->joints[0].stopped_by[0] == StoppedBy::wood);
    CHECK(wide->joints[0].swing_rad[0] == wide->joints[0].finished[0].angle_rad);
    CHECK(wide->joints[0].eyes_rad[0] == most_swing_rad);
}

TEST_CASE("linked eyes sag by one eye's fore-aft slop over their spacing; a pinned joint has no such slop",
          "[joints]") {
    const auto linked = joint_answers(linked_block(0.9e-3, 2.4e-3, 0.0));
    REQUIRE(linked.ok());
    REQUIRE(linked->joints[0].play.has_value());
    CHECK_THAT(linked->joints[0].sag_rad, WithinAbs(std::atan(1.5 / 16.0), 1e-12));
    const auto pinned = joint_answers(support::hinged_block());
    REQUIRE(pinned.ok());
    CHECK_FALSE(pinned->joints[0].play.has_value());
    CHECK(pinned->joints[0].eyes_rad[0] == most_swing_rad);
}

TEST_CASE("wire that does not go through the other eye is warned of by its own words", "[joints]") {
    const auto a = joint_answers(linked_block(1.2e-3, 1.0e-3, 0.0));
    REQUIRE(a.ok());
    CHECK(a->joints[0].swing_rad[0] == 0.0);
    CHECK(std::any_of(a->warnings.begin(), a->warnings.end(), [](const Problem& p) {
        return p.path == "/joints/0/hinge/eye_inside_mm" &&
               p.sentence.text(evenfall::units::metric).find("cannot hang in each other") !=
                   std::string::npos;
    }));
}
