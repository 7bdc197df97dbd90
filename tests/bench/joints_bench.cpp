// What the joints of a lure cost: the Joints step works them out after every change.

#include "evenfall.hpp"
#include "support/presets.hpp"
#include "workshop/joint_answers.hpp"

#include <catch2/benchmark/catch_benchmark.hpp>
#include <catch2/catch_test_macros.hpp>

using namespace evenfall;

TEST_CASE("joints", "[bench]") {
    for (const char* name : {"millrace-170", "quarry-230"}) {
        const auto document = support::preset_named(name);
        const auto evaluation = evaluate(document);
        REQUIRE(evaluation.ok());
        BENCHMARK(std::string("joints ") + name) {
            return joints::joint_answers(document, evaluation->body).value().wrap_rad[0];
        };
    }
}
