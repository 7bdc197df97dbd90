// One hole a screen, and the ticks that say how far each is.

#include "state/session_json.hpp"
#include "unit/shell/bench_of_tests.hpp"

#include <algorithm>

using namespace evenfall;
using namespace evenfall::shell;
using namespace evenfall::shell::bench_of_tests;
using document::HoleUse;

namespace {

HoleUse use_of(const Bench& bench, std::size_t hole) {
    return bench.app.document().holes[hole].use;
}

document::Document demo() {
    auto read = read_document(demo_text("millrace-170.json"));
    REQUIRE(read.ok());
    return *read;
}

} // namespace

TEST_CASE(
    "drilling by steps: one hole a screen, next and back, a tick for drilled and one for lead in, and the "
    "screen stays on",
    "[shell][drill]") {
    for (const auto& [width, height] : {std::pair{1024.0f, 768.0f}, {768.0f, 1024.0f}, {390.0f, 844.0f}}) {
        Bench bench;
        bench.tap("step.lead");
        CHECK_FALSE(bench.host.awake);
        bench.reach("lead.drill");
        ImGui::GetIO().DisplaySize = {width, height}; // the tablet is turned, or is a phone
        bench.rest();
        REQUIRE(bench.there("drill.done"));
        CHECK(bench.host.awake);
        CHECK_FALSE(bench.there("lead.add"));
        bench.tap("drill.done");
        CHECK(use_of(bench, 0) == HoleUse::drilled);
        bench.tap("drill.done");
        CHECK(use_of(bench, 0) == HoleUse::leaded);
        bench.tap("drill.next");
        bench.tap("drill.done");
        CHECK(use_of(bench, 1) == HoleUse::drilled);
        CHECK(use_of(bench, 2) == HoleUse::ballast);
        bench.tap("drill.back");
        CHECK_FALSE(bench.there("drill.done")); // its lead is in: nothing is left to tick
        bench.tap("drill.close");
        CHECK_FALSE(bench.there("drill.done"));
        CHECK_FALSE(bench.host.awake);
    }
}

TEST_CASE("another step ends drilling by steps, and a reload does not", "[shell][drill]") {
    state::Session session(demo());
    session.view.step = state::Step::lead;
    session.view.drilling = true;
    session.view.drill_screen = 2;
    state::Session again(demo());
    REQUIRE(state::restore_session(again, state::write_session(session)).empty());
    CHECK(again.view.drilling);
    CHECK(again.view.drill_screen == 2);
    Bench bench;
    bench.tap("step.lead");
    bench.reach("lead.drill");
    REQUIRE(bench.there("drill.next"));
    bench.tap("step.shape");
    CHECK_FALSE(bench.there("drill.next"));
    bench.tap("step.lead");
    CHECK_FALSE(bench.there("drill.next"));
}

TEST_CASE("the ticks of the Lead step say how far a hole is, and a plan then leaves it so",
          "[shell][drill]") {
    Bench bench;
    bench.tap("step.lead");
    const document::Document before = bench.app.document();
    bench.reach("lead.done.0.1");
    bench.reach("lead.done.1.2");
    CHECK(use_of(bench, 0) == HoleUse::drilled);
    CHECK(use_of(bench, 1) == HoleUse::leaded);
    bench.reach("lead.plan");
    if (bench.there("lead.keep")) bench.reach("lead.keep");
    for (const std::size_t hole : {std::size_t{0}, std::size_t{1}})
        CHECK(bench.app.document().holes[hole].depth_m == before.holes[hole].depth_m);
    CHECK(bench.app.document().holes[1].fill->mass_kg == before.holes[1].fill->mass_kg);
}
