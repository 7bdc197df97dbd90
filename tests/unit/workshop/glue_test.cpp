#include "workshop/glue.hpp"

#include "body/bore.hpp"
#include "evenfall.hpp"
#include "materials/solids.hpp"
#include "unit/workshop/hinged_block.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <numbers>

using namespace evenfall;
using namespace evenfall::glue;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using support::hinged_block;

namespace {

shape::Body body_of(const document::Document& d) {
    const auto lines = shape::drawn_lines(d.shape);
    REQUIRE(lines.ok());
    const auto body = shape::cut(*lines, d.joints);
    REQUIRE(body.ok());
    return *body;
}

GlueAnswer answered(const document::Document& d, const GlueRequest& r = {}) {
    const auto a = glue::glue(d, body_of(d), r);
    REQUIRE(a.ok());
    return *a;
}

double solid(const char* id) {
    return materials::find_solid(id)->density_kg_m3.value;
}

} // namespace

TEST_CASE("a pinned hinge has its eyes glued in one segment, linked eyes one pair on either side", "[glue]") {
    document::Document d = hinged_block();
    const auto pinned = glued_eyes(d, body_of(d));
    REQUIRE(pinned.size() == 2);
    for (const GluedEye& eye : pinned) {
        CHECK(eye.segment == 0);
        // The fore half ends at 59 mm; the twist sits 20 mm deep.
        CHECK_THAT(eye.at_m.x, WithinAbs(0.059 - 0.010, 1e-12));
    }
    d.joints[0].hinge->eyes_on = document::EyesOn::aft;
    d.joints[0].hinge->pin_aft_m = -0.004;
    for (document::Pocket& p : d.pockets) {
        p.x_from_m = 0.052;
        p.x_to_m = 0.0595;
    }
    const auto aft = glued_eyes(d, body_of(d));
    REQUIRE(aft.size() == 2);
    CHECK(aft[0].segment == 1);
    CHECK_THAT(aft[0].at_m.x, WithinAbs(0.061 + 0.010, 1e-12));
    d.joints[0].hinge->kind = document::HingeKind::linked;
    CHECK(glued_eyes(d, body_of(d)).size() == 4);
    d.joints[0].hinge.reset();
    CHECK(glued_eyes(d, body_of(d)).empty());
}

TEST_CASE("glue begins where the twist comes into wood, beside the middle of a relieved face or behind a "
          "pocket, and ends where the wire does",
          "[glue]") {
    document::Document d = hinged_block();
    document::Hinge& h = *d.joints[0].hinge;
    d.joints[0].relief_fore_rad = std::atan(0.5);
    h.pin_off_m = -0.002;
    for (document::Pocket& p : d.pockets)
        p.y_m = -0.002;
    // The fore face stands at 59 mm in the middle and 1 mm farther back 2 mm beside it.
    CHECK_THAT(glued_eyes(d, body_of(d))[0].at_m.x, WithinAbs(0.058 - 0.010, 1e-12));
    const double whole = glued_eyes(d, body_of(d))[0].gap_m3;
    // A pocket that goes on through the face takes the wood from 55 mm on; the other eye keeps its own.
    d.pockets[0].x_from_m = 0.055;
    h.turns = 4.0;
    h.glued_m = 0.012;
    const auto eyes = glued_eyes(d, body_of(d));
    CHECK_THAT(eyes[1].at_m.x, WithinAbs(0.058 - 0.006, 1e-12));
    // Eye 2 mm inside and wire 0.9 mm: 1.9 mm, four turns of 4.05 mm and legs of 2 mm reach 20.1 mm ahead of
    // the pin at 64 mm.
    CHECK_THAT(eyes[0].hole.glued_m, WithinAbs(0.055 - (0.064 - 0.0201), 1e-12));
    CHECK_THAT(eyes[0].at_m.x, WithinAbs(0.5 * (0.055 + 0.0439), 1e-12));
    CHECK_THAT(eyes[0].gap_m3, WithinRel(whole * 11.1 / 20.0, 1e-9));
    const GlueAnswer a = answered(d);
    CHECK_THAT(a.rows[0].glue_kg, WithinRel((eyes[0].gap_m3 + eyes[1].gap_m3) * solid("epoxy"), 1e-12));
    // Too short to reach the wood: no glue.
    h.turns = 0.0;
    d.pockets[1].x_from_m = 0.055;
    CHECK(glued_eyes(d, body_of(d)).empty());
}

TEST_CASE("the glue taken is the gaps' volume by density for all lures, over what is not lost", "[glue]") {
    const document::Document d = hinged_block();
    GlueRequest r;
    r.lures = 3;
    r.loss = 0.25;
    const GlueAnswer a = answered(d, r);
    REQUIRE(a.rows.size() == 1);
    CHECK(a.rows[0].eyes == 2);
    // Wire 0.9 mm, twist 1.8 mm, bit 2.0 mm: the room is 0.1 mm wide.
    CHECK_THAT(a.rows[0].width_m, WithinAbs(0.0001, 1e-12));
    // By hand: a twist of 4.5 wires' pitch lengthens its wires by √(1 + (π/4.5)²) = 1.219585123; 20 mm of a 2
    // mm hole less two such wires leave π/4·20·(4 − 1.62·1.219585123) = 31.79719181 mm³ an eye.
    const double gap = 31.79719181e-9;
    CHECK_THAT(a.rows[0].gap_m3, WithinRel(gap, 1e-9));
    CHECK(a.rows[0].sort == GlueKind::epoxy); // a minute to fit is longer than either CA stays open
    CHECK_THAT(a.take_kg[2], WithinRel(3.0 * 2.0 * gap * solid("epoxy") / 0.75, 1e-9));
    CHECK(a.take_m3[0] == 0.0);
}

TEST_CASE("narrow gaps fitted at once take thin CA, wider ones thick, the rest and slow fitting epoxy",
          "[glue]") {
    const WorkingTimes times;
    CHECK(glue_for(0.05e-3, 3.0, times) == GlueKind::thin_ca);
    CHECK(glue_for(0.20e-3, 3.0, times) == GlueKind::thick_ca);
    CHECK(glue_for(0.05e-3, 20.0, times) == GlueKind::thick_ca);
    CHECK(glue_for(0.50e-3, 3.0, times) == GlueKind::epoxy);
    CHECK(glue_for(0.05e-3, 60.0, times) == GlueKind::epoxy);
    CHECK(glue_for(0.05e-3, 60.0, {90.0, 90.0, 1200.0}) == GlueKind::thin_ca);
}

TEST_CASE(
    "a hinge that names its glue gets it, and is warned where that glue sets first or the gap is too wide",
    "[glue]") {
    document::Document d = hinged_block();
    d.joints[0].hinge->glue = document::HingeGlue::ca;
    GlueAnswer a = answered(d);
    CHECK(a.rows[0].sort == GlueKind::thin_ca);
    REQUIRE(a.warnings.size() == 1);
    CHECK(a.warnings[0].sentence.text(evenfall::units::metric).find("sets before") != std::string::npos);
    GlueRequest quick;
    quick.fitting_s = 4.0;
    CHECK(answered(d, quick).warnings.empty());
    d.joints[0].hinge->glue = document::HingeGlue::epoxy;
    CHECK(answered(d, quick).rows[0].sort == GlueKind::epoxy);
}

TEST_CASE("each hook hangs on one hanger where nobody says otherwise", "[glue]") {
    document::Document d = hinged_block();
    document::Part hook;
    hook.stage = Stage::rigged;
    hook.mass_kg = 0.001;
    hook.reach_m = 0.01;
    hook.at_m = {0.03, 0.0, -0.02};
    d.parts = {hook, hook, hook};
    d.joints[0].hinge.reset();
    GlueAnswer a = answered(d);
    REQUIRE(a.rows.size() == 1);
    CHECK_FALSE(a.rows[0].joint.has_value());
    CHECK(a.rows[0].eyes == 3);
    GlueRequest r;
    r.hangers = 0;
    CHECK(answered(d, r).rows.empty());
}

TEST_CASE("a soda cap is bulk soda and as much CA as the grains leave room, and weighs about what the table "
          "gives the mix",
          "[glue]") {
    document::Document d = hinged_block();
    document::Hole h = support::belly_hole(30.0, 6.0, 20.0);
    h.depth_m = 0.012;
    h.cap = document::Cap{"ca_soda", 0.003};
    h.fill->mass_kg = 0.001;
    d.holes = {h};
    GlueAnswer a = answered(d);
    REQUIRE(a.caps.size() == 1);
    // Flat belly: hole's area by the cap's length.
    const double volume = std::numbers::pi / 4.0 * 36e-6 * 0.003;
    CHECK_THAT(a.caps[0].volume_m3, WithinRel(volume, 1e-9));
    CHECK_THAT(a.caps[0].soda_kg, WithinRel(volume * 1000.0, 1e-9));
    CHECK_THAT(a.caps[0].ca_m3, WithinRel(volume * (1.0 - 1.0 / 2.2), 1e-9));
    const double mix = a.caps[0].soda_kg + a.caps[0].ca_m3 * liquid_ca_kg_m3;
    const auto& table = materials::find_solid("ca_soda")->density_kg_m3;
    CHECK(std::abs(mix / volume - table.value) < 2.0 * table.spread * table.value);
    // All cap down to a drill point: the point is filled too, as wide as the hole and 0.3 of that high.
    d.holes[0].end = document::HoleEnd::point_118;
    d.holes[0].fill.reset();
    d.holes[0].depth_m = 0.003;
    a = answered(d);
    REQUIRE(a.caps.size() == 1);
    CHECK_THAT(
        a.caps[0].volume_m3,
        WithinRel(volume + std::numbers::pi / 12.0 * 36e-6 * 0.006 * holes::point_height_per_diameter, 1e-9));
    d.holes[0].cap->material = "dowel";
    CHECK(answered(d).caps.empty());
}

TEST_CASE("glue is refused by the name of what is off its limits", "[glue]") {
    const document::Document d = hinged_block();
    const auto refused = [&](const GlueRequest& r) {
        const auto a = glue::glue(d, body_of(d), r);
        return a.ok() ? std::string() : a.problems().front().path;
    };
    GlueRequest r;
    r.loss = 0.95;
    CHECK(refused(r) == "/loss");
    r = {};
    r.lures = 0;
    CHECK(refused(r) == "/lures");
    r = {};
    r.times.epoxy_s = std::nan("");
    CHECK(refused(r) == "/times/epoxy_s");
    r = {};
    r.hangers = 2;
    r.hanger.bit_m = 1e-3;
    CHECK(refused(r) == "/bit_mm");
}

TEST_CASE(
    "a hinge's glue is weighed with the hardware only where the document names it, and its wood comes out",
    "[glue][ledger]") {
    document::Document d = hinged_block();
    const auto plain = evaluate(d);
    REQUIRE(plain.ok());
    d.joints[0].hinge->glue = document::HingeGlue::epoxy;
    const auto glued = evaluate(d);
    REQUIRE(glued.ok());
    const double gap = glued_eyes(d, body_of(d))[0].gap_m3;
    CHECK_THAT(glued->answers.mass.kg - plain->answers.mass.kg,
               WithinAbs(2.0 * gap * (solid("epoxy") - 500.0), 1e-12));
    CHECK(glued->answers.displaced_m3 == plain->answers.displaced_m3);
    CHECK(glued->answers.stages[1].mass.kg == plain->answers.stages[1].mass.kg);
    CHECK(glued->answers.stages[2].mass.kg > plain->answers.stages[2].mass.kg);
    CHECK(glued->answers.segments[0].mass.kg > plain->answers.segments[0].mass.kg);
    CHECK(glued->answers.segments[1].mass.kg == plain->answers.segments[1].mass.kg);
    const auto again = read_document(write_document(d));
    REQUIRE(again.ok());
    CHECK(again->joints[0].hinge->glue == document::HingeGlue::epoxy);
}
