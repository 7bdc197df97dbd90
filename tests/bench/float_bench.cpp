// How long it takes to find how a lure floats. Measured, never tested on time.

#include "evenfall.hpp"
#include "materials/water_properties.hpp"
#include "support/presets.hpp"
#include "water/afloat/float_answers.hpp"

#include <catch2/benchmark/catch_benchmark.hpp>
#include <catch2/catch_test_macros.hpp>

#include <string>

using namespace evenfall;

TEST_CASE("float", "[bench]") {
    for (const std::string name : {"reedline-120", "millrace-170", "quarry-230"}) {
        auto document = support::preset_named(name);
        // Without its lead every one of them floats.
        if (name != "reedline-120") {
            for (auto& hole : document.holes)
                hole.fill.reset();
        }
        const auto evaluation = evaluate(document);
        REQUIRE(evaluation.ok());
        const double density = evaluation->answers.water_density_kg_m3;
        BENCHMARK("evaluate afloat " + name) {
            return evaluate(document);
        };
        BENCHMARK("all float answers " + name) {
            return afloat::float_answers(evaluation->body, evaluation->ledger, document, density);
        };
        BENCHMARK("upright afloat " + name) {
            return afloat::upright_answer(evaluation->body, evaluation->ledger, document, density);
        };
    }
}
