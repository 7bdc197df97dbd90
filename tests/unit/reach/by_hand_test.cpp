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

TEST_CASE("the thickness for a weight in water gives that weight, and moves the right way", "[reach]") {
    const auto plan = plan_lead(support::preset_named("millrace-170"));
    const document::Document& d = plan->document;
    for (const double off_kg : {-0.004, -0.001, 0.001, 0.002}) {
        const double wanted = plan->after.in_water.kg + off_kg;
        const auto other = reach::thickness_for(d, wanted);
        REQUIRE(other.ok());
        const auto lure = evaluate(*other);
        REQUIRE(lure.ok());
        // A hundredth of a millimetre of thickness is some hundredths of a gram of water.
        CHECK_THAT(lure->answers.in_water.kg, WithinAbs(wanted, 3e-5));
        const double thicker = other->shape.half_width[3].value - d.shape.half_width[3].value;
        CHECK((thicker < 0.0) == (off_kg > 0.0));
    }
    const auto never = reach::thickness_for(d, 1.0);
    REQUIRE_FALSE(never.ok());
    CHECK(never.problems().front().path == "/in_water_g");
    CHECK_FALSE(never.problems().front().limit.empty());
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
