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
using Catch::Matchers::WithinRel;
using support::answered;
using support::hinged_block;
using support::wall;
using support::warns_of;

TEST_CASE("eyes sit in the middle of the pockets round the pin, and their room is what the drawing leaves",
          "[joints]") {
    const JointAnswer j = answered(hinged_block()).joints[0];
    REQUIRE(j.eyes.size() == 2);
    CHECK_THAT(j.place.eye_spacing_m, WithinAbs(0.016, 1e-12));
    REQUIRE(j.eyes[0].room.has_value());
    const EyeRoom& room = *j.eyes[0].room;
    // Eye 2 mm inside and 0.9 mm wire: 1.9 mm from the pin to its outside.
    CHECK_THAT(room.beside_m, WithinAbs(0.003 - 0.0019, 1e-12));
    CHECK_THAT(room.behind_m, WithinAbs(0.068 - 0.064 - 0.0019, 1e-12));
    CHECK_THAT(room.up_down_m.value(), WithinAbs(0.003 - 0.0009, 1e-12));
    CHECK(room.opens);
    CHECK_THAT(j.play_per_eye_m, WithinAbs(0.0008, 1e-12));
    // Eyes 16 mm apart, each half of 0.8 mm off the pin's axis, one fore and one aft.
    CHECK_THAT(j.sag_rad, WithinRel(std::atan((0.0004 + 0.0004) / 0.016), 1e-9));
}

TEST_CASE("a pocket open above or below says nothing of how far its eye may rise and fall", "[joints]") {
    document::Document d = hinged_block();
    d.joints[0].hinge->lower_z_m = -0.008;
    d.joints[0].hinge->upper_z_m = 0.008;
    d.pockets[0].z_from_m.reset();
    d.pockets[1].z_to_m.reset();
    const JointAnswer j = answered(d).joints[0];
    for (const EyeAnswer& eye : j.eyes) {
        REQUIRE(eye.room.has_value());
        CHECK_FALSE(eye.room->up_down_m.has_value());
    }
}

TEST_CASE(
    "a pocket that reaches a relieved face beside the twist and not before it leaves wood in the eye's way",
    "[joints]") {
    document::Document d = hinged_block();
    d.joints[0].relief_fore_rad = d.joints[0].relief_aft_rad = std::atan(0.5);
    const auto opens = [&](double from_m, double pin_y_m = 0.0) {
        for (document::Pocket& p : d.pockets) {
            p.x_from_m = from_m;
            p.y_m = pin_y_m;
        }
        d.joints[0].hinge->pin_off_m = pin_y_m;
        const JointsAnswer a = answered(d);
        CHECK(warns_of(a, "wood stands between it and the joint") != a.joints[0].eyes[0].room->opens);
        return a.joints[0].eyes[0].room->opens;
    };
    // The face stands at 61 mm in the middle and falls back by half of what one goes aside: to 62.5 mm at the
    // walls, 3 mm out.
    CHECK(opens(0.0610));
    CHECK_FALSE(opens(0.0611));
    CHECK_FALSE(opens(0.0620)); // its corners are through, a rib is left before the eye
    CHECK_FALSE(opens(0.0626));
    // A pin 3 mm to the side, its twist 0.9 mm to either side of that: the face there has fallen back by 1.05
    // mm.
    CHECK(opens(0.0620, 0.003));
    CHECK(opens(0.0620, -0.003));
    CHECK_FALSE(opens(0.0621, 0.003));
}

TEST_CASE("the rod to bend an eye round allows for the spring of its own temper, yielding at 0.8 of its "
          "least strength (common practice)",
          "[joints]") {
    document::Document d = hinged_block();
    for (const auto& [hinge, temper] : {std::pair{document::WireTemper::spring, wire::Temper::spring},
                                        {document::WireTemper::soft, wire::Temper::soft}}) {
        d.joints[0].hinge->temper = hinge;
        const document::Hinge& h = *d.joints[0].hinge;
        // What a fully yielding round bar opens by when let go: 32σ/(3πE·d), steel of 193 GPa.
        const double opens =
            32.0 * 0.8 * wire::tensile(temper, h.wire_m).low_pa / (3.0 * std::numbers::pi * 193e9 * h.wire_m);
        const double bent = 2.0 / (h.eye_inside_m + h.wire_m) + opens;
        CHECK_THAT(answered(d).joints[0].eye.mandrel_m, WithinRel(2.0 / bent - h.wire_m, 1e-9));
    }
}

TEST_CASE("eyes linked in each other have no pin to wall in, and play by the wire's thickness", "[joints]") {
    document::Document d = hinged_block();
    d.joints[0].hinge->kind = document::HingeKind::linked;
    const JointAnswer j = answered(d).joints[0];
    CHECK(wall(j, WallKind::pin_and_face) == nullptr);
    CHECK_THAT(j.play_per_eye_m, WithinAbs(0.002 - 0.0009, 1e-12));
    CHECK(j.strength.pin_shear_n == 0.0);
}

TEST_CASE("wire that cannot be bent so is refused by the name of its field", "[joints]") {
    document::Document d = hinged_block();
    d.joints[0].hinge->wire_m = 0.010;
    const auto a = joint_answers(d);
    REQUIRE_FALSE(a.ok());
    CHECK(a.problems().front().path == "/joints/0/hinge/wire_mm");
}

TEST_CASE("a film brushed into the pockets narrows the eye's room on every side and the wire's swing; one "
          "given by mass lies as thick",
          "[joints]") {
    document::Document d = hinged_block();
    document::Coat c;
    c.thickness_m = 0.0002;
    d.coats = {c};
    const JointAnswer plugged = answered(d).joints[0];
    d.coats[0].on_pockets = true;
    const JointsAnswer brushed = answered(d);
    const EyeRoom& room = *brushed.joints[0].eyes[0].room;
    CHECK_THAT(brushed.films.in_pockets_m, WithinAbs(0.0002, 1e-15));
    CHECK_THAT(room.beside_m, WithinAbs(plugged.eyes[0].room->beside_m - 0.0002, 1e-12));
    CHECK_THAT(room.behind_m, WithinAbs(plugged.eyes[0].room->behind_m - 0.0002, 1e-12));
    CHECK_THAT(room.up_down_m.value(), WithinAbs(plugged.eyes[0].room->up_down_m.value() - 0.0004, 1e-12));
    CHECK(brushed.joints[0].wire_rad[0] < plugged.wire_rad[0]);
    // The same film by the mass that the ledger gives it.
    const auto evaluation = evaluate(d);
    REQUIRE(evaluation.ok());
    d.coats[0].mass_kg = evaluation->answers.coats[0].mass.kg;
    d.coats[0].thickness_m.reset();
    CHECK_THAT(answered(d).films.in_pockets_m, WithinRel(0.0002, 0.02)); // Steiner's terms and the mouths
}

TEST_CASE("a hinge of one eye rocks until the ring's hole, seen along the pin, is as narrow as the pin; two "
          "eyes do not",
          "[joints]") {
    document::Document d = hinged_block();
    CHECK_FALSE(answered(d).joints[0].rocks_rad.has_value());
    d.joints[0].hinge->lower_z_m = -0.008;
    const JointAnswer j = answered(d).joints[0];
    REQUIRE(j.eyes.size() == 1);
    CHECK(j.sag_rad == 0.0);
    REQUIRE(j.rocks_rad.has_value());
    // Eye 2.0, wire 0.9, pin 1.2 mm: 2.9·cosθ − 0.9 = 1.2.
    CHECK_THAT(2.9 * std::cos(*j.rocks_rad) - 0.9, WithinAbs(1.2, 1e-9));
    d.joints[0].hinge->pin_diameter_m = 0.002;
    CHECK_THAT(*answered(d).joints[0].rocks_rad, WithinAbs(0.0, 1e-6));
    d.joints[0].hinge->kind = document::HingeKind::linked;
    CHECK_THAT(*answered(d).joints[0].rocks_rad, WithinAbs(most_swing_rad, 1e-12));
}
