#include "widgets/glide.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using Catch::Matchers::WithinRel;
using evenfall::shell::widgets::Glide;

namespace {

/// A finger that goes `px_s` down the list for a fifth of a second, seen every `frame_s`, and then rests.
Glide flicked(float px_s, double frame_s, int frames_at_rest = 0) {
    Glide glide;
    double now_s = 10.0;
    glide.take(7, now_s);
    for (int i = 0; i < static_cast<int>(0.2 / frame_s); ++i) {
        now_s += frame_s;
        glide.drag(px_s * static_cast<float>(frame_s), now_s);
    }
    for (int i = 0; i < frames_at_rest; ++i) {
        now_s += frame_s;
        glide.drag(0.0f, now_s);
    }
    glide.release(1000.0f, now_s + frame_s);
    return glide;
}

} // namespace

TEST_CASE("a list glides on as fast as the finger went, at 60 and 120 frames a second and at 10",
          "[shell][glide]") {
    for (const double frame_s : {1.0 / 60.0, 1.0 / 120.0, 0.1}) {
        for (const float px_s : {600.0f, -1500.0f}) {
            CAPTURE(frame_s, px_s);
            const Glide glide = flicked(px_s, frame_s);
            CHECK(glide.area() == 7u);
            CHECK_FALSE(glide.dragging());
            CHECK_THAT(glide.speed(), WithinRel(px_s, 0.01f));
        }
    }
}

TEST_CASE("a finger that rests before it lets go, or hardly moves, starts no glide", "[shell][glide]") {
    CHECK(flicked(600.0f, 1.0 / 60.0, 8).area() == 0u);
    CHECK(flicked(600.0f, 0.1, 3).area() == 0u);
    CHECK(flicked(30.0f, 1.0 / 60.0).area() == 0u);
}

TEST_CASE("a glide slows down to rest, comes as far at any rate of frames, and asks for no frames after",
          "[shell][glide]") {
    float ways[2] = {};
    int k = 0;
    for (const float dt_s : {1.0f / 60.0f, 1.0f / 240.0f}) {
        Glide glide = flicked(800.0f, 1.0 / 60.0);
        float at_px = 1000.0f;
        float last_px_s = glide.speed();
        int frames = 0;
        while (glide.area() != 0 && frames < 2000) {
            const float next = glide.glide(dt_s, 5000.0f);
            CHECK(next >= at_px);
            CHECK(glide.speed() <= last_px_s);
            at_px = next;
            last_px_s = glide.speed();
            ++frames;
        }
        CHECK(frames < 2000);
        CHECK(glide.speed() == 0.0f);
        ways[k++] = at_px - 1000.0f;
    }
    CHECK(ways[0] > 200.0f);
    CHECK_THAT(ways[0], WithinRel(ways[1], 0.05f));
}

TEST_CASE("a glide ends at the end of the list", "[shell][glide]") {
    Glide down = flicked(3000.0f, 1.0 / 60.0);
    float at_px = 0.0f;
    for (int i = 0; i < 600 && down.area() != 0; ++i)
        at_px = down.glide(1.0f / 60.0f, 1100.0f);
    CHECK(at_px == 1100.0f);
    Glide up = flicked(-4000.0f, 1.0 / 60.0);
    for (int i = 0; i < 600 && up.area() != 0; ++i)
        at_px = up.glide(1.0f / 60.0f, 1100.0f);
    CHECK(at_px == 0.0f);
    CHECK(up.speed() == 0.0f);
}

TEST_CASE("a finger that comes down on a gliding list ends the glide", "[shell][glide]") {
    Glide glide = flicked(800.0f, 1.0 / 60.0);
    glide.take(7, 20.0);
    CHECK(glide.speed() == 0.0f);
    CHECK(glide.dragging());
}
