// The sections of a long panel, without a screen.

#include "unit/shell/bench_of_tests.hpp"

using namespace evenfall;
using namespace evenfall::shell;
using namespace evenfall::shell::bench_of_tests;

namespace {

float top_of(const Bench& bench, const std::string& id) {
    for (const Item& item : bench.items()) {
        if (item.id == id) return item.place.y;
    }
    return -1.0f;
}

} // namespace

TEST_CASE("a step's first section is open, the others open under the finger and stay open",
          "[shell][sections]") {
    Bench bench;
    bench.tap("step.shape");
    CHECK(bench.drawn("shape.length"));
    CHECK_FALSE(bench.drawn("shape.wood"));
    bench.reach("section.shape.wood"); // scrolled into sight, and opened
    CHECK(bench.drawn("shape.wood"));
    CHECK(bench.drawn("shape.length"));
    const float at = top_of(bench, "section.shape.wood");
    bench.tap("section.shape.wood");
    CHECK_FALSE(bench.drawn("shape.wood"));
    bench.tap("section.shape.wood");
    CHECK(bench.drawn("shape.wood"));
    CHECK(top_of(bench, "section.shape.wood") == at);
    bench.tap("step.lead");
    bench.tap("step.shape");
    CHECK(bench.drawn("shape.wood"));
    bench.reach("section.shape.wood");
    CHECK_FALSE(bench.drawn("shape.wood"));
}

TEST_CASE("a closed section opens for what is chosen on the drawing", "[shell][sections]") {
    Bench bench;
    bench.tap("step.shape");
    CHECK_FALSE(bench.drawn("shape.point.2"));
    const std::vector<Item> points = bench.items("draw.back.");
    REQUIRE(points.size() > 2);
    bench.tap(points[2].id);
    CHECK(bench.there("shape.point.2"));
}

TEST_CASE("with all sections closed the headings of Shape fit on one screen of the panel",
          "[shell][sections]") {
    Bench bench;
    bench.tap("step.shape");
    bench.reach("section.shape.size");
    const std::vector<Item> headings = bench.items("section.");
    REQUIRE(headings.size() >= 8);
    CHECK(headings.back().place.bottom() - headings.front().place.y < 576.0f);
    for (const Item& heading : headings)
        CHECK(heading.closed);
}

TEST_CASE("a finger that stops a glide taps nothing, the next one does", "[shell][sections]") {
    Bench bench;
    bench.tap("step.shape");
    bench.reach("section.shape.wood");
    bench.tap("step.lead");
    bench.tap("step.shape"); // at its top again
    float x = 0.0f;
    float y = 0.0f;
    bool visible = false;
    REQUIRE(bench.place_of("section.shape.size", x, y, visible));
    y += 300.0f;
    bench.press(x, y);
    for (int i = 1; i <= 8; ++i) {
        ImGui::GetIO().AddMousePosEvent(x, y - 25.0f * static_cast<float>(i));
        bench.frames(1);
    }
    ImGui::GetIO().AddMouseButtonEvent(0, false);
    bench.frames(4);
    REQUIRE(bench.app.wants_frames());
    const std::string before = bench.app.session_json();
    const float moving = top_of(bench, "section.shape.curves");
    bench.press(x, y);
    const float caught = top_of(bench, "section.shape.curves");
    CHECK(caught < moving);
    bench.release();
    CHECK(top_of(bench, "section.shape.curves") == caught);
    CHECK(bench.app.session_json() == before);
}

TEST_CASE("where the device asks for less motion nothing glides", "[shell][sections]") {
    Bench bench;
    bench.app.set_calm(true);
    bench.tap("step.shape");
    bench.reach("section.shape.wood");
    bench.tap("step.lead");
    bench.tap("step.shape");
    float x = 0.0f;
    float y = 0.0f;
    bool visible = false;
    REQUIRE(bench.place_of("section.shape.size", x, y, visible));
    y += 300.0f;
    bench.press(x, y);
    for (int i = 1; i <= 8; ++i) {
        ImGui::GetIO().AddMousePosEvent(x, y - 25.0f * static_cast<float>(i));
        bench.frames(1);
    }
    bench.frames(1); // the list follows the finger a frame later
    const float held = top_of(bench, "section.shape.curves");
    bench.release();
    CHECK(top_of(bench, "section.shape.curves") == held);
}
