// Prints every answer and plan of every demo preset, one number a line: "preset key value". Built natively
// and for the page; compare.mjs holds the two against each other.

#include "evenfall.hpp"
#include "support/presets.hpp"
#include "support/swim_chains.hpp"
#include "water/swim/run.hpp"
#include "workshop/swim_chain.hpp"

#include <catch2/catch_test_macros.hpp>

#include <array>
#include <cmath>
#include <cstdio>
#include <iterator>
#include <string>

using namespace evenfall;

namespace {

constexpr std::array presets{"millrace-170", "reedline-120", "quarry-230", "estuary-150"};

void row(const std::string& preset, const std::string& key, double value) {
    std::printf("%s %s %.17g\n", preset.c_str(), key.c_str(), value);
}

void rows(const std::string& preset, const std::string& prefix, const Answers& a) {
    row(preset, prefix + "mass_kg", a.mass.kg);
    row(preset, prefix + "mass_sigma_kg", a.mass_sigma.kg);
    row(preset, prefix + "displaced_m3", a.displaced_m3);
    row(preset, prefix + "in_water_kg", a.in_water.kg);
    row(preset, prefix + "g_x_m", a.g_m.x);
    row(preset, prefix + "g_z_m", a.g_m.z);
    row(preset, prefix + "b_x_m", a.b_m.x);
    row(preset, prefix + "b_z_m", a.b_m.z);
    row(preset, prefix + "pitch_rad", a.pitch_rad.value_or(99.0));
    row(preset, prefix + "fall_m_s", a.fall ? a.fall->speed_m_s : 0.0);
    for (std::size_t s = 0; s < a.stages.size(); ++s) {
        row(preset, prefix + "stage_" + std::to_string(s) + "_mass_kg", a.stages[s].mass.kg);
        row(preset, prefix + "stage_" + std::to_string(s) + "_in_tub_kg", a.stages[s].in_tub.kg);
        row(preset, prefix + "stage_" + std::to_string(s) + "_tub_fall_m_s",
            a.stages[s].tub_fall ? a.stages[s].tub_fall->speed_m_s : 0.0);
    }
    for (const SegmentAnswer& s : a.segments) {
        row(preset, prefix + s.name + "_wood_m3", s.wood_m3);
        row(preset, prefix + s.name + "_in_water_kg", s.in_water.kg);
    }
}

} // namespace

TEST_CASE("table of answers") {
    for (const std::string preset : presets) {
        const auto document = read_document(support::preset_text(preset));
        REQUIRE(document.ok());
        const auto evaluation = evaluate(*document);
        REQUIRE(evaluation.ok());
        rows(preset, "", evaluation->answers);
        const auto plan = plan_lead(*document);
        REQUIRE(plan.ok());
        rows(preset, "plan_", plan->after);
        for (const HolePlan& h : plan->holes) {
            row(preset, "hole_" + std::to_string(h.hole) + "_mass_kg", h.mass_kg);
            row(preset, "hole_" + std::to_string(h.hole) + "_depth_m", h.depth_m);
        }
    }
}

namespace {

/// Where a chain is after its first length, by a few of the assumptions.
void path_rows(const std::string& name, const swim::Chain& chain) {
    constexpr int assumptions = 4;
    for (int draw = 0; draw < assumptions; ++draw) {
        const swim::Motion motion(chain, swim::closures_of(draw, chain.soft_tail), {});
        const double length_s = chain.length_m / motion.speed_m_s();
        // Often a whole number, whose last bits are no matter then.
        const int steps = static_cast<int>(std::ceil(length_s / motion.step_s() + 0.5));
        swim::State state = swim::start_state(chain, swim::Start::tail_turn);
        for (int k = 0; k < steps; ++k)
            motion.advance(state, length_s / steps);
        for (std::size_t k = 0; k < 2 * chain.segments.size() + 2; ++k)
            row(name, "draw_" + std::to_string(draw) + "_after_one_length_" + std::to_string(k), state[k]);
    }
}

} // namespace

TEST_CASE("table of swimming") {
    path_rows("swimming-140", testing::chain_of(testing::body_a140()));
    path_rows("swimming-170", testing::chain_of(testing::body_b170()));
    path_rows("swimming-230", testing::chain_of(testing::body_c230()));
    int answered = 0;
    for (const char* preset : presets) {
        const document::Document document = support::preset_named(preset);
        const auto evaluation = evaluate(document);
        REQUIRE(evaluation.ok());
        const auto chain = swim::chain_of(document, *evaluation);
        if (!chain.ok()) continue;
        ++answered;
        path_rows(preset, *chain);
    }
    CHECK(answered == 2);
}
