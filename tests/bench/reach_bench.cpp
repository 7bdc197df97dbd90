// How long ways out take. Measured, never tested on time.

#include "evenfall.hpp"
#include "reach.hpp"
#include "support/presets.hpp"
#include "support/random_lures.hpp"

#include <catch2/benchmark/catch_benchmark.hpp>
#include <catch2/catch_test_macros.hpp>

#include <algorithm>
#include <chrono>
#include <string>
#include <utility>
#include <vector>

using namespace evenfall;

namespace {

/// Goals that lead alone does not meet.
std::vector<std::pair<std::string, reach::Goal>> goals_of(const document::Document& d) {
    const reach::Goal as_it_is{d.targets, {}};
    reach::Goal fast = as_it_is;
    fast.targets.by = document::TargetBy::fall;
    fast.targets.fall_m_s = 0.35;
    reach::Goal nose_up = as_it_is;
    nose_up.targets.pitch_rad = units::rad_from_deg(40.0);
    reach::Goal light = as_it_is;
    light.targets.by = document::TargetBy::in_water;
    light.targets.in_water_kg = -0.02;
    reach::Goal sure = as_it_is;
    sure.chance = 0.9;
    return {{"fast", fast}, {"nose-up", nose_up}, {"light", light}, {"sure", sure}};
}

double ms_since(std::chrono::steady_clock::time_point from) {
    return 1e3 * std::chrono::duration<double>(std::chrono::steady_clock::now() - from).count();
}

struct Spent {
    double start_ms = 0.0;
    double longest_slice_ms = 0.0;
    double all_ms = 0.0;
    std::size_t ways = 0;

    void take_the_worse_of(const Spent& other) {
        start_ms = std::max(start_ms, other.start_ms);
        longest_slice_ms = std::max(longest_slice_ms, other.longest_slice_ms);
        all_ms = std::max(all_ms, other.all_ms);
        ways += other.ways;
    }
    [[nodiscard]] std::string text() const {
        return std::to_string(ways) + " ways in " + std::to_string(all_ms) + " ms, start " +
               std::to_string(start_ms) + " ms, longest slice " + std::to_string(longest_slice_ms) + " ms";
    }
};

Spent spent_on(const document::Document& d, const reach::Goal& goal) {
    Spent out;
    auto from = std::chrono::steady_clock::now();
    auto search = reach::Search::start(d, goal);
    out.start_ms = out.all_ms = ms_since(from);
    if (!search) return out;
    for (bool more = true; more;) {
        from = std::chrono::steady_clock::now();
        more = search->step();
        const double slice_ms = ms_since(from);
        out.longest_slice_ms = std::max(out.longest_slice_ms, slice_ms);
        out.all_ms += slice_ms;
    }
    out.ways = search->found().ways.size();
    return out;
}

} // namespace

TEST_CASE("reach", "[bench]") {
    for (const std::string name : {"millrace-170", "quarry-230"}) {
        const document::Document d = support::preset_named(name);
        for (const auto& [what, goal] : goals_of(d)) {
            WARN(name << ", " << what << ": " << spent_on(d, goal).text());
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

TEST_CASE("reach of drawn lures", "[bench]") {
    Spent worst;
    support::each_random_lure(2101, 300, [&](const support::RandomLure& lure, int) {
        worst.take_the_worse_of(spent_on(lure.document, {lure.document.targets, {}}));
    });
    WARN("the worst of 300 drawn lures: " << worst.text());
}
