#include "workshop/joint_answers.hpp"

#include "evenfall.hpp"
#include "unit/water/afloat/forms.hpp"
#include "unit/workshop/hinged_block.hpp"
#include "workshop/chain.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <numbers>

using namespace evenfall;
using namespace evenfall::joints;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using support::hinged_block;

namespace {

JointsAnswer answered(const document::Document& d) {
    const auto a = joint_answers(d);
    REQUIRE(a.ok());
    return *a;
}

bool warns_of(const JointsAnswer& a, const std::string& words) {
    for (const Problem& p : a.warnings) {
        if (p.sentence.find(words) != std::string::npos) return true;
    }
    return false;
}

const Wall* wall(const JointAnswer& j, WallKind between) {
    for (const Wall& w : j.walls) {
        if (w.between == between) return &w;
    }
    return nullptr;
}

} // namespace

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

TEST_CASE("walls are what a ruler finds between pin, pocket, skin and hole", "[joints]") {
    document::Document d = hinged_block();
    d.holes.push_back(support::belly_hole(74.0, 6.0, 20.0));
    d.holes[0].depth_m = 0.010; // from −15 to −5 mm: beside the lower pocket (−9.5 to −6.5)
    const JointAnswer j = answered(d).joints[0];
    // Pin 3 mm behind its face, 0.6 mm thick to one side; skin 10 mm out.
    CHECK_THAT(wall(j, WallKind::pin_and_face)->thickness_m, WithinAbs(0.0024, 1e-9));
    CHECK_THAT(wall(j, WallKind::pin_and_skin)->thickness_m, WithinAbs(0.0094, 1e-9));
    CHECK_THAT(wall(j, WallKind::pocket_and_skin)->thickness_m, WithinAbs(0.007, 1e-9));
    CHECK_THAT(wall(j, WallKind::pocket_and_hole)->thickness_m, WithinAbs(0.003, 1e-9));
    CHECK_THAT(wall(j, WallKind::pin_and_hole)->thickness_m, WithinAbs(0.0064, 1e-9));
    CHECK(wall(j, WallKind::pocket_and_hole)->hole == 0);
    d.holes[0].depth_m = 0.004; // ends below the pocket; the pin ends 2 mm inside the belly
    CHECK(wall(answered(d).joints[0], WallKind::pocket_and_hole) == nullptr);
    CHECK(wall(answered(d).joints[0], WallKind::pin_and_hole) != nullptr);
    d.holes[0].depth_m = 0.0019;
    CHECK(wall(answered(d).joints[0], WallKind::pin_and_hole) == nullptr);
}

TEST_CASE("a hole that meets the pin below its lowest eye is told, and one in the fore segment that a pocket "
          "reaches into",
          "[joints]") {
    document::Document d = hinged_block();
    d.holes.push_back(support::belly_hole(64.0, 6.0, 20.0));
    d.holes[0].depth_m =
        0.004; // from −15 to −11 mm, on the pin's own axis; the lower pocket begins at −9.5 mm
    CHECK_THAT(wall(answered(d).joints[0], WallKind::pin_and_hole)->thickness_m, WithinAbs(-0.0036, 1e-12));
    CHECK(warns_of(answered(d), "no wood is left between the pin and hole 1"));
    // A pin that stands beside the wood, 10 mm to either side, meets no hole.
    d.holes[0].depth_m = 0.020;
    CHECK(wall(answered(d).joints[0], WallKind::pin_and_hole) != nullptr);
    d.joints[0].hinge->pin_off_m = 0.011;
    CHECK(wall(answered(d).joints[0], WallKind::pin_and_hole) == nullptr);
    d.joints[0].hinge->pin_off_m = 0.0;
    // Linked eyes: pockets from 50 to 70 mm reach 9 mm into either segment. A hole of 6 mm at 46.4 mm leaves
    // 0.6 mm.
    d.joints[0].hinge->kind = document::HingeKind::linked;
    for (document::Pocket& p : d.pockets) {
        p.x_from_m = 0.050;
        p.x_to_m = 0.070;
    }
    for (const double x_m : {0.0464, 0.0736}) {
        d.holes[0].x_m = x_m;
        d.holes[0].depth_m = 0.014;
        const JointsAnswer a = answered(d);
        REQUIRE(wall(a.joints[0], WallKind::pocket_and_hole) != nullptr);
        CHECK_THAT(wall(a.joints[0], WallKind::pocket_and_hole)->thickness_m, WithinAbs(0.0006, 1e-12));
        CHECK(warns_of(a, "between the eye pocket and hole 1"));
    }
    // Pockets of the aft segment alone are no matter to a hole of the fore one.
    for (document::Pocket& p : d.pockets)
        p.x_from_m = 0.0605;
    d.holes[0].x_m = 0.050;
    CHECK(wall(answered(d).joints[0], WallKind::pocket_and_hole) == nullptr);
}

TEST_CASE("a pin bears on wood where no pocket is and bends over the widest one, whichever way its pockets "
          "are drawn",
          "[joints]") {
    document::Document d = hinged_block();
    const auto pocket = [&](std::optional<double> from_mm, std::optional<double> to_mm) {
        document::Pocket p = d.pockets[0];
        p.z_from_m.reset();
        p.z_to_m.reset();
        if (from_mm) p.z_from_m = units::m_from_mm(*from_mm);
        if (to_mm) p.z_to_m = units::m_from_mm(*to_mm);
        return p;
    };
    // Bearing 20 MPa across 1.2 mm, bending 4·M over the span, for a pin from −13 to 13 mm.
    const auto hold = [&](std::vector<document::Pocket> pockets, std::optional<double> lower_z_m,
                          std::optional<double> upper_z_m) {
        document::Document e = d;
        e.pockets = std::move(pockets);
        e.joints[0].hinge->lower_z_m = lower_z_m;
        e.joints[0].hinge->upper_z_m = upper_z_m;
        const JointAnswer j = answered(e).joints[0];
        const double shared = j.eyes.size() > 1 ? 1.5 : 1.0;
        const double moment = wire::tensile(wire::Temper::spring, 0.0012).low_pa * 1.728e-9 / 6.0;
        return std::pair(j.strength.wood_n / (20e6 * 0.0012), shared * 4.0 * moment / j.strength.pin_bend_n);
    };
    const auto is = [](std::pair<double, double> got, double in_wood_m, double span_m) {
        CHECK_THAT(got.first, WithinAbs(in_wood_m, 1e-12));
        CHECK_THAT(got.second, WithinAbs(span_m, 1e-12));
    };
    is(hold({pocket(-9.5, -6.5), pocket(6.5, 9.5)}, {}, {}), 0.020, 0.003);
    // Two eyes in one pocket: its height is missing once.
    is(hold({pocket(-8, 8)}, -0.005, 0.005), 0.010, 0.016);
    is(hold({pocket(-8, 8)}, {}, 0.005), 0.010, 0.016);
    // The widest, wherever it is.
    is(hold({pocket(-11, -4), pocket(4, 7)}, {}, {}), 0.016, 0.007);
    is(hold({pocket(-7, -4), pocket(4, 11)}, {}, {}), 0.016, 0.007);
    // Open to the belly is as closed anywhere below the pin's end.
    is(hold({pocket({}, 8)}, {}, 0.004), 0.005, 0.021);
    is(hold({pocket(-14.9, 8)}, {}, 0.004), 0.005, 0.021);
    is(hold({pocket(-8, {})}, -0.004, {}), 0.005, 0.021);
    is(hold({pocket({}, {})}, {}, 0.004), 0.0, 0.026);
}

TEST_CASE("every pocket round the pin has its eye; three share the load no better than two", "[joints]") {
    document::Document d = hinged_block();
    document::Pocket third = d.pockets[0];
    third.z_from_m = -0.0015;
    third.z_to_m = 0.0015;
    const double two_n = answered(d).joints[0].strength.eye_n;
    d.pockets.push_back(third);
    const JointAnswer j = answered(d).joints[0];
    REQUIRE(j.eyes.size() == 3);
    CHECK(j.eyes[1].place.z_m == 0.0);
    CHECK_THAT(j.place.eye_spacing_m, WithinAbs(0.016, 1e-12));
    CHECK(j.strength.eye_n == two_n);
}

TEST_CASE("a thin wall before the pin is warned of once the hinge is drawn, and not for a hinge nobody drew",
          "[joints]") {
    document::Document d = hinged_block();
    d.joints[0].hinge->pin_aft_m = 0.0025;
    CHECK(warns_of(answered(d), "in front of the pin"));
    d.joints[0].hinge.reset();
    CHECK_FALSE(warns_of(answered(d), "in front of the pin"));
}

TEST_CASE("a twist holds by as much of its glued depth as its wire reaches, and a shorter wire is warned of",
          "[joints]") {
    document::Document d = hinged_block();
    document::Hinge& h = *d.joints[0].hinge;
    const double bit_m = 0.0020; // for a twist of 1.8 mm
    const auto pull_out_n = [&](double deep_m) {
        return 1.5 * std::numbers::pi * bit_m * deep_m * 3e6;
    }; // two eyes, 3 MPa
    CHECK_THAT(answered(d).joints[0].strength.pull_out_n, WithinRel(pull_out_n(0.020), 1e-9));
    CHECK_FALSE(warns_of(answered(d), "the twist reaches"));
    // Eye 2 mm inside, wire 0.9 mm, two turns of 4.05 mm, legs of 2 mm; pin 5 mm behind the fore face: 12 mm
    // less those.
    h.turns = 2.0;
    h.glued_m = 0.090;
    const JointsAnswer shallow = answered(d);
    CHECK_THAT(shallow.joints[0].twist_reach_m, WithinAbs(0.0070, 1e-12));
    CHECK_THAT(shallow.joints[0].strength.pull_out_n, WithinRel(pull_out_n(0.0070), 1e-9));
    CHECK(warns_of(shallow, "the twist reaches 7.0 mm into the wood, not the 90.0 mm that it is glued deep"));
    // Linked eyes 2.9 mm across their middles hang midway 0.725 mm to either side of the pin, and the farther
    // face counts.
    h.kind = document::HingeKind::linked;
    h.pin_aft_m = 0.0005;
    d.pockets.clear();
    CHECK_THAT(answered(d).joints[0].twist_reach_m, WithinAbs(0.0120 - 0.0015 + 0.000725, 1e-12));
    h.turns = 0.0;
    h.pin_aft_m = 0.030;
    CHECK(answered(d).joints[0].strength.pull_out_n == 0.0);
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

TEST_CASE("a stronger line lowers the safety in proportion; only a joint before a hook is warned of once "
          "hooks are known",
          "[joints]") {
    document::Document d = hinged_block();
    d.targets.line_n = 50.0;
    const double light = answered(d).joints[0].strength.safety;
    d.targets.line_n = 500.0;
    CHECK_THAT(answered(d).joints[0].strength.safety, WithinRel(light / 10.0, 1e-12));
    CHECK(warns_of(answered(d), "if a hook hangs behind it"));
    document::Part hook;
    hook.stage = Stage::dressed;
    hook.mass_kg = 0.001;
    hook.reach_m = 0.010;
    hook.at_m = {0.030, 0.0, -0.02};
    d.parts = {hook};
    CHECK_FALSE(warns_of(answered(d), "less than twice"));
    d.parts[0].at_m.x = 0.100;
    CHECK(warns_of(answered(d), "less than twice"));
    // What carries the hook decides, not where it stands: one of the aft half, leaning forward, hangs behind
    // the joint.
    d.parts[0].at_m.x = 0.058;
    CHECK_FALSE(warns_of(answered(d), "less than twice"));
    d.parts[0].segment = 1;
    CHECK(warns_of(answered(d), "less than twice"));
    d.parts[0].at_m.x = 0.062;
    d.parts[0].segment = 0;
    CHECK_FALSE(warns_of(answered(d), "less than twice"));
}

TEST_CASE("a swung chain keeps its pins together and every segment its length", "[joints]") {
    const std::vector<Pin> pins{{0.05, 0.0}, {0.09, 0.001}, {0.12, 0.0}};
    const std::vector<double> swings{0.5, -0.2, 0.9};
    const auto stands = chain_poses(pins, swings);
    REQUIRE(stands.size() == 4);
    double turned = 0.0;
    for (std::size_t k = 0; k < pins.size(); ++k) {
        const Pin before = stands[k].of(pins[k].x_m, pins[k].y_m);
        const Pin behind = stands[k + 1].of(pins[k].x_m, pins[k].y_m);
        CHECK_THAT(before.x_m, WithinAbs(behind.x_m, 1e-15));
        CHECK_THAT(before.y_m, WithinAbs(behind.y_m, 1e-15));
        turned += swings[k];
        CHECK_THAT(stands[k + 1].turned_rad, WithinAbs(turned, 1e-15));
    }
}

TEST_CASE("a chain of even spacing and swing lies on the circle that its turn radius names", "[joints]") {
    // Pins 30 mm apart, each swung by 0.3 rad: the middles of the links touch a circle of radius
    // l/(2·tan(ψ/2)).
    std::vector<Pin> pins;
    for (int k = 1; k <= 6; ++k)
        pins.push_back({0.030 * k, 0.0});
    const std::vector<double> swings(6, 0.3);
    const double radius = turn_radius_m(0.030 * 7, pins, swings);
    CHECK_THAT(radius, WithinRel(0.030 / (2.0 * std::tan(0.15)), 1e-12));
    const auto stands = chain_poses(pins, swings);
    // Centre: to starboard (positive y) of the first link's middle.
    for (std::size_t k = 0; k < stands.size(); ++k) {
        const Pin middle = stands[k].of(0.015 + 0.030 * static_cast<double>(k), 0.0);
        CHECK_THAT(std::hypot(middle.x_m - 0.015, middle.y_m - radius), WithinAbs(radius, 1e-12));
    }
    CHECK(std::isinf(turn_radius_m(0.1, {}, {})));
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

TEST_CASE("a pin off the middle of an oval body is as long as the wood is high where it stands, less both "
          "ends, and bears on that much less wood",
          "[joints]") {
    // An ellipse 20 by 30 mm: 4 mm beside the middle it is √(1 − 0.4²) of 30 mm high.
    const auto lines = support::elliptic_bar_lines(0.12, 0.010, 0.015);
    const auto with_pin_at = [&](double y_m) {
        document::Document d = hinged_block();
        d.joints[0].hinge->pin_off_m = y_m;
        for (auto& pocket : d.pockets)
            pocket.y_m = y_m;
        const auto body = shape::cut(lines, d.joints);
        REQUIRE(body.ok());
        const auto a = joint_answers(d, *body);
        REQUIRE(a.ok());
        return a->joints[0];
    };
    const JointAnswer middle = with_pin_at(0.0);
    CHECK(middle.pin_length_m == 2.0 * (0.015 - 0.002));
    CHECK(middle.pin_middle_z_m == 0.0);
    const double high_m = 0.030 * std::sqrt(1.0 - 0.4 * 0.4);
    for (const double y_m : {-0.004, 0.004}) {
        const JointAnswer off = with_pin_at(y_m);
        REQUIRE(off.eyes.size() == 2);
        REQUIRE(off.eyes[0].place.pocket.has_value());
        CHECK_THAT(off.pin_length_m, WithinAbs(high_m - 0.004, 1e-12));
        CHECK_THAT(off.pin_middle_z_m, WithinAbs(0.0, 1e-12));
        // Two pockets of 3 mm are open round the pin.
        CHECK_THAT(off.strength.wood_n / middle.strength.wood_n,
                   WithinRel((high_m - 0.010) / (0.030 - 0.010), 1e-9));
    }
    // Beside the wood there is nothing to put a pin into.
    CHECK(with_pin_at(0.0105).pin_length_m == 0.0);
}
