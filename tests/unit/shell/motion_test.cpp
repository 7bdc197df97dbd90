// What is worked out for the Water step, when, and the time of its drawing.

#include "state/edits.hpp"
#include "state/motion.hpp"
#include "state/session_json.hpp"
#include "support/presets.hpp"
#include "widgets/plot.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <iterator>

using namespace evenfall;
using namespace evenfall::shell;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using state::PlayClock;

namespace {

state::Session session_of(const char* name) {
    return state::Session(support::preset_named(name));
}

void warm(state::Session& session, double celsius, bool finished = true) {
    REQUIRE(session.apply(
        {"warmth", state::on_document([celsius](document::Document& d) { d.water.temperature_c = celsius; }),
         finished}));
}

} // namespace

TEST_CASE("an answer is asked for once, however often it is shown", "[shell][motion]") {
    const state::Session session = session_of("millrace-170");
    state::WaterAnswerCache answers;
    CHECK(answers.asked() == 0);
    const auto* first = answers.falls(session);
    REQUIRE(first != nullptr);
    CHECK(answers.asked() == 1);
    for (int i = 0; i < 5; ++i)
        CHECK(answers.falls(session) == first);
    CHECK(answers.asked() == 1);
    // Hinges need the falls that are known already.
    REQUIRE(answers.hinges(session) != nullptr);
    CHECK(answers.asked() == 2);
    REQUIRE(answers.track(session) != nullptr);
    REQUIRE(answers.sweep(session) != nullptr);
    REQUIRE(answers.afloat(session) != nullptr);
    CHECK(answers.asked() == 5);
    CHECK(answers.track(session) == answers.track(session));
    CHECK(answers.asked() == 5);
}

TEST_CASE("a changed lure is asked about anew: edited, previewed, taken back, opened, restored",
          "[shell][motion]") {
    state::Session session = session_of("millrace-170");
    state::WaterAnswerCache answers;
    const auto speed = [&] {
        const auto* falls = answers.falls(session);
        REQUIRE(falls != nullptr);
        REQUIRE(falls->main.has_value());
        return falls->falls[*falls->main].vertical_m_s;
    };
    const double before = speed();
    warm(session, 35.0);
    const double warmer = speed();
    CHECK(warmer > before); // warm water is lighter and thinner
    warm(session, 2.0, false);
    CHECK(speed() < before);
    session.abandon();
    CHECK(speed() == warmer);
    session.undo();
    CHECK(speed() == before);
    const std::string kept = state::write_session(session);
    warm(session, 35.0);
    CHECK(speed() == warmer);
    REQUIRE(state::restore_session(session, kept).empty());
    CHECK(speed() == before);
}

TEST_CASE("a refused change asks nothing anew", "[shell][motion]") {
    state::Session session = session_of("millrace-170");
    const unsigned before = session.shown_revision();
    CHECK_FALSE(session.apply(
        {"warmth", state::on_document([](document::Document& d) { d.water.temperature_c = 900.0; }), false}));
    CHECK(session.shown_revision() == before);
}

TEST_CASE("another depth asks for the track alone", "[shell][motion]") {
    state::Session session = session_of("millrace-170");
    state::WaterAnswerCache answers;
    REQUIRE(answers.falls(session) != nullptr);
    REQUIRE(answers.track(session) != nullptr);
    const int asked = answers.asked();
    const double two_m = state::duration_s(*answers.track(session));
    session.view.fall_depth_m = 1.0;
    const auto* track = answers.track(session);
    REQUIRE(track != nullptr);
    REQUIRE(track->reached_s.has_value());
    CHECK(state::duration_s(*track) < two_m);
    REQUIRE(answers.falls(session) != nullptr);
    CHECK(answers.asked() == asked + 1);
}

TEST_CASE("the drawn fall begins at rest, ends where the core says, and passes through the core's points",
          "[shell][motion]") {
    const state::Session session = session_of("millrace-170");
    state::WaterAnswerCache answers;
    const auto* track = answers.track(session);
    REQUIRE(track != nullptr);
    REQUIRE(track->points.size() > 10);
    const state::Pose start = state::pose_at(*track, -1.0);
    CHECK(start.depth_m == 0.0);
    CHECK(start.down_m_s == 0.0);
    const state::Pose end = state::pose_at(*track, 1e9);
    CHECK_THAT(end.depth_m, WithinAbs(2.0, 1e-6));
    CHECK(end.down_m_s == track->vertical_m_s);
    for (std::size_t i = 0; i < track->points.size(); i += 7) {
        const auto& p = track->points[i];
        const state::Pose pose = state::pose_at(*track, p.time_s);
        CHECK_THAT(pose.depth_m, WithinAbs(p.depth_m, 1e-12));
        CHECK_THAT(pose.pitch_rad, WithinAbs(p.state.pitch_rad, 1e-12));
    }
    // Between two points it is between them.
    const auto& a = track->points[4];
    const auto& b = track->points[5];
    CHECK_THAT(state::pose_at(*track, 0.5 * (a.time_s + b.time_s)).depth_m,
               WithinRel(0.5 * (a.depth_m + b.depth_m), 1e-9));
    CHECK(state::pose_at(fall::Track{}, 1.0).depth_m == 0.0);
}

TEST_CASE("the clock of the drawing runs in true time and stops at the end", "[shell][motion]") {
    PlayClock clock;
    CHECK_FALSE(clock.playing());
    CHECK(clock.at_s(3.0) == 3.0); // at first the whole way is seen
    clock.start(100.0, 3.0);
    CHECK(clock.playing());
    CHECK(clock.at_s(3.0) == 0.0);
    for (int i = 1; i <= 60; ++i)
        clock.advance(100.0 + i / 60.0, 3.0);
    CHECK_THAT(clock.at_s(3.0), WithinAbs(1.0, 1e-9));
    for (int i = 61; i <= 240; ++i)
        clock.advance(100.0 + i / 60.0, 3.0);
    CHECK_FALSE(clock.playing());
    CHECK(clock.at_s(3.0) == 3.0);
}

TEST_CASE("a pause holds the drawing, a start goes on from there, and a slide stops it", "[shell][motion]") {
    PlayClock clock;
    clock.start(0.0, 3.0);
    clock.advance(0.2, 3.0);
    clock.pause();
    clock.advance(5.0, 3.0);
    CHECK_THAT(clock.at_s(3.0), WithinAbs(0.2, 1e-12));
    clock.start(9.0, 3.0);
    clock.advance(9.1, 3.0);
    CHECK_THAT(clock.at_s(3.0), WithinAbs(0.3, 1e-12));
    clock.slide_to(2.5);
    CHECK_FALSE(clock.playing());
    CHECK(clock.at_s(3.0) == 2.5);
    CHECK(clock.at_s(2.0) == 2.0); // the lure has changed and is down sooner
    clock.slide_to(0.0);
    CHECK(clock.at_s(3.0) == 0.0);
}

TEST_CASE("a page that was put away does not jump when it comes back", "[shell][motion]") {
    PlayClock clock;
    clock.start(0.0, 60.0);
    clock.advance(30.0, 60.0);
    CHECK(clock.at_s(60.0) == PlayClock::longest_step_s);
}

TEST_CASE("a plot is read off straight between its points and nowhere beyond them", "[shell][motion]") {
    const widgets::PlotLine line{{{0.0, 1.0}, {10.0, 3.0}, {20.0, -1.0}}, false};
    CHECK(widgets::read_off(line, 5.0) == 2.0);
    CHECK(widgets::read_off(line, 15.0) == 1.0);
    CHECK(widgets::read_off(line, 20.0) == -1.0);
    CHECK_FALSE(widgets::read_off(line, 21.0).has_value());
    CHECK_FALSE(widgets::read_off({}, 1.0).has_value());
    CHECK_THAT(widgets::round_step(180.0, 4), WithinRel(50.0, 1e-12));
    CHECK_THAT(widgets::round_step(0.031, 4), WithinRel(0.01, 1e-12));
}

TEST_CASE("what the Water step shows is kept with the work", "[shell][motion]") {
    state::Session session = session_of("millrace-170");
    session.view.water_view = state::WaterView::season;
    session.view.fall_depth_m = 3.5;
    const std::string kept = state::write_session(session);
    state::Session other = session_of("reedline-120");
    REQUIRE(state::restore_session(other, kept).empty());
    CHECK(other.view.water_view == state::WaterView::season);
    CHECK_THAT(other.view.fall_depth_m, WithinRel(3.5, 1e-12));
}
