// Holes keep off what is built in: by one rule for the lead plan, the warnings and the sheet.

#include "base/trade.hpp"
#include "bench/lead/lead_plan.hpp"
#include "body/hole_checks.hpp"
#include "body/keep_out.hpp"
#include "support/small_lures.hpp"
#include "support/worked.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <catch2/matchers/catch_matchers_string.hpp>

#include <algorithm>

using namespace evenfall;
using Catch::Matchers::ContainsSubstring;
using Catch::Matchers::WithinAbs;
using support::worked;
using units::m_from_mm;

namespace {

/// A block of 120 × 20 × 30 mm cut at 60 mm; its eyes sit in the fore half, 9 mm above and below the middle.
document::Document hinged() {
    document::Document d = support::block();
    document::Joint joint;
    joint.at_m = m_from_mm(60);
    joint.hinge = document::Hinge{};
    joint.hinge->pin_aft_m = m_from_mm(4);
    joint.hinge->weighs = true;
    d.joints = {joint};
    d.segment_names = {"Fore", "Aft"};
    return d;
}

holes::DepthLimit limit_at(document::Document d, double x_mm) {
    d.holes = {support::belly_hole(x_mm, 8, 30)};
    d.holes[0].wall_m = m_from_mm(3);
    const shape::Body body = worked(d).body;
    return holes::free_depth(d, 0, body, {holes::place(d.holes[0], body)}, {});
}

bool warns_of(const document::Document& d, const char* what) {
    const Problems all = worked(d).answers.warnings;
    return std::any_of(all.begin(), all.end(), [&](const Problem& p) {
        return p.path == "/holes/0/depth_mm" &&
               p.sentence.text(units::metric).find(what) != std::string::npos;
    });
}

} // namespace

TEST_CASE("a hole under the wire of a hinge ends a wall below it") {
    // The lower eye's wire lies at z = −9; its hole is 2 mm wide, the belly at −15: 6 − 1 − 3 mm are left.
    const holes::DepthLimit limit = limit_at(hinged(), 50);
    CHECK(limit.stop == holes::DepthStop::built_in);
    CHECK_THAT(limit.depth_m, WithinAbs(m_from_mm(2.0), 1e-9));
    CHECK(limit.built_in == "the wire of joint 1");
}

TEST_CASE("a hole beyond the end of the wire goes as deep as it likes") {
    CHECK(limit_at(hinged(), 20).stop != holes::DepthStop::built_in);
}

TEST_CASE("a hole on the pin has no room at all") {
    const holes::DepthLimit limit = limit_at(hinged(), 69);
    CHECK(limit.depth_m == 0.0);
    CHECK(limit.built_in == "the pin of joint 1");
}

TEST_CASE("a hole beside a hanger keeps a thin wall to it") {
    document::Document d = support::block();
    document::Hanger hanger;
    hanger.name = "Front";
    hanger.x_m = m_from_mm(40);
    d.hangers = {hanger};
    // Bit 4 mm and hanger's hole 1 mm from their middles, and 1.5 mm of wood between them.
    CHECK(limit_at(d, 46.4).depth_m == 0.0);
    CHECK(limit_at(d, 46.4).built_in == "hanger Front");
    CHECK(limit_at(d, 46.6).stop != holes::DepthStop::built_in);
}

TEST_CASE("a hole drilled into wire is a warning, and one that stops short of it is none") {
    document::Document d = hinged();
    d.holes = {support::belly_hole(50, 8, 30)};
    d.holes[0].use = document::HoleUse::drilled;
    d.holes[0].depth_m = m_from_mm(12);
    CHECK(warns_of(d, "runs into the wire of joint 1"));
    d.holes[0].depth_m = m_from_mm(4.0);
    CHECK(warns_of(d, "hardly any wood to the wire of joint 1"));
    d.holes[0].depth_m = m_from_mm(3.4);
    CHECK_FALSE(warns_of(d, "wire"));
}

TEST_CASE("a plugged hole is wood again: no warning") {
    document::Document d = hinged();
    d.holes = {support::belly_hole(50, 8, 30)};
    d.holes[0].use = document::HoleUse::fixed;
    d.holes[0].depth_m = m_from_mm(12);
    d.holes[0].fill.reset();
    d.holes[0].cap = document::Cap{"dowel", m_from_mm(12)};
    CHECK_FALSE(warns_of(d, "wire"));
}

TEST_CASE("the lead plan drills into nothing that is built in, and names what stops it") {
    document::Document d = hinged();
    d.holes = {support::belly_hole(50, 8, 30), support::belly_hole(75, 8, 30)};
    d.targets.by = document::TargetBy::in_water;
    d.targets.in_water_kg = units::kg_from_g(40);
    d.targets.matters_more = document::MattersMore::fall;
    const auto plan = plan_lead(d);
    REQUIRE(plan.ok());
    CHECK_FALSE(plan->met);
    CHECK_THAT(plan->shortfalls.front().sentence.text(units::metric),
               ContainsSubstring("the wire of joint 1"));
    for (const Problem& warning : plan->after.warnings)
        CHECK(warning.code != ProblemCode::overlap);
}
