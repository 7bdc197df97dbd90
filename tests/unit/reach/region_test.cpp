#include "reach/region.hpp"

#include "bench/lead/lead_plan.hpp"
#include "bench/lead/problem.hpp"
#include "reach.hpp"
#include "support/presets.hpp"
#include "support/small_lures.hpp"
#include "water/hang.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <random>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using reach::Region;

namespace {

constexpr double met_kg = 1e-5;                      // of a plan
constexpr double met_rad = 0.05 * units::degree_rad; // the same

/// A lure with what its region needs.
struct Drawn {
    document::Document document;
    Evaluation lure;
    ledger::LedgerInputs inputs;
    Region region;

    explicit Drawn(document::Document d)
        : document(std::move(d)), lure(evaluate(document).value()),
          inputs(ledger::ledger_inputs(document, lure.body).value()),
          region(lead::problem_of(lure.ledger, inputs, waters_of(document)->fishing)) {}
};

} // namespace

TEST_CASE("the border of what lead reaches agrees with the plan at 500 random points", "[reach]") {
    std::mt19937 random(21);
    const auto between = [&](double from, double to) {
        return from + (to - from) * static_cast<double>(random()) / static_cast<double>(std::mt19937::max());
    };
    int inside = 0;
    int outside = 0;
    int on_the_border = 0;
    for (document::Document d :
         {support::fish(), support::four_piece(), support::preset_named("millrace-170"),
          support::preset_named("quarry-230"), support::preset_named("reedline-120")}) {
        d.targets.by = document::TargetBy::in_water;
        const Drawn drawn(d);
        const auto weights = drawn.region.weights();
        REQUIRE(weights.has_value());
        const double room_kg = 0.15 * (weights->most_kg - weights->least_kg);
        for (int k = 0; k < 100; ++k) {
            d.targets.in_water_kg = between(weights->least_kg - room_kg, weights->most_kg + room_kg);
            d.targets.pitch_rad = units::rad_from_deg(between(-40.0, 40.0));
            const double kg = d.targets.in_water_kg;
            const double rad = d.targets.pitch_rad;
            const auto plan = plan_lead(d);
            REQUIRE(plan.ok());
            INFO(d.name << ": " << units::g_from_kg(kg) << " g, " << units::deg_from_rad(rad) << "°");
            const bool contains = drawn.region.contains(kg, rad);
            // Within what a plan calls met, either answer is right.
            bool near = false;
            for (const double up : {-met_rad, 0.0, met_rad}) {
                for (const double more : {-met_kg, 0.0, met_kg})
                    near = near || drawn.region.contains(kg + more, rad + up) != contains;
            }
            if (near) {
                ++on_the_border;
                continue;
            }
            CHECK(contains == plan->met);
            ++(contains ? inside : outside);
        }
    }
    CHECK(inside > 60);
    CHECK(outside > 100);
    CHECK(on_the_border < 25);
}

TEST_CASE("a border point is a lure of that weight, and the two sides meet where one filling is left",
          "[reach]") {
    const Drawn drawn(support::preset_named("millrace-170"));
    const double water_kg_m3 = waters_of(drawn.document)->fishing.density_kg_m3;
    const auto weights = drawn.region.weights();
    REQUIRE(weights.has_value());
    for (int k = 1; k < 40; ++k) {
        const double kg = weights->least_kg + k * (weights->most_kg - weights->least_kg) / 40.0;
        const auto up = drawn.region.border(kg, Region::Side::nose_up);
        const auto down = drawn.region.border(kg, Region::Side::nose_down);
        REQUIRE((up && down));
        CHECK_THAT(up->in_water(water_kg_m3).kg, WithinAbs(kg, 1e-12));
        CHECK_THAT(down->in_water(water_kg_m3).kg, WithinAbs(kg, 1e-12));
        CHECK(*water::hang(*up).pitch_rad >= *water::hang(*down).pitch_rad - 1e-12);
    }
    const auto heaviest = drawn.region.border(weights->most_kg - 1e-12, Region::Side::nose_up);
    const auto other = drawn.region.border(weights->most_kg - 1e-12, Region::Side::nose_down);
    REQUIRE((heaviest && other));
    CHECK_THAT(*water::hang(*heaviest).pitch_rad, WithinAbs(*water::hang(*other).pitch_rad, 1e-6));
}

TEST_CASE("the map has what is asked inside exactly where the plan is met, and the plan's own point nearest",
          "[reach]") {
    for (const char* name : {"millrace-170", "quarry-230", "estuary-150"}) {
        const document::Document d = support::preset_named(name);
        reach::Goal goal{d.targets};
        for (const double deg : {-2.0, 35.0}) {
            goal.targets.pitch_rad = units::rad_from_deg(deg);
            document::Document asked = d;
            asked.targets = goal.targets;
            const auto map = reach::reach_map(d, goal);
            const auto plan = plan_lead(document::as_it_lies(asked));
            REQUIRE((map.ok() && plan.ok()));
            CHECK(map->inside == plan->met);
            CHECK_THAT(map->nearest.in_water_kg, WithinAbs(plan->after.in_water.kg, 1e-12));
            CHECK(map->border.size() > 20);
            // Fall rises with the weight.
            for (const reach::MapPoint& p : map->border)
                CHECK((p.in_water_kg <= 0.0 || !p.fall_m_s || *p.fall_m_s > 0.0));
        }
    }
}

TEST_CASE("without a hole to fill there is no map", "[reach]") {
    document::Document d = support::block();
    const auto map = reach::reach_map(d, {d.targets});
    REQUIRE(map.ok());
    CHECK(map->border.empty());
    CHECK_FALSE(map->inside);
}
