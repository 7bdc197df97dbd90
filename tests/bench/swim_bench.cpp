// What it costs to work out how a lure swims: one run of 40 lengths by number of segments, and all 24 draws
// with three starts each.

#include "support/swim_chains.hpp"
#include "water/swim/motion.hpp"
#include "water/swim/swim.hpp"

#include <catch2/benchmark/catch_benchmark.hpp>
#include <catch2/catch_test_macros.hpp>

using namespace evenfall;

TEST_CASE("swim", "[bench]") {
    for (const auto& body : {testing::body_a140(), testing::body_b170(), testing::body_c230()}) {
        const swim::Chain chain = testing::chain_of(body);
        const std::string name = std::to_string(chain.segments.size()) + " segments";
        BENCHMARK("40 lengths, " + name) {
            const swim::Motion motion(chain, {}, {});
            swim::State state{};
            state[chain.segments.size()] = 0.1;
            const double run_s = 40.0 * chain.length_m / motion.speed_m_s();
            for (double t = 0.0; t < run_s; t += motion.step_s())
                motion.advance(state, motion.step_s());
            return state[0];
        };
        BENCHMARK("24 draws, " + name) {
            return swim::swim(chain).swims;
        };
    }
}
