#include "platform/gesture.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using evenfall::shell::platform::Gesture;
using evenfall::shell::platform::PointerEvent;
using Kind = PointerEvent::Kind;
using Catch::Matchers::WithinAbs;

TEST_CASE("one finger is the pointer and leaves after its release", "[shell][gesture]") {
    Gesture gesture;
    gesture.finger_down(7, 100.0f, 50.0f);
    gesture.finger_move(7, 104.0f, 50.0f);
    gesture.finger_up(7, 104.0f, 51.0f);
    const std::vector<PointerEvent> seen = gesture.take_events();
    REQUIRE(seen == std::vector<PointerEvent>{{Kind::move, 100.0f, 50.0f},
                                              {Kind::down, 100.0f, 50.0f},
                                              {Kind::move, 104.0f, 50.0f},
                                              {Kind::move, 104.0f, 51.0f},
                                              {Kind::up, 104.0f, 51.0f},
                                              {Kind::leave, 0.0f, 0.0f}});
    REQUIRE(gesture.take_events().empty());
    REQUIRE(gesture.fingers() == 0);
}

TEST_CASE("a second finger takes the pointer away before it is let go, so that a pinch taps nothing",
          "[shell][gesture]") {
    Gesture gesture;
    gesture.finger_down(1, 100.0f, 100.0f);
    (void)gesture.take_events();
    gesture.finger_down(2, 200.0f, 100.0f);
    const auto seen = gesture.take_events();
    REQUIRE(seen.size() == 2);
    REQUIRE(seen[0].kind == Kind::leave);
    REQUIRE(seen[1].kind == Kind::up);
    gesture.finger_move(1, 90.0f, 100.0f);
    gesture.finger_up(2, 200.0f, 100.0f);
    gesture.finger_move(1, 10.0f, 10.0f);
    gesture.finger_up(1, 10.0f, 10.0f);
    REQUIRE(gesture.take_events().empty());
}

TEST_CASE("two fingers zoom by the ratio of their distances and move by their middle", "[shell][gesture]") {
    Gesture gesture;
    gesture.finger_down(1, 100.0f, 100.0f);
    gesture.finger_down(2, 200.0f, 100.0f);
    gesture.finger_move(1, 50.0f, 120.0f);
    gesture.finger_move(2, 250.0f, 120.0f);
    const auto pinch = gesture.take_pinch();
    REQUIRE(pinch);
    // Distances are 100 and 200 px, the middle goes from (150, 100) to (150, 120); float arithmetic of a few
    // steps.
    CHECK_THAT(pinch->zoom, WithinAbs(2.0, 1e-5));
    CHECK_THAT(pinch->dx, WithinAbs(0.0, 1e-4));
    CHECK_THAT(pinch->dy, WithinAbs(20.0, 1e-4));
    CHECK_THAT(pinch->x, WithinAbs(150.0, 1e-4));
    CHECK_THAT(pinch->y, WithinAbs(120.0, 1e-4));
    REQUIRE_FALSE(gesture.take_pinch());
}

TEST_CASE("a finger left over from a pinch does not become a pointer; the next touch does",
          "[shell][gesture]") {
    Gesture gesture;
    gesture.finger_down(1, 10.0f, 10.0f);
    gesture.finger_down(2, 60.0f, 10.0f);
    gesture.finger_up(1, 10.0f, 10.0f);
    gesture.finger_down(3, 80.0f, 80.0f); // while finger 2 is still down
    gesture.finger_move(3, 90.0f, 80.0f);
    (void)gesture.take_events();
    gesture.finger_up(3, 90.0f, 80.0f);
    gesture.finger_up(2, 60.0f, 10.0f);
    REQUIRE(gesture.take_events().empty());
    gesture.finger_down(4, 30.0f, 30.0f);
    REQUIRE(gesture.take_events().size() == 2);
}

TEST_CASE("fingers on one spot give a finite zoom", "[shell][gesture]") {
    Gesture gesture;
    gesture.finger_down(1, 50.0f, 50.0f);
    gesture.finger_down(2, 50.0f, 50.0f);
    gesture.finger_move(2, 51.0f, 50.0f);
    const auto pinch = gesture.take_pinch();
    REQUIRE(pinch);
    REQUIRE(pinch->zoom == 1.0f);
}

TEST_CASE("a cancelled touch taps nothing and leaves no finger behind", "[shell][gesture]") {
    Gesture gesture;
    gesture.finger_down(1, 50.0f, 50.0f);
    (void)gesture.take_events();
    gesture.cancel();
    const auto seen = gesture.take_events();
    REQUIRE(seen.size() == 2);
    REQUIRE(seen[0].kind == Kind::leave);
    REQUIRE(seen[1].kind == Kind::up);
    REQUIRE(gesture.fingers() == 0);
    gesture.finger_up(1, 50.0f, 50.0f);
    REQUIRE(gesture.take_events().empty());
}

TEST_CASE("a touch whose release was lost is ended by its successor", "[shell][gesture]") {
    Gesture gesture;
    gesture.finger_down(1, 50.0f, 50.0f);
    gesture.finger_down(1, 70.0f, 50.0f);
    const auto seen = gesture.take_events();
    REQUIRE(seen.back().kind == Kind::down);
    REQUIRE(gesture.fingers() == 1);
    REQUIRE_FALSE(gesture.take_pinch());
}
