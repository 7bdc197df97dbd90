#include "reach.hpp"
#include "reach/resized.hpp"
#include "support/presets.hpp"
#include "support/small_lures.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

double mass_kg(const document::Document& d) {
    const auto lure = evaluate(d);
    REQUIRE(lure.ok());
    return lure->answers.mass.kg;
}

} // namespace

TEST_CASE("an unleaded body of another size has the cube of its mass", "[reach]") {
    document::Document fish = support::fish();
    fish.holes.clear();
    fish.parts.clear();
    fish.coats.clear();
    fish.hangers.clear();
    for (document::Joint& joint : fish.joints)
        joint.hinge.reset();
    for (const document::Document& d : {support::block(), fish}) {
        for (const double share : {0.5, 0.8, 1.3, 2.0}) {
            const document::Document other = reach::resized(d, share, share).document;
            // Gaps of joints are rounded to what a saw leaves; all else is exact.
            const double exact = d.joints.empty() ? 1e-13 : 2e-3;
            CHECK_THAT(mass_kg(other), WithinRel(share * share * share * mass_kg(d), exact));
        }
    }
}

TEST_CASE("a recipe at its own length is the recipe", "[reach]") {
    const document::Document d = support::preset_named("millrace-170");
    const auto same = reach::at_length(d, d.shape.back.back().x_m);
    REQUIRE(same.ok());
    CHECK(same->chosen.empty());
    CHECK_THAT(mass_kg(same->document), WithinAbs(plan_lead(d)->after.mass.kg, 1e-6));
}

TEST_CASE("a recipe of 170 mm at 120 mm has hooks, wire and bits that a shop has", "[reach]") {
    const document::Document d = support::preset_named("millrace-170");
    const auto small = reach::at_length(d, 0.12);
    REQUIRE(small.ok());
    const document::Document& s = small->document;
    CHECK_THAT(s.shape.back.back().x_m, WithinAbs(0.12, 1e-12));
    CHECK_FALSE(small->chosen.empty());
    REQUIRE(s.holes.size() == d.holes.size());
    for (const document::Hole& hole : s.holes) {
        const double sixteenths = hole.diameter_m / (units::inch_m / 32.0);
        const double halves = hole.diameter_m / 0.5e-3;
        CHECK((std::abs(sixteenths - std::round(sixteenths)) < 1e-6 ||
               std::abs(halves - std::round(halves)) < 1e-6));
    }
    for (std::size_t i = 0; i < d.parts.size(); ++i) {
        if (d.parts[i].reach_m) CHECK(*s.parts[i].reach_m < *d.parts[i].reach_m);
    }
    const auto lure = evaluate(s);
    REQUIRE(lure.ok());
    CHECK(lure->answers.fall.has_value());
}

TEST_CASE("the thickness of a block for a weight in water is that of plain arithmetic", "[reach]") {
    const document::Document block = support::block();
    const double area_m2 = 0.12 * 0.03; // long times high
    const double lift_kg_m3 = evaluate(block)->answers.water_density_kg_m3 - 500.0;
    for (const double thick_m : {0.0126, 0.0185, 0.0274, 0.0413}) {
        const auto other = reach::thickness_for(block, -area_m2 * thick_m * lift_kg_m3);
        REQUIRE(other.ok());
        // Rounded to a hundredth of a millimetre.
        CHECK_THAT(2.0 * other->shape.half_width.front().value, WithinAbs(thick_m, 5.1e-6));
    }
}

TEST_CASE("a weight in water that no thickness gives is refused with the range", "[reach]") {
    const document::Document d = plan_lead(support::preset_named("millrace-170"))->document;
    const auto other = reach::thickness_for(d, 0.001);
    REQUIRE(other.ok());
    CHECK_THAT(evaluate(*other)->answers.in_water.kg, WithinAbs(0.001, 3e-5)); // 0.005 mm of the body
    const auto never = reach::thickness_for(d, 1.0);
    REQUIRE_FALSE(never.ok());
    CHECK(never.problems().front().path == "/in_water_g");
    CHECK_FALSE(never.problems().front().limit.empty());
    // Thinner it cannot be: a hole at the tail is as wide as the wood there bears.
    CHECK_FALSE(reach::thickness_for(d, evaluate(d)->answers.in_water.kg + 0.0005).ok());
}

TEST_CASE("the length for a finished mass gives that mass", "[reach]") {
    const document::Document d = support::preset_named("millrace-170");
    for (const double wanted : {units::kg_from_oz(1.25), 0.055, 0.08}) {
        const auto other = reach::length_for(d, wanted);
        REQUIRE(other.ok());
        // A tenth of a millimetre of length is some hundredths of a gram.
        CHECK_THAT(mass_kg(other->document), WithinAbs(wanted, 1e-4));
    }
    const auto never = reach::length_for(d, 20.0);
    REQUIRE_FALSE(never.ok());
    CHECK(never.problems().front().path == "/mass_g");
}

TEST_CASE("a family is one body with four leads, each heavier in water than the last", "[reach]") {
    const document::Document d = support::preset_named("millrace-170");
    const auto members = reach::family(d);
    REQUIRE(members.ok());
    double last_kg = -1.0;
    for (const reach::Member& member : *members) {
        CHECK(member.figures.in_water_kg > last_kg);
        last_kg = member.figures.in_water_kg;
        CHECK(member.plan.document.targets.pitch_rad == d.targets.pitch_rad);
        CHECK(member.plan.document.shape.belly.size() == d.shape.belly.size());
        CHECK((member.figures.chance > 0.0 || !member.plan.met));
        if (member.plan.met && member.fall == starter::WantedFall::suspends)
            CHECK_THAT(member.figures.in_water_kg, WithinAbs(0.0, 1e-5));
    }
}
