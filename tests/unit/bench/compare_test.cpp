#include "bench/compare.hpp"
#include "evenfall.hpp"
#include "materials/woods.hpp"
#include "support/presets.hpp"
#include "support/small_lures.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <string>

using namespace evenfall;
using Catch::Matchers::WithinRel;

namespace {

const compare::Option& named(const std::vector<compare::Option>& options, const char* id) {
    const auto found =
        std::find_if(options.begin(), options.end(), [id](const auto& o) { return o.id == id; });
    REQUIRE(found != options.end());
    return *found;
}

} // namespace

TEST_CASE(
    "the lure's own wood asks in the table for what its own plan asks, and a heavier wood for less lead",
    "[compare]") {
    const document::Document lure = support::preset_named("millrace-170");
    const auto options = compare::woods(lure);
    REQUIRE(options.ok());
    CHECK(options->size() == materials::woods().size());
    const auto& own = named(*options, lure.wood.species.c_str());
    const auto plan = plan_lead(lure);
    REQUIRE(plan.ok());
    CHECK(own.met == plan->met);
    double planned_kg = 0.0;
    for (const auto& hole : plan->document.holes) {
        if (hole.fill && hole.fill->mass_kg) planned_kg += *hole.fill->mass_kg;
    }
    CHECK_THAT(own.fill_kg.value(), WithinRel(planned_kg, 1e-9));
    const auto& cedar = named(*options, "western_redcedar");
    CHECK(cedar.density_kg_m3 < own.density_kg_m3);
    CHECK(cedar.bare_in_water_kg < own.bare_in_water_kg);
    REQUIRE(cedar.met);
    CHECK(*cedar.fill_kg > *own.fill_kg);
    for (const auto& option : *options) {
        CAPTURE(option.id, option.why.text(units::metric));
        CHECK(option.density_kg_m3 > 100.0);
        CHECK(option.spread > 0.0);
        CHECK(option.met == option.why.empty());
    }
}

TEST_CASE("a denser ballast needs no deeper holes, and one that does not fit says which limit stops it",
          "[compare]") {
    const document::Document lure = support::preset_named("millrace-170");
    const auto options = compare::metals(lure);
    REQUIRE(options.ok());
    const auto& lead = named(*options, "lead");
    const auto& tungsten = named(*options, "tungsten");
    CHECK(tungsten.density_kg_m3 > lead.density_kg_m3);
    REQUIRE(lead.fill_kg);
    REQUIRE(tungsten.fill_kg);
    for (const auto& option : *options) {
        CAPTURE(option.id, option.why.text(units::metric));
        CHECK(option.fill_kg.has_value()); // short or not, every metal can be planned
    }
    CHECK(tungsten.deepest_m <= lead.deepest_m + 1e-9);
    CHECK(lead.bare_in_water_kg == tungsten.bare_in_water_kg);
    document::Document shallow = lure;
    for (auto& hole : shallow.holes) {
        hole.max_depth_m = 0.006;
        hole.depth_m = 0.0;
        hole.fill.reset();
    }
    const auto refused = compare::metals(shallow);
    REQUIRE(refused.ok());
    const auto& light =
        refused->back().density_kg_m3 < refused->front().density_kg_m3 ? refused->back() : refused->front();
    CHECK_FALSE(light.met);
    CHECK_FALSE(light.why.empty());
}

TEST_CASE("a lure that cannot be built has no choice of woods or metals", "[compare]") {
    document::Document broken = support::preset_named("millrace-170");
    broken.shape.back.clear();
    CHECK_FALSE(compare::woods(broken).ok());
    CHECK_FALSE(compare::metals(broken).ok());
}
