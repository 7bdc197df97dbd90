// The Bench log under a finger: what is put down, what it does to the answers, and what comes back by undo.

#include "unit/shell/bench_of_tests.hpp"

#include "bench/uncertainty/uncertainty.hpp"
#include "state/bench.hpp"
#include "state/session_json.hpp"

#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <functional>

using namespace evenfall;
using namespace evenfall::shell;
using namespace evenfall::shell::bench_of_tests;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using document::Reading;
using document::ReadingKind;

namespace {

document::Document demo() {
    auto read = read_document(demo_text("millrace-170.json"));
    REQUIRE(read.ok());
    return *read;
}

Reading dry(Stage stage, double kg) {
    Reading r;
    r.stage = stage;
    r.mass_kg = kg;
    return r;
}

double in_water_sigma(const document::Document& d) {
    const auto s = uncertainty(d);
    REQUIRE(s.ok());
    return s->in_water_kg.sigma;
}

/// Types a mass in grams into a field.
void type(Bench& bench, const std::string& field, std::initializer_list<const char*> keys) {
    bench.reach(field);
    REQUIRE(bench.there("keypad.ok"));
    bench.tap_all(keys);
    bench.tap("keypad.ok");
}

} // namespace

TEST_CASE("a dry weight tapped in is one entry of the log and of the history, dated by the device, and "
          "narrows the answer",
          "[shell][log]") {
    Bench bench;
    const double before = in_water_sigma(bench.app.document());
    bench.tap_all({"step.log", "log.view.1", "log.add"});
    bench.tap("log.kind.0");
    CHECK(bench.app.document().log.empty());
    type(bench, "log.new.mass", {"keypad.2", "keypad.3"});
    CHECK(bench.app.document().log.empty()); // typed, but not put down
    bench.reach("log.new.put");
    REQUIRE(bench.app.document().log.size() == 1);
    const Reading& r = bench.app.document().log.front();
    CHECK(r.kind == ReadingKind::dry_weight);
    CHECK_THAT(r.mass_kg.value_or(0.0), WithinRel(0.023, 1e-12));
    CHECK(r.date == "2026-03-14");
    CHECK(in_water_sigma(bench.app.document()) < before);
    bench.tap("undo");
    CHECK(bench.app.document().log.empty());
    bench.tap("redo");
    CHECK(bench.app.document().log.size() == 1);
}

TEST_CASE("a reading without its figure cannot be put down, and one turned away leaves nothing behind",
          "[shell][log]") {
    Bench bench;
    bench.tap_all({"step.log", "log.view.1", "log.add", "log.kind.1"});
    bench.reach("log.new.mass");
    bench.tap("keypad.cancel");
    CHECK_FALSE(bench.there("log.new.put")); // beside it, its fellow can be touched
    bench.reach("log.new.cancel");
    CHECK(bench.there("log.add"));
    CHECK(bench.app.document().log.empty());
}

TEST_CASE("an excluded reading is kept, says so, and no longer moves the answer", "[shell][log]") {
    Bench bench;
    document::Document d = demo();
    const double before = in_water_sigma(d);
    d.log.push_back(dry(Stage::carved, 0.0235));
    REQUIRE(bench.app.open_json(write_document(d)).empty());
    bench.rest();
    bench.tap_all({"step.log", "log.view.1", "log.0"});
    bench.reach("log.0.exclude");
    REQUIRE(bench.app.document().log.size() == 1);
    CHECK(bench.app.document().log.front().excluded);
    CHECK_THAT(in_water_sigma(bench.app.document()), WithinRel(before, 1e-9));
    bench.reach("log.0.exclude");
    CHECK_FALSE(bench.app.document().log.front().excluded);
    bench.reach("log.0.remove");
    CHECK(bench.app.document().log.empty());
}

TEST_CASE(
    "doing what the log says brings the believed lure to what was asked, and keeps what the readings taught",
    "[shell][log]") {
    document::Document d = demo();
    d.log.push_back(dry(Stage::leaded, 0.0541));
    const auto now = do_now(d);
    REQUIRE(now.ok());
    REQUIRE(now->met);
    REQUIRE_FALSE(now->changes.empty());
    const document::Document after = state::done_now(*now)(d);
    REQUIRE(after.log.size() == 1);
    CHECK_FALSE(after.log.front().excluded);
    CHECK(after.corrections.empty());
    const auto then = uncertainty(after);
    REQUIRE(then.ok());
    CHECK(then->stage == Stage::leaded);
    CHECK_THAT(then->in_water_kg.value, WithinAbs(now->after.in_water.kg, 1e-7));
    CHECK_THAT(then->in_water_kg.sigma, WithinRel(uncertainty(d)->in_water_kg.sigma, 0.05));
    const auto again = do_now(after);
    REQUIRE(again.ok());
    CHECK(again->nothing_to_do);
}

TEST_CASE("before the lead is in, doing what the log says leaves its readings as they are", "[shell][log]") {
    document::Document d = demo();
    d.log.push_back(dry(Stage::carved, 0.0235));
    const auto now = do_now(d);
    REQUIRE(now.ok());
    const document::Document after = state::done_now(*now)(d);
    CHECK_FALSE(after.log.front().excluded);
    CHECK(after.corrections.empty());
    const auto again = do_now(after);
    REQUIRE(again.ok());
    CHECK(again->nothing_to_do);
}

TEST_CASE("ten thousand lures are drawn a frame's worth at a time, the same ones as at once, and a change "
          "ends them",
          "[shell][log]") {
    state::Session session(demo());
    state::BenchAnswerCache bench;
    CHECK_FALSE(bench.drawing());
    bench.start_draws(session);
    int frames = 0;
    while (bench.continue_draws(session))
        ++frames;
    CHECK(frames > 10);
    REQUIRE(bench.draws().has_value());
    CHECK(bench.draws()->count == state::BenchAnswerCache::draws_wanted);
    const auto at_once = uncertainty_by_draws(session.document(), state::BenchAnswerCache::draws_wanted);
    REQUIRE(at_once.ok());
    CHECK(bench.draws()->mass_kg.mean == at_once->mass_kg.mean);
    CHECK(bench.draws()->chances.both == at_once->chances.both);

    bench.start_draws(session);
    REQUIRE(bench.continue_draws(session));
    session.apply({"warmer", [](document::Document d) {
                       d.water.temperature_c += 1.0;
                       return d;
                   }});
    CHECK_FALSE(bench.continue_draws(session));
    CHECK_FALSE(bench.draws().has_value());
}

TEST_CASE("drawing lures on the page comes to an end, and then the page rests", "[shell][log]") {
    Bench bench;
    bench.tap_all({"step.log", "log.view.2"});
    bench.reach("log.draw"); // ends in rest(), which fails for a page that never rests
    CHECK_FALSE(bench.app.wants_frames());
    CHECK(bench.app.document().log.empty());
}

TEST_CASE("the log can be kept as a table", "[shell][log]") {
    Bench bench;
    document::Document d = demo();
    d.log.push_back(dry(Stage::carved, 0.0235));
    REQUIRE(bench.app.open_json(write_document(d)).empty());
    bench.rest();
    bench.tap_all({"step.log", "log.view.1"});
    bench.reach("log.csv");
    CHECK(bench.host.saved_name.ends_with(".csv"));
    CHECK(bench.host.saved_text.find("dry_weight") != std::string::npos);
    CHECK(bench.host.saved_text.find("23.5") != std::string::npos);
}

TEST_CASE("while a finger drags, the chance stays that of the lure before; let go, it is that of the new one",
          "[shell][log]") {
    state::Session session(demo());
    state::BenchAnswerCache bench;
    const double before = bench.uncertainty(session)->in_water_kg.value;
    const auto heavier = [](document::Document d) {
        d.holes[0].fill->mass_kg = *d.holes[0].fill->mass_kg + 0.001;
        d.holes[0].depth_m += 0.003;
        return d;
    };
    REQUIRE(session.apply({"lead", heavier, false}));
    CHECK(bench.uncertainty(session)->in_water_kg.value == before);
    session.finish();
    CHECK(bench.uncertainty(session)->in_water_kg.value > before + 0.0005);
}

TEST_CASE("the next lure begins with what the readings taught, an empty log, and can be undone",
          "[shell][log]") {
    Bench bench;
    document::Document d = demo();
    d.log.push_back(dry(Stage::carved, 0.0260)); // heavier wood than the table's
    REQUIRE(bench.app.open_json(write_document(d)).empty());
    bench.rest();
    bench.tap_all({"step.log", "log.view.1"});
    bench.reach("log.next");
    CHECK(bench.app.document().log.empty());
    REQUIRE_FALSE(bench.app.document().corrections.empty());
    const auto before = evaluate(demo());
    const auto after = evaluate(bench.app.document());
    REQUIRE(after.ok());
    CHECK(after->answers.mass.kg > before->answers.mass.kg + 0.001);
    bench.tap("undo");
    CHECK(bench.app.document().log.size() == 1);
}

TEST_CASE("a note longer than there is room for is cut between two letters: what is kept, shared and saved "
          "opens again",
          "[shell][log]") {
    Bench bench;
    bench.tap_all({"step.log", "log.view.1", "log.add", "log.kind.0"});
    std::string note = "x";
    for (int i = 0; i < 250; ++i)
        note += "ä";
    bench.app.set_text("log.new.note", note);
    type(bench, "log.new.mass", {"keypad.2", "keypad.3"});
    bench.reach("log.new.put");
    REQUIRE(bench.app.document().log.size() == 1);
    CHECK(bench.app.document().log[0].note == note.substr(0, 399));
    CHECK(read_document(bench.app.document_json()).ok());
    CHECK(read_link(bench.app.link()).ok());
    CHECK(Bench().app.open_session(bench.app.session_json()).empty());
}

TEST_CASE("a figure that a reading cannot do without cannot be cleared, one it can do without can",
          "[shell][log]") {
    Bench bench;
    document::Document d = demo();
    d.log = {dry(Stage::carved, 0.023)};
    REQUIRE(bench.app.open_json(write_document(d)).empty());
    bench.rest();
    bench.tap_all({"step.log", "log.view.1", "log.0"});
    bench.reach("log.0.mass");
    CHECK(bench.there("keypad.ok"));
    CHECK_FALSE(bench.there("keypad.clear"));
    bench.tap("keypad.cancel");
    type(bench, "log.0.sigma", {"keypad.point", "keypad.5"});
    REQUIRE(bench.app.document().log[0].mass_sigma_kg);
    bench.reach("log.0.sigma");
    bench.tap("keypad.clear");
    CHECK_FALSE(bench.app.document().log[0].mass_sigma_kg);
}

TEST_CASE("a reading that the log refuses stays as it was typed", "[shell][log]") {
    Bench bench;
    bench.tap_all({"step.log", "log.view.1", "log.add", "log.kind.0"});
    type(bench, "log.new.mass", {"keypad.0"}); // a scale that reads nothing weighs nothing
    bench.reach("log.new.put");
    CHECK(bench.app.document().log.empty());
    CHECK_FALSE(bench.app.last_problem().empty());
    type(bench, "log.new.mass", {"keypad.2", "keypad.3"});
    bench.reach("log.new.put");
    CHECK(bench.app.document().log.size() == 1);
}

TEST_CASE("a reading begun is of the lure it was begun on, and of no other", "[shell][log]") {
    const auto other = read_document(demo_text("reedline-120.json"));
    REQUIRE(other.ok());
    state::Session kept(*other);
    kept.view.step = state::Step::log;
    kept.view.log_view = state::LogView::readings;
    const std::vector<std::function<std::string(App&)>> ways{
        [&](App& app) { return app.open_session(write_session(kept)); },
        [&](App& app) { return app.open_json(write_document(*other)); },
        [&](App& app) { return app.open_link(write_link(*other)); }};
    for (const auto& open : ways) {
        Bench bench;
        bench.tap_all({"step.log", "log.view.1", "log.add", "log.kind.0"});
        type(bench, "log.new.mass", {"keypad.2", "keypad.3"});
        bench.app.set_text("log.new.note", "dry");
        REQUIRE(open(bench.app).empty());
        bench.rest();
        CHECK(bench.there("log.add"));
        CHECK_FALSE(bench.there("log.new.mass"));
        bench.tap_all({"log.add", "log.kind.0"});
        type(bench, "log.new.mass", {"keypad.9"});
        bench.reach("log.new.put");
        REQUIRE(bench.app.document().log.size() == 1);
        CHECK(bench.app.document().log[0].note.empty());
    }
}
