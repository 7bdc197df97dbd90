#include "evenfall.hpp"
#include "unit/bench/lead/lead_plans.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <catch2/matchers/catch_matchers_string.hpp>

#include <cmath>
#include <numbers>

using namespace evenfall;
using namespace evenfall::support;
using Catch::Matchers::ContainsSubstring;
using Catch::Matchers::WithinAbs;
using units::kg_from_g;
using units::m_from_mm;
using units::rad_from_deg;

TEST_CASE("an impossible weight says which limits stop it and by how much") {
    document::Document d = support::fish();
    d.targets.in_water_kg = kg_from_g(40.0);
    d.targets.matters_more = document::MattersMore::fall;
    const LeadPlan plan = planned(d);
    REQUIRE_FALSE(plan.met);
    REQUIRE_FALSE(plan.shortfalls.empty());
    // By how much: fill every hole to its end by hand and weigh.
    document::Document full = d;
    for (document::Hole& h : full.holes) {
        h.depth_m = h.max_depth_m;
        h.fill->mass_kg = 11340.0 * std::numbers::pi / 4.0 * h.diameter_m * h.diameter_m *
                          (h.max_depth_m - h.cap->length_m);
    }
    const double reached_g = units::g_from_kg(answers(full).in_water.kg);
    CHECK_THAT(units::g_from_kg(plan.after.in_water.kg), WithinAbs(reached_g, 1e-6));
    char shortage[32];
    std::snprintf(shortage, sizeof shortage, "%.2f g short", 40.0 - reached_g);
    CHECK_THAT(plan.shortfalls[0].sentence.text(evenfall::units::metric), ContainsSubstring(shortage));
    CHECK_THAT(plan.shortfalls[0].sentence.text(evenfall::units::metric),
               ContainsSubstring("Hole 1 is full at 18.0 mm, its depth limit"));
    CHECK(plan.shortfalls[0].path == "/targets/in_water_g");
}

TEST_CASE("too heavy without any lead says so") {
    document::Document d = support::fish();
    d.wood.density_kg_m3 = 1150.0;
    const LeadPlan plan = planned(d);
    REQUIRE_FALSE(plan.met);
    CHECK_THAT(plan.shortfalls[0].sentence.text(evenfall::units::metric), ContainsSubstring("too heavy"));
    CHECK(lead_kg(plan) == 0.0);
}

TEST_CASE("an impossible hang says how near it comes and which way lead would have to go") {
    document::Document d = support::fish();
    d.targets.pitch_rad = rad_from_deg(80);
    d.targets.matters_more = document::MattersMore::fall;
    const LeadPlan up = planned(d);
    REQUIRE_FALSE(up.met);
    CHECK(up.shortfalls[0].path == "/targets/pitch_deg");
    CHECK_THAT(up.shortfalls[0].sentence.text(evenfall::units::metric), ContainsSubstring("farther aft"));
    CHECK_THAT(units::g_from_kg(up.after.in_water.kg), WithinAbs(1.0, 0.01));
    d.targets.pitch_rad = rad_from_deg(-79);
    d.holes.erase(d.holes.begin());
    const LeadPlan down = planned(d);
    REQUIRE_FALSE(down.met);
    CHECK_THAT(down.shortfalls[0].sentence.text(evenfall::units::metric),
               ContainsSubstring("farther forward"));
}

TEST_CASE("a plan stops short of a pocket and of another hole, says so, and is no reason to refuse what was "
          "sound") {
    // An independent look: a document with the same hole a little deeper is refused, or leaves less than the
    // wall.
    document::Document d = support::block();
    d.holes = {support::belly_hole(30, 8, 26), support::belly_hole(60, 8, 26),
               support::belly_hole(90, 8, 26)};
    d.targets.by = document::TargetBy::in_water;
    d.targets.matters_more = document::MattersMore::fall;
    document::Pocket pocket;
    pocket.x_from_m = m_from_mm(57);
    pocket.x_to_m = m_from_mm(63);
    pocket.z_from_m = m_from_mm(-4);
    pocket.z_to_m = m_from_mm(6);
    pocket.floods = false;
    document::Hole across = support::belly_hole(90, 8, 26);
    across.use = document::HoleUse::fixed;
    across.from = document::HoleFrom::back;
    across.depth_m = m_from_mm(20);
    for (const bool by_hole : {false, true}) {
        document::Document e = d;
        if (by_hole)
            e.holes.push_back(across);
        else
            e.pockets = {pocket};
        const std::size_t stopped = by_hole ? 2 : 1;
        const double room_mm =
            by_hole ? 10.0 - 2.0 : 11.0 - 2.0; // between mouth and the other's near end, less the wall
        CAPTURE(by_hole);
        for (const double in_water_g : {-500.0, -20.0, 400.0}) {
            CAPTURE(in_water_g);
            for (const double drilled_mm : {0.0, 6.0}) {
                e.holes[stopped].depth_m = m_from_mm(drilled_mm);
                e.targets.in_water_kg = kg_from_g(in_water_g);
                const LeadPlan plan = planned(e);
                CHECK(plan.document.holes[stopped].depth_m < m_from_mm(room_mm) + 1e-9);
                if (in_water_g < 0.0) continue;
                CHECK_THAT(plan.document.holes[stopped].depth_m, WithinAbs(m_from_mm(room_mm), 1e-9));
                CHECK_THAT(plan.shortfalls[0].sentence.text(evenfall::units::metric),
                           ContainsSubstring(by_hole ? "where the wall to another hole must stay"
                                                     : "where the wall to pocket 1 must stay"));
            }
        }
    }
}

TEST_CASE("two holes that would meet are both planned: the later one keeps its wall to the earlier one") {
    document::Document d = support::block();
    d.holes = {support::belly_hole(60, 8, 15), support::belly_hole(60, 8, 26),
               support::belly_hole(61, 8, 26)};
    d.holes[1].from = document::HoleFrom::back;
    d.targets.by = document::TargetBy::in_water;
    d.targets.matters_more = document::MattersMore::fall;
    d.targets.in_water_kg = kg_from_g(400.0);
    const LeadPlan plan = planned(d);
    CHECK_THAT(plan.document.holes[0].depth_m, WithinAbs(m_from_mm(15), 1e-9));
    CHECK_THAT(plan.document.holes[1].depth_m, WithinAbs(m_from_mm(13), 1e-9));
    CHECK(plan.document.holes[2].depth_m == 0.0);
}

TEST_CASE("where the pitch is out of reach and the weight comes first, it is met, whichever the hole") {
    document::Document d = pointed();
    d.targets.matters_more = document::MattersMore::fall;
    const double bare = answers(with_holes(d, {})).in_water.kg;
    for (const double grams : {1.4, 2.0, 3.0, 8.0}) {
        for (const double degrees : {-80.0, -60.0, 60.0, 80.0}) {
            d.targets.in_water_kg = bare + kg_from_g(grams);
            d.targets.pitch_rad = rad_from_deg(degrees);
            const LeadPlan plan = planned(d);
            CAPTURE(grams, degrees);
            CHECK_FALSE(plan.met);
            CHECK_THAT(plan.after.in_water.kg, WithinAbs(d.targets.in_water_kg, 1e-6));
            for (const HolePlan& h : plan.holes)
                CHECK((h.mass_kg == 0.0 || h.column_m > 0.9e-3));
            // No single hole comes nearer, and no steeper aim brings it farther that way.
            for (std::size_t i = 0; i < d.holes.size(); ++i) {
                const LeadPlan one = planned(with_holes(d, {i}));
                if (std::fabs(one.after.in_water.kg - d.targets.in_water_kg) > 1e-6) continue;
                CHECK(std::fabs(*plan.after.pitch_rad - d.targets.pitch_rad) <=
                      std::fabs(*one.after.pitch_rad - d.targets.pitch_rad) + 1e-6);
            }
        }
    }
}

TEST_CASE("a weight that no hole is little enough for is not called full holes") {
    document::Document d = pointed();
    const double bare = answers(with_holes(d, {})).in_water.kg;
    d.targets.in_water_kg = bare + kg_from_g(0.1);
    d.targets.matters_more = document::MattersMore::fall;
    const LeadPlan plan = planned(d);
    REQUIRE_FALSE(plan.met);
    CHECK_THAT(plan.shortfalls[0].sentence.text(evenfall::units::metric),
               ContainsSubstring("Without any lead") && ContainsSubstring("0.10 g short"));
    CHECK(lead_kg(plan) == 0.0);
}

TEST_CASE(
    "a fall slower than the bench speaks of can be planned, and one that cannot says so in its own words") {
    document::Document d = support::fish();
    d.targets.by = document::TargetBy::fall;
    for (const double speed : {0.005, 0.009, 0.015}) {
        d.targets.fall_m_s = speed;
        CAPTURE(speed);
        const LeadPlan plan = planned(d);
        CHECK(plan.met);
        CHECK(plan.after.in_water.kg > 0.0);
        CHECK(plan.after.behaviour == (speed < still_m_s ? Behaviour::suspends : Behaviour::falls));
    }
    d.targets.fall_m_s = 0.001;
    const LeadPlan none = planned(d);
    REQUIRE_FALSE(none.met);
    CHECK(none.shortfalls[0].path == "/targets/fall_mm_s");
    CHECK_THAT(none.shortfalls[0].sentence.text(evenfall::units::metric),
               !ContainsSubstring("short") && ContainsSubstring("no steady fall") &&
                   ContainsSubstring("1.0 mm/s is asked"));
}

TEST_CASE("a wall limit is named where it is what stops the plan") {
    document::Document d = support::fish();
    d.targets.in_water_kg = kg_from_g(60.0);
    for (document::Hole& h : d.holes)
        h.max_depth_m = m_from_mm(40);
    const LeadPlan plan = planned(d);
    REQUIRE_FALSE(plan.met);
    CHECK_THAT(plan.shortfalls[0].sentence.text(evenfall::units::metric),
               ContainsSubstring("wall must stay"));
}

TEST_CASE("lead bored in from the back can put G above B, and the plan says the lure would roll over") {
    document::Document d = support::fish();
    for (document::Hole& h : d.holes)
        h.from = document::HoleFrom::back;
    d.targets.matters_more = document::MattersMore::fall;
    const LeadPlan plan = planned(d);
    REQUIRE_FALSE(plan.met);
    CHECK(plan.shortfalls[0].code == ProblemCode::capsizes);
}

TEST_CASE("with no hole to fill the plan says so and leaves the lure alone") {
    document::Document d = support::fish();
    d.holes.clear();
    const LeadPlan plan = planned(d);
    REQUIRE_FALSE(plan.met);
    CHECK(plan.holes.empty());
    CHECK_THAT(plan.shortfalls[0].sentence.text(evenfall::units::metric),
               ContainsSubstring("add a ballast hole"));
}
