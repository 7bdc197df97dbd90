// Prints every answer and plan of every demo preset, one number a line: "preset key value". Built natively
// and for the page; compare.mjs holds the two against each other.

#include "evenfall.hpp"
#include "support/presets.hpp"
#include "support/swim_chains.hpp"
#include "water/swim/run.hpp"

#include <catch2/catch_test_macros.hpp>

#include <cstdio>
#include <iterator>
#include <string>

using namespace evenfall;

namespace {

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
    for (const std::string preset : {"millrace-170", "reedline-120", "quarry-230", "estuary-150"}) {
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

TEST_CASE("table of swimming") {
    const swim::Chain chain = testing::chain_of(testing::body_b170());
    const swim::Motion motion(chain, {}, {});
    swim::State state = swim::start_state(chain, swim::Start::tail_turn);
    for (int k = 0; k < 500; ++k)
        motion.advance(state, chain.length_m / (500.0 * motion.speed_m_s()));
    for (std::size_t k = 0; k < 2 * chain.segments.size() + 2; ++k)
        row("swimming-170", "after_one_length_" + std::to_string(k), state[k]);
}
