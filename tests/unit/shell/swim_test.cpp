// How the lure swims, on the page: worked out in slices, only while it is shown, and compared over a change.

#include "drawing/swim_text.hpp"
#include "state/edits.hpp"
#include "state/motion.hpp"
#include "state/session_json.hpp"
#include "state/swim.hpp"
#include "support/presets.hpp"
#include "unit/shell/bench_of_tests.hpp"
#include "widgets/band_bar.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>

using namespace evenfall;
using namespace evenfall::shell;
using namespace evenfall::shell::bench_of_tests;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using state::SwimAnswerCache;

namespace {

/// A demo lure with joints that swing no wider than what was tried.
document::Document narrow_lure() {
    document::Document d = support::preset_named("millrace-170");
    for (auto& joint : d.joints) {
        joint.gap_m = 1.5e-3;
        joint.relief_fore_rad = units::rad_from_deg(6.0);
        joint.relief_aft_rad = units::rad_from_deg(8.0);
    }
    return d;
}

state::Session narrow_session() {
    return state::Session(narrow_lure());
}

/// Frames until it is worked out.
int work_out(SwimAnswerCache& swim, const state::Session& session) {
    int frames = 1;
    while (swim.work(session) && frames < 20'000)
        ++frames;
    return frames;
}

void change(state::Session& session, const std::function<void(document::Document&)>& edit,
            bool finished = true) {
    REQUIRE(session.apply({"change", state::on_document(edit), finished}));
}

void open_joints(document::Document& d, double more_rad) {
    for (auto& joint : d.joints) {
        joint.relief_fore_rad += 0.5 * more_rad;
        joint.relief_aft_rad += 0.5 * more_rad;
    }
}

swim::Wave two_piece_wave() {
    swim::Wave wave;
    wave.x_m = {0.01, 0.06};
    wave.beats_per_m = 2.0;
    for (const double heading : {0.1, 0.3, -0.1, -0.3})
        wave.poses.push_back({0.02 * heading, {heading, -2.0 * heading}});
    return wave;
}

} // namespace

TEST_CASE("the swim that is worked out in slices is that of the core, and is worked out once",
          "[shell][swim]") {
    const state::Session session = narrow_session();
    SwimAnswerCache swim;
    CHECK(swim.answer() == nullptr);
    CHECK(work_out(swim, session) > 3);
    REQUIRE(swim.refusal().empty());
    REQUIRE(swim.answer() != nullptr);
    const auto chain = swim::chain_of(session.document(), *session.evaluation());
    REQUIRE(chain.ok());
    const swim::SwimAnswer whole = swim::swim(*chain);
    const swim::SwimAnswer& sliced = *swim.answer();
    CHECK(sliced.way == whole.way);
    CHECK(sliced.swims == whole.swims);
    CHECK(sliced.of == swim::all_draws);
    REQUIRE(sliced.draws.size() == whole.draws.size());
    for (std::size_t i = 0; i < whole.draws.size(); ++i) {
        CHECK(sliced.draws[i].way == whole.draws[i].way);
        CHECK(sliced.draws[i].beats_per_m == whole.draws[i].beats_per_m);
    }
    CHECK_FALSE(swim.work(session));
}

TEST_CASE("a change is told once both lures are worked out, and never for a lure that was not",
          "[shell][swim]") {
    state::Session session = narrow_session();
    SwimAnswerCache swim;
    CHECK_FALSE(swim.can_tell_changes(session));
    work_out(swim, session);
    CHECK(swim.can_tell_changes(session));
    CHECK(swim.change() == nullptr); // nothing has changed yet
    const swim::Draws before = swim.answer()->draws;

    change(session, [](document::Document& d) { open_joints(d, 0.1); });
    CHECK(swim.can_tell_changes(session));
    CHECK(swim.change() == nullptr);
    CHECK(swim.answer() == nullptr);
    work_out(swim, session);
    REQUIRE(swim.change() != nullptr);
    const swim::Change expected = swim::compare(before, swim.answer()->draws);
    CHECK(swim.change()->beats == expected.beats);
    CHECK(swim.change()->swing == expected.swing);
    CHECK(swim.change()->beats_ratio == expected.beats_ratio);
    CHECK(swim.change()->beats == swim::Told::more); // joints that open wider beat faster

    swim.forget();
    CHECK_FALSE(swim.can_tell_changes(session));
}

TEST_CASE("a name, a note and the log have no bearing on the swim: nothing is worked out anew",
          "[shell][swim]") {
    state::Session session = narrow_session();
    SwimAnswerCache swim;
    work_out(swim, session);
    const swim::SwimAnswer* known = swim.answer();
    change(session, [](document::Document& d) {
        d.name = "Another";
        d.note = "of cedar next time";
        d.log.clear();
    });
    CHECK_FALSE(swim.work(session));
    CHECK(swim.answer() == known);
    CHECK(swim.change() == nullptr);
}

TEST_CASE("during a drag the swim rests and stays that of the lure before it", "[shell][swim]") {
    state::Session session = narrow_session();
    SwimAnswerCache swim;
    work_out(swim, session);
    const swim::SwimAnswer* known = swim.answer();
    change(
        session, [](document::Document& d) { d.joints.front().at_m += 0.002; }, false);
    CHECK_FALSE(swim.work(session));
    CHECK(swim.answer() == known);
    session.finish();
    CHECK(swim.work(session));
    CHECK(swim.answer() == nullptr);
}

TEST_CASE("a lure outside what was tried has a reason instead of an answer", "[shell][swim]") {
    const state::Session session(state::new_lure()); // in one piece
    SwimAnswerCache swim;
    CHECK_FALSE(swim.work(session));
    CHECK(swim.answer() == nullptr);
    REQUIRE_FALSE(swim.refusal().empty());
    CHECK_FALSE(swim.refusal().front().sentence.empty());
}

TEST_CASE("the drawn wave comes round after a beat, and its pieces hang together at every moment",
          "[shell][swim]") {
    const swim::Wave wave = two_piece_wave();
    for (int i = 0; i <= 40; ++i) {
        const double beat = i / 20.0 - 0.5;
        const auto stands = state::segments_at(wave, beat);
        REQUIRE(stands.size() == 2);
        const joints::Pin fore = stands[0].of(wave.x_m[1], 0.0);
        const joints::Pin aft = stands[1].of(wave.x_m[1], 0.0);
        CHECK_THAT(fore.x_m, WithinAbs(aft.x_m, 1e-15));
        CHECK_THAT(fore.y_m, WithinAbs(aft.y_m, 1e-15));
        const auto again = state::segments_at(wave, beat + 1.0);
        CHECK_THAT(again[1].turned_rad, WithinAbs(stands[1].turned_rad, 1e-12));
    }
    // At the times of the poses it is the poses, between them straight on.
    CHECK_THAT(state::segments_at(wave, 0.25)[0].turned_rad, WithinAbs(0.3, 1e-12));
    CHECK_THAT(state::segments_at(wave, 0.125)[0].turned_rad, WithinAbs(0.2, 1e-12));
    CHECK_THAT(state::segments_at(wave, 0.875)[0].turned_rad, WithinAbs(-0.1, 1e-12));
    // The line tie is where the pose says, and keeps its place along the way.
    const joints::Pin tie = state::segments_at(wave, 0.25)[0].of(0.01, 0.0);
    CHECK_THAT(tie.x_m, WithinAbs(0.01, 1e-15));
    CHECK_THAT(tie.y_m, WithinAbs(0.006, 1e-15));
}

TEST_CASE("a beat goes round in its own time, rests when paused and does not jump after a gap",
          "[shell][swim]") {
    state::BeatClock clock;
    clock.advance(1.0, 2.0);
    CHECK(clock.at() == 0.0);
    clock.start(10.0);
    for (int i = 1; i <= 15; ++i)
        clock.advance(10.0 + 0.05 * i, 0.6);
    CHECK_THAT(clock.at(), WithinAbs(0.45, 1e-9));
    for (int i = 16; i <= 40; ++i)
        clock.advance(10.0 + 0.05 * i, 0.6);
    CHECK_THAT(clock.at(), WithinAbs(0.2, 1e-9));
    clock.pause();
    clock.advance(20.0, 0.6);
    CHECK_THAT(clock.at(), WithinAbs(0.2, 1e-9));
    clock.start(30.0);
    clock.advance(50.0, 0.6); // the page was put away
    CHECK_THAT(clock.at(), WithinAbs(0.35, 1e-9));
}

TEST_CASE("a retrieve is told by the second, by the hour or by the handle, in the units that are set",
          "[shell][swim]") {
    state::Retrieve retrieve;
    const auto told = [&retrieve](const units::UnitSet& set) {
        const widgets::Units in(set, retrieve.by == state::RetrieveBy::hour);
        return drawing::retrieve_text(retrieve, 0.5, in);
    };
    CHECK(told(units::metric) == "0.50\u00a0m/s");
    CHECK(told(units::inches) == "1.6\u00a0ft/s");
    retrieve.by = state::RetrieveBy::hour;
    CHECK(told(units::metric) == "1.8\u00a0km/h");
    CHECK(told(units::inches) == "1.1\u00a0mph");
    retrieve.by = state::RetrieveBy::turns;
    retrieve.line_per_turn_m = 0.8;
    CHECK(told(units::metric) == "0.63 turns a second");
}

TEST_CASE(
    "the reel and the Swim view are kept with the settings and the work; odd values cost only themselves",
    "[shell][swim]") {
    state::Session session = narrow_session();
    session.view.water_view = state::WaterView::swim;
    session.settings.retrieve = {state::RetrieveBy::turns, {0.21, 0.47, 1.13}, 0.66};
    state::Session other(support::preset_named("reedline-120"));
    REQUIRE(state::restore_session(other, state::write_session(session)).empty());
    CHECK(other.view.water_view == state::WaterView::swim);
    CHECK(other.settings.retrieve == session.settings.retrieve);

    state::Settings settings;
    state::take_settings({{"retrieve", {{"by", "wind"}, {"m_s", {0.4, "x", 99.0}}, {"line_per_turn_m", -1}}}},
                         settings);
    CHECK(settings.retrieve.by == state::RetrieveBy::second);
    CHECK(settings.retrieve.speed_m_s == std::array<double, 3>{0.4, 0.5, state::most_retrieve_m_s});
    CHECK(settings.retrieve.line_per_turn_m == state::least_line_per_turn_m);
    state::take_settings({{"retrieve", 3}}, settings);
    CHECK(settings.retrieve.speed_m_s[0] == 0.4);
}

TEST_CASE("the scale of a band ends at a round figure beyond it", "[shell][swim]") {
    CHECK(widgets::band_scale_end(1.8) == 2.0);
    CHECK(widgets::band_scale_end(1.95) == 3.0);
    CHECK_THAT(widgets::band_scale_end(0.55), WithinRel(0.6, 1e-12));
    CHECK_THAT(widgets::band_scale_end(9.7), WithinRel(20.0, 1e-12));
    for (double high = 0.01; high < 50.0; high *= 1.07) {
        const double end = widgets::band_scale_end(high);
        CHECK(high <= end);
        CHECK(high >= 0.4 * end);
    }
    CHECK(widgets::band_scale_end(0.0) == 1.0);
}

TEST_CASE("the swim is drawn only while it moves and worked out only while it is looked at",
          "[shell][swim]") {
    Bench bench;
    REQUIRE(bench.app.open_json(write_document(narrow_lure())).empty());
    bench.tap("step.water");
    bench.tap("water.view.3"); // tap() waits until nothing is left to be worked out
    REQUIRE(bench.there("swim.play"));
    CHECK_FALSE(bench.app.wants_frames());
    float x = 0.0f;
    float y = 0.0f;
    bool visible = false;
    REQUIRE(bench.place_of("swim.play", x, y, visible));
    const auto tap_play = [&] {
        bench.press(x, y);
        ImGui::GetIO().AddMouseButtonEvent(0, false);
        ImGui::GetIO().AddMousePosEvent(-FLT_MAX, -FLT_MAX);
        bench.frames(6);
    };
    tap_play();
    bench.frames(200);
    CHECK(bench.app.wants_frames()); // it goes on and on
    tap_play();
    CHECK_FALSE(bench.app.wants_frames());
    tap_play();
    CHECK(bench.app.wants_frames());
    bench.tap("water.view.1");
    CHECK_FALSE(bench.app.wants_frames());
    bench.tap("water.view.3");
    CHECK_FALSE(bench.app.wants_frames());
}

TEST_CASE("Joints and Hardware keep a place for what a change did once the swim is known, and no sooner",
          "[shell][swim]") {
    Bench bench;
    REQUIRE(bench.app.open_json(write_document(narrow_lure())).empty());
    const auto top = [&bench](const char* step, const char* row) {
        bench.tap(step);
        for (const Item& item : bench.items(row))
            return item.place.y;
        return -1.0f;
    };
    const float joints = top("step.joints", "joints.0");
    const float hangers = top("step.hardware", "hangers.0");
    bench.tap_all({"step.water", "water.view.3"});
    const float told = top("step.joints", "joints.0");
    CHECK(told > joints + 40.0f);
    CHECK(top("step.hardware", "hangers.0") > hangers + 40.0f);
    // A change: the rows stay where the finger is.
    bench.tap("step.joints");
    bench.reach("joints.0");
    bench.reach("joints.0.relief_fore");
    bench.tap_all({"keypad.8", "keypad.ok"});
    bench.tap("step.lead");
    CHECK(top("step.joints", "joints.0") == told);
    // Another lure: nothing is known of it.
    REQUIRE(bench.app.open_json(write_document(narrow_lure())).empty());
    CHECK(top("step.joints", "joints.0") == joints);
}

TEST_CASE("a retrieve is set for this device and not for the lure, and by the handle with the reel's line",
          "[shell][swim]") {
    Bench bench;
    REQUIRE(bench.app.open_json(write_document(narrow_lure())).empty());
    const std::string before = bench.app.document_json();
    bench.tap_all({"step.water", "water.view.3"});
    bench.reach("swim.speed");
    bench.tap_all({"keypad.0", "keypad.point", "keypad.8", "keypad.ok"});
    bench.reach("swim.by.2");
    bench.reach("swim.line");
    bench.tap_all({"keypad.0", "keypad.point", "keypad.8", "keypad.ok"});
    const auto kept = nlohmann::json::parse(bench.app.session_json()).at("settings").at("retrieve");
    CHECK(kept.at("by") == "turns");
    CHECK_THAT(kept.at("line_per_turn_m").get<double>(), WithinAbs(0.8, 1e-12));
    // The hand turns as before: eight sevenths of 0.8 m/s.
    CHECK_THAT(kept.at("m_s").at(1).get<double>(),
               WithinAbs(0.8 * 0.8 / 0.7, 0.5e-6)); // saved with six decimals
    CHECK(bench.app.document_json() == before);
}

TEST_CASE("a count of beats is put down with what was foretold of that lure, and keeps it when it changes",
          "[shell][swim][log]") {
    Bench bench;
    REQUIRE(bench.app.open_json(write_document(narrow_lure())).empty());
    bench.tap_all({"step.log", "log.view.1", "log.add"});
    bench.reach("log.kind.9");
    bench.reach("log.new.beats");
    bench.tap_all({"keypad.1", "keypad.2", "keypad.ok"});
    bench.reach("log.new.travel");
    bench.tap_all({"keypad.3", "keypad.ok"});
    bench.reach("log.new.put");
    REQUIRE(bench.app.document().log.size() == 1);
    const document::Reading put = bench.app.document().log.front();
    CHECK(put.kind == document::ReadingKind::beats);
    CHECK(put.stage == Stage::rigged);
    CHECK(put.beats == 12.0);
    CHECK_THAT(put.travel_m.value_or(0.0), WithinAbs(3.0, 1e-12));
    const state::Session session = narrow_session();
    SwimAnswerCache swim;
    CHECK_FALSE(swim.foretold_per_m());
    work_out(swim, session);
    REQUIRE(swim.foretold_per_m());
    REQUIRE(put.foretold_per_m);
    CHECK_THAT(*put.foretold_per_m, WithinRel(*swim.foretold_per_m(), 1e-9));

    document::Document d = bench.app.document();
    open_joints(d, 0.1);
    REQUIRE(bench.app.open_json(write_document(d)).empty());
    bench.tap_all({"step.log", "log.view.1", "log.0"});
    bench.reach("log.0.beats");
    bench.tap_all({"keypad.9", "keypad.ok"});
    CHECK(bench.app.document().log.front().beats == 9.0);
    CHECK_THAT(bench.app.document().log.front().foretold_per_m.value_or(0.0),
               WithinRel(*put.foretold_per_m, 1e-6)); // as the document writes it
}

TEST_CASE("beats counted over seconds are at the usual retrieve until another speed is typed",
          "[shell][swim][log]") {
    Bench bench;
    REQUIRE(bench.app.open_json(write_document(state::new_lure())).empty()); // in one piece
    bench.tap_all({"step.log", "log.view.1", "log.add"});
    bench.reach("log.kind.9");
    bench.reach("log.new.beats");
    bench.tap_all({"keypad.1", "keypad.5", "keypad.ok"});
    bench.reach("log.new.time");
    bench.tap_all({"keypad.8", "keypad.ok"});
    bench.reach("log.new.put");
    REQUIRE(bench.app.document().log.size() == 1);
    const document::Reading& put = bench.app.document().log.front();
    CHECK(put.time_s == 8.0);
    CHECK(put.speed_m_s == state::usual_retrieves_m_s[1]);
    CHECK_FALSE(put.travel_m);
    CHECK_FALSE(put.foretold_per_m); // nothing is foretold of it: it is kept all the same
}

TEST_CASE("a count in the log narrows the beats that are told, and nothing is worked out anew for it",
          "[shell][swim][log]") {
    state::Session session = narrow_session();
    SwimAnswerCache swim;
    CHECK_FALSE(swim.known_beats(session));
    work_out(swim, session);
    const auto before = swim.known_beats(session);
    REQUIRE(before);
    CHECK_FALSE(before->is_learnt);
    CHECK(before->per_m.mid == swim.answer()->beats_per_m->mid);
    change(session, [&](document::Document& d) {
        document::Reading count;
        count.kind = document::ReadingKind::beats;
        count.stage = Stage::rigged;
        count.beats = 10.0 * 1.2 * before->per_m.mid;
        count.travel_m = 10.0;
        count.foretold_per_m = swim.foretold_per_m();
        d.log.push_back(count);
    });
    CHECK_FALSE(swim.work(session));
    const auto after = swim.known_beats(session);
    REQUIRE(after);
    CHECK(after->counts == 1);
    CHECK(after->per_m.mid > before->per_m.mid);
    CHECK(after->per_m.mid < 1.2 * before->per_m.mid);
    CHECK(after->per_m.high / after->per_m.low < before->per_m.high / before->per_m.low);
    CHECK(swim.foretold_per_m() == before->per_m.mid); // what was worked out stays what was foretold
}
