// What lead alone cannot: ways out as the page looks for them, shows them and keeps them.

#include "unit/shell/bench_of_tests.hpp"

#include "state/edits.hpp"
#include "state/ways.hpp"
#include "support/presets.hpp"

#include <catch2/matchers/catch_matchers_floating_point.hpp>

using namespace evenfall;
using namespace evenfall::shell;
using namespace evenfall::shell::bench_of_tests;
using Catch::Matchers::WithinAbs;

namespace {

/// Faster than its holes allow with lead.
document::Document too_fast() {
    document::Document d = support::preset_named("millrace-170");
    d.targets.by = document::TargetBy::fall;
    d.targets.fall_m_s = 0.4;
    return d;
}

reach::Ways all_ways(const document::Document& d) {
    auto ways = reach::ways_out(d, {d.targets, {}});
    REQUIRE(ways.ok());
    REQUIRE_FALSE(ways->met);
    REQUIRE_FALSE(ways->ways.empty());
    return std::move(ways).value();
}

void check_does_it(const document::Document& d) {
    const auto lure = evaluate(d);
    REQUIRE(lure.ok());
    REQUIRE(lure->answers.fall);
    REQUIRE(lure->answers.pitch_rad);
    CHECK(fall_on_target(d.targets, lure->answers.fall->speed_m_s));
    CHECK(pitch_on_target(d.targets, lure->answers.pitch_rad));
}

} // namespace

TEST_CASE("the page's search for ways ends with the core's ways, and rests then", "[shell][ways]") {
    const state::Session session(too_fast());
    state::WaySearch search;
    CHECK(search.found() == nullptr);
    int frames = 1;
    while (search.work_on(session)) {
        CHECK(search.progress() < 1.0);
        REQUIRE(++frames < 1000);
    }
    CHECK(frames > 3);
    CHECK(search.done());
    const reach::Ways wanted = all_ways(session.kept());
    REQUIRE(search.found() != nullptr);
    REQUIRE(search.found()->ways.size() == wanted.ways.size());
    for (std::size_t i = 0; i < wanted.ways.size(); ++i)
        CHECK(search.found()->ways[i].change == wanted.ways[i].change);
    CHECK_FALSE(search.work_on(session));
}

TEST_CASE("another lure or another chance is looked at anew; what is only shown is not", "[shell][ways]") {
    state::Session session(too_fast());
    state::WaySearch search;
    while (search.work_on(session)) {
    }
    const auto gap = [](double gap_m) {
        return state::on_joint(0, [gap_m](document::Joint& joint) { joint.gap_m = gap_m; });
    };
    REQUIRE(session.plan_lead());
    CHECK_FALSE(search.work_on(session));
    REQUIRE(session.apply({"Gap", gap(0.0041), false, true}));
    CHECK_FALSE(search.work_on(session));
    session.finish();
    CHECK(search.work_on(session));
    while (search.work_on(session)) {
    }
    search.chance = 0.15;
    CHECK(search.work_on(session));
    while (search.work_on(session)) {
    }
    for (const reach::Way& way : search.found()->ways)
        CHECK(way.after.chance >= 0.15);
}

TEST_CASE("a goal beyond any lure is refused with its range, and the page rests", "[shell][ways]") {
    document::Document d = too_fast();
    d.targets.by = document::TargetBy::in_water;
    d.targets.in_water_kg = 5.0;
    const state::Session session(d);
    state::WaySearch search;
    CHECK_FALSE(search.work_on(session));
    REQUIRE_FALSE(search.refusal().empty());
    CHECK(search.refusal().front().path == "/targets/in_water_g");
    CHECK(search.found() == nullptr);
    CHECK_FALSE(search.work_on(session));
}

TEST_CASE("a way is kept as one change in the place of a shown plan, and one undo takes it back",
          "[shell][ways]") {
    state::Session session(too_fast());
    const std::string before = write_document(session.kept());
    const std::size_t entries = session.history().size();
    for (const reach::Way& way : all_ways(session.kept()).ways) {
        REQUIRE(session.plan_lead());
        const auto take = [&](const document::Document&) { return way.document; };
        REQUIRE(session.apply({way.change.text(units::metric), take, true, true}));
        CHECK_FALSE(session.offer());
        CHECK(session.history().size() == entries + 1);
        CHECK(session.history().undo_label() == way.change.text(units::metric));
        check_does_it(session.kept());
        session.undo();
        CHECK(write_document(session.kept()) == before);
    }
}

TEST_CASE("a change of the kept lure that is refused leaves a shown plan as it is", "[shell][ways]") {
    state::Session session(too_fast());
    REQUIRE(session.plan_lead());
    const std::string shown = write_document(session.document());
    const auto beyond = state::on_joint(0, [](document::Joint& joint) { joint.at_m = 0.9; });
    CHECK_FALSE(session.apply({"Joint beyond the tail", beyond, true, true}));
    CHECK(session.offer());
    CHECK(write_document(session.document()) == shown);
}

TEST_CASE("an unmet plan is followed by ways; one is looked at, shown beside the lure, kept and undone",
          "[shell][ways]") {
    Bench bench;
    REQUIRE(bench.app.open_json(write_document(too_fast())).empty());
    bench.rest();
    bench.tap("step.lead");
    const std::string before = bench.app.document_json();
    CHECK_FALSE(bench.drawn("lead.way.0"));
    bench.reach("lead.plan");
    REQUIRE(bench.drawn("lead.way.0"));
    CHECK(bench.items("lead.way.").size() > all_ways(too_fast()).ways.size());
    REQUIRE(bench.drawn("lead.map"));
    CHECK_FALSE(bench.drawn("lead.way.keep"));
    bench.reach("lead.way.0");
    REQUIRE(bench.drawn("lead.way.keep"));
    CHECK(bench.app.document_json() == before);
    bench.reach("lead.way.beside");
    CHECK(bench.drawn("variants.close"));
    CHECK(bench.app.document_json() == before);
    bench.tap("variants.close");
    bench.reach("lead.way.keep");
    const document::Document kept = bench.app.document();
    check_does_it(kept);
    CHECK(kept.name == too_fast().name);
    bench.tap("undo");
    CHECK(bench.app.document_json() == before);
}

TEST_CASE("ways are looked for only while somebody looks at them", "[shell][ways]") {
    Bench bench;
    REQUIRE(bench.app.open_json(write_document(too_fast())).empty());
    bench.rest();
    bench.tap("step.lead");
    bench.reach("lead.plan");
    bench.reach("lead.drop");
    CHECK_FALSE(bench.drawn("lead.way.0"));
    CHECK_FALSE(bench.app.wants_frames());
    bench.reach("section.lead.ways");
    CHECK(bench.drawn("lead.way.0"));
    CHECK_FALSE(bench.app.wants_frames());
}
