// How long a fall takes to work out. Measured, never tested on time.

#include "evenfall.hpp"
#include "materials/water_properties.hpp"
#include "support/presets.hpp"
#include "water/fall/descent.hpp"
#include "water/fall/hinge_loads.hpp"
#include "water/fall/water_sweep.hpp"

#include <catch2/benchmark/catch_benchmark.hpp>
#include <catch2/catch_test_macros.hpp>

#include <string>

using namespace evenfall;

TEST_CASE("fall", "[bench]") {
    for (const std::string name : {"millrace-170", "estuary-150"}) {
        const auto plan = plan_lead(support::preset_named(name));
        REQUIRE(plan.ok());
        const document::Document document = plan->document;
        const auto evaluation = evaluate(document);
        REQUIRE(evaluation.ok());
        const auto water =
            materials::water_properties(document.water.temperature_c, document.water.salinity_g_kg);
        REQUIRE(water.ok());
        const auto built = [&] {
            return fall::FallingLure(evaluation->body, evaluation->ledger, document, *water);
        };
        const fall::FallingLure descent = built();
        BENCHMARK("build " + name) {
            return built();
        };
        BENCHMARK("steady falls " + name) {
            return descent.steady();
        };
        BENCHMARK("track to 2 m " + name) {
            return descent.track();
        };
        BENCHMARK("in-water mass for a speed " + name) {
            return descent.in_water_for(0.15);
        };
        BENCHMARK("hinge loads " + name) {
            return fall::hinge_loads(evaluation->body, evaluation->ledger, document, *water, 0.0);
        };
        BENCHMARK("water sweep " + name) {
            return fall::water_sweep(descent, document.water);
        };
    }
}
