// How long ways out take. Measured, never tested on time.

#include "evenfall.hpp"
#include "reach.hpp"
#include "support/presets.hpp"

#include <catch2/benchmark/catch_benchmark.hpp>
#include <catch2/catch_test_macros.hpp>

#include <algorithm>
#include <chrono>
#include <string>

using namespace evenfall;

namespace {

/// Out of reach of lead: the hang that is asked lies so far off what the plan gives.
reach::Goal hang_off(const document::Document& d, double deg) {
    reach::Goal goal{d.targets};
    goal.targets.pitch_rad += units::rad_from_deg(deg);
    return goal;
}

} // namespace

TEST_CASE("reach", "[bench]") {
    for (const std::string name : {"millrace-170", "quarry-230"}) {
        const document::Document d = support::preset_named(name);
        for (const double deg : {14.0, -25.0}) {
            const reach::Goal goal = hang_off(d, deg);
            const auto found = reach::ways_out(d, goal);
            REQUIRE(found.ok());
            const std::string what = name + (deg > 0.0 ? ", nose-up" : ", nose-down");
            WARN(what << ": " << (found->met ? "met" : "not met") << ", " << found->ways.size() << " ways");
            BENCHMARK("ways out of " + what) {
                return reach::ways_out(d, goal);
            };
            auto search = reach::Search::start(d, goal);
            REQUIRE(search.ok());
            double longest_s = 0.0;
            for (bool more = true; more;) {
                const auto from = std::chrono::steady_clock::now();
                more = search->step();
                longest_s =
                    std::max(longest_s,
                             std::chrono::duration<double>(std::chrono::steady_clock::now() - from).count());
            }
            WARN(what << ": longest slice " << 1e3 * longest_s << " ms");
            BENCHMARK("start of it " + what) {
                return reach::Search::start(d, goal);
            };
        }
        BENCHMARK("reach map " + name) {
            return reach::reach_map(d, {d.targets});
        };
        BENCHMARK("family " + name) {
            return reach::family(d);
        };
        BENCHMARK("length for a mass " + name) {
            return reach::length_for(d, 0.05);
        };
    }
}
