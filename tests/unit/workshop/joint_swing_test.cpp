#include "evenfall.hpp"
#include "unit/workshop/answered_joint.hpp"
#include "unit/workshop/hinged_block.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <numbers>

using namespace evenfall;
using namespace evenfall::joints;
using Catch::Matchers::WithinAbs;
using support::answered;
using support::hinged_block;
using support::warns_of;

TEST_CASE(
    "the twist touches the pocket's mouth when its edge lies a wire's thickness from the twist's middle",
    "[joints]") {
    const JointAnswer j = answered(hinged_block()).joints[0];
    // Mouth's edge 3 mm beside and 3 mm before the pin (face at 61 mm).
    const double at = j.wire_rad[0];
    CHECK_THAT(3.0 * std::cos(at) - 3.0 * std::sin(at), WithinAbs(0.9, 1e-9));
    CHECK_THAT(j.wire_rad[0], WithinAbs(j.wire_rad[1], 1e-12));
}

TEST_CASE("a mouth opened as told lets the joint swing as far as its wood does, with the room asked for",
          "[joints]") {
    document::Document d = hinged_block();
    d.joints[0].relief_fore_rad = d.joints[0].relief_aft_rad = 0.5;
    const JointAnswer before = answered(d).joints[0];
    REQUIRE(before.wire_rad[0] < before.finished[0].angle_rad);
    REQUIRE(before.mouth_m[0].value_or(0.0) > d.pockets[0].width_m);
    CHECK_THAT(before.swing_rad[0], WithinAbs(before.wire_rad[0], 1e-12));
    CHECK(warns_of(answered(d), "Open the mouth to"));
    for (document::Pocket& p : d.pockets)
        p.width_m = *before.mouth_m[0];
    const JointAnswer after = answered(d).joints[0];
    CHECK(after.wire_rad[0] > after.finished[0].angle_rad);
    CHECK_THAT(after.swing_rad[0], WithinAbs(after.finished[0].angle_rad, 1e-12));
    // The room: at the wood's stop the mouth's edge is wire + 0.3 mm from the twist's middle. Edge h beside,
    // 3 mm − h·tan before.
    const double h = 0.5 * *before.mouth_m[0];
    const double a = 0.003 - h * std::tan(0.5);
    const double psi = after.finished[0].angle_rad;
    CHECK_THAT(h * std::cos(psi) - a * std::sin(psi), WithinAbs(0.0012, 1e-9));
}

TEST_CASE("pocket and pin to one side: opened as told, the mouth lets each way swing as far as its wood does",
          "[joints]") {
    int told = 0;
    for (const double off_m : {0.001, -0.002, 0.003}) {
        for (const double beside_m : {0.0, 0.001, -0.002}) {
            for (const double relief_deg : {10.0, 25.0, 40.0}) {
                for (const double aft_m : {0.003, 0.0045}) {
                    document::Document d = hinged_block();
                    document::Joint& joint = d.joints[0];
                    joint.relief_fore_rad = 0.2;
                    joint.relief_aft_rad = units::rad_from_deg(relief_deg);
                    joint.hinge->pin_off_m = off_m;
                    joint.hinge->pin_aft_m = aft_m;
                    for (document::Pocket& p : d.pockets) {
                        p.y_m = off_m + beside_m;
                        p.width_m = 0.0045;
                    }
                    const JointsAnswer before = answered(d);
                    const JointAnswer& j = before.joints[0];
                    double width_m = 0.0;
                    for (std::size_t w = 0; w < 2; ++w) {
                        const char* to = w == 0 ? "with the tail to port" : "with the tail to starboard";
                        const bool stops = j.wire_rad[w] < j.finished[w].angle_rad;
                        CHECK(warns_of(before, to) == stops);
                        if (!j.mouth_m[w]) {
                            // Wider than the body, 20 mm, or no width at all.
                            CHECK(warns_of(before, "No mouth is wide enough"));
                            continue;
                        }
                        CHECK((*j.mouth_m[w] > d.pockets[0].width_m) == stops);
                        width_m = std::max(width_m, *j.mouth_m[w]);
                    }
                    if (width_m == 0.0) continue;
                    ++told;
                    for (document::Pocket& p : d.pockets)
                        p.width_m = width_m;
                    const JointAnswer after = answered(d).joints[0];
                    for (std::size_t w = 0; w < 2; ++w)
                        CHECK((!j.mouth_m[w] || after.wire_rad[w] > after.finished[w].angle_rad));
                }
            }
        }
    }
    CHECK(told > 20);
}

TEST_CASE("where no width of the mouth is enough that is said, and no stop of wood where there is none",
          "[joints]") {
    // A plate of 3 mm to either side, pin 8 mm behind the gap's middle: the wood lets go 120°.
    document::Document d = hinged_block();
    for (document::CurvePoint& p : d.shape.half_width)
        p.value = 0.003;
    d.joints[0].gap_m = 0.012;
    d.joints[0].hinge->pin_aft_m = 0.008;
    for (document::Pocket& p : d.pockets) {
        p.x_to_m = 0.072;
        p.width_m = 0.0039;
    }
    const JointsAnswer a = answered(d);
    REQUIRE_FALSE(a.joints[0].finished[0].stopped);
    REQUIRE(a.joints[0].wire_rad[0] < most_swing_rad);
    CHECK_FALSE(a.joints[0].mouth_m[0].has_value());
    CHECK(warns_of(a, "; no wood stops the tail. No mouth is wide enough"));
    CHECK_FALSE(warns_of(a, "before the wood stops"));
    CHECK_FALSE(warns_of(a, "Open the mouth"));
    // Linked eyes likewise.
    d.pockets.clear();
    document::Hinge& h = *d.joints[0].hinge;
    h.kind = document::HingeKind::linked;
    h.eye_inside_m = 0.001;
    h.lean_rad = 0.25 * std::numbers::pi;
    h.pin_aft_m = 0.0;
    const JointsAnswer linked = answered(d);
    REQUIRE(linked.joints[0].stopped_by[0] == StoppedBy::eyes);
    REQUIRE_FALSE(linked.joints[0].finished[0].stopped);
    CHECK(warns_of(linked, "the linked eyes meet each other at"));
    CHECK_FALSE(warns_of(linked, "before the wood stops"));
}

TEST_CASE("coats on the joint faces narrow the finished swing and leave the bare one", "[joints]") {
    document::Document d = hinged_block();
    const JointsAnswer bare = answered(d);
    CHECK(bare.films.on_faces_m == 0.0);
    document::Coat c;
    c.thickness_m = 0.0004;
    d.coats.push_back(c);
    const JointsAnswer coated = answered(d);
    CHECK_THAT(coated.films.on_faces_m, WithinAbs(0.0004, 1e-15));
    CHECK(coated.joints[0].bare[0].angle_rad == bare.joints[0].bare[0].angle_rad);
    CHECK(coated.joints[0].finished[0].angle_rad < bare.joints[0].finished[0].angle_rad);
    d.coats[0].on_joint_faces = false;
    CHECK(answered(d).films.on_faces_m == 0.0);
    // Coats as thick as half the gap close it.
    d.coats[0].on_joint_faces = true;
    d.coats[0].thickness_m = 0.0011;
    CHECK(answered(d).joints[0].finished[0].angle_rad == 0.0);
    CHECK(warns_of(answered(d), "is closed by its coats"));
}
