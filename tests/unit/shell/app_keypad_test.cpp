// Numbers set with the keypad of the application, drawn without a screen.

#include "unit/shell/bench_of_tests.hpp"

using namespace evenfall;
using namespace evenfall::shell;
using namespace evenfall::shell::bench_of_tests;

TEST_CASE("a number tapped in on the keypad becomes the document's, and undo takes it back", "[shell][app]") {
    Bench bench;
    const double before = bench.app.document().water.temperature_c;
    bench.tap("step.water");
    bench.tap("water.temperature");
    REQUIRE(bench.there("keypad.ok"));
    bench.tap_all({"keypad.8", "keypad.point", "keypad.5", "keypad.ok"});
    CHECK_FALSE(bench.there("keypad.ok"));
    CHECK(bench.app.document().water.temperature_c == 8.5);
    CHECK(bench.host.changes > 0);
    bench.tap("undo");
    CHECK(bench.app.document().water.temperature_c == before);
    bench.tap("redo");
    CHECK(bench.app.document().water.temperature_c == 8.5);
}

TEST_CASE("a number beyond its limits is refused in the keypad and changes nothing", "[shell][app]") {
    Bench bench;
    const double before = bench.app.document().water.temperature_c;
    bench.tap("step.water");
    bench.tap("water.temperature");
    bench.tap_all({"keypad.9", "keypad.9", "keypad.ok"});
    CHECK(bench.there("keypad.ok"));
    CHECK(bench.app.document().water.temperature_c == before);
    bench.tap("keypad.cancel");
    CHECK_FALSE(bench.there("keypad.ok"));
    CHECK(bench.app.document().water.temperature_c == before);
}

TEST_CASE("while a sheet is out nothing under it can be touched, and a tap beside it puts it away",
          "[shell][app]") {
    Bench bench;
    bench.tap("shelf.open");
    CHECK(bench.there("shelf.share"));
    CHECK_FALSE(bench.there("step.water"));
    bench.press(60.0f, 400.0f);
    bench.release();
    CHECK_FALSE(bench.there("shelf.share"));
    CHECK(bench.there("step.water"));
}

TEST_CASE("typed keys go into the keypad, Enter sets and Escape cancels", "[shell][app]") {
    Bench bench;
    bench.tap("step.water");
    bench.tap("water.temperature");
    ImGui::GetIO().AddInputCharactersUTF8("12,5");
    bench.frames(6);
    ImGui::GetIO().AddKeyEvent(ImGuiKey_Enter, true);
    bench.frames(2);
    ImGui::GetIO().AddKeyEvent(ImGuiKey_Enter, false);
    bench.rest();
    CHECK(bench.app.document().water.temperature_c == 12.5);
    bench.tap("water.temperature");
    ImGui::GetIO().AddInputCharactersUTF8("30");
    bench.frames(6);
    ImGui::GetIO().AddKeyEvent(ImGuiKey_Escape, true);
    bench.frames(2);
    ImGui::GetIO().AddKeyEvent(ImGuiKey_Escape, false);
    bench.rest();
    CHECK_FALSE(bench.there("keypad.ok"));
    CHECK(bench.app.document().water.temperature_c == 12.5);
}

TEST_CASE("on a phone lying down and on one that is low, every key of the keypad is large enough for a "
          "finger and none lies on another",
          "[shell][app]") {
    const float sizes[][2] = {
        {568.0f, 320.0f}, {592.0f, 288.0f}, {667.0f, 375.0f}, {932.0f, 430.0f}, {360.0f, 640.0f}};
    for (const auto& size : sizes) {
        Bench bench(size[0], size[1]);
        bench.tap("step.water");
        bench.reach("water.temperature");
        REQUIRE(bench.there("keypad.ok"));
        const std::vector<Item> keys = bench.items("keypad.");
        REQUIRE(keys.size() >= 15);
        CAPTURE(size[0], size[1]);
        for (std::size_t i = 0; i < keys.size(); ++i) {
            const widgets::Rect& a = keys[i].place;
            CAPTURE(a.x, a.y, a.w, a.h);
            CHECK(a.w >= 44.0f);
            CHECK(a.h >= 44.0f);
            CHECK(a.y >= 0.0f);
            CHECK(a.bottom() <= size[1] + 0.1f);
            for (std::size_t j = i + 1; j < keys.size(); ++j) {
                const widgets::Rect& b = keys[j].place;
                CHECK((a.right() <= b.x + 0.1f || b.right() <= a.x + 0.1f || a.bottom() <= b.y + 0.1f ||
                       b.bottom() <= a.y + 0.1f));
            }
        }
    }
}

TEST_CASE("a step is reached and a number set without a pointer", "[shell][app]") {
    Bench bench;
    const auto key = [&](ImGuiKey which) {
        ImGui::GetIO().AddKeyEvent(which, true);
        bench.frames(2);
        ImGui::GetIO().AddKeyEvent(which, false);
        bench.rest();
    };
    bench.tap("step.water");
    // Tab goes through everything that can be tapped, until the focus lies on the field; Enter opens its
    // keypad.
    const auto focused = [&](const char* id) {
        const ImGuiWindow* window = ImGui::GetCurrentContext()->NavWindow;
        float x = 0.0f;
        float y = 0.0f;
        bool visible = false;
        if (window == nullptr || !ImGui::GetIO().NavVisible || !bench.place_of(id, x, y, visible))
            return false;
        ImRect rect = window->NavRectRel[0];
        rect.Translate(window->Pos);
        return rect.Contains(ImVec2(x, y)) && rect.GetHeight() < 100.0f;
    };
    for (int i = 0; i < 40 && !focused("water.temperature"); ++i) {
        key(ImGuiKey_Tab);
        REQUIRE(ImGui::GetIO().MousePos.y < 0.0f); // no pointer anywhere
    }
    REQUIRE(focused("water.temperature"));
    key(ImGuiKey_Enter);
    REQUIRE(bench.there("keypad.ok"));
    key(ImGuiKey_Escape);
    CHECK_FALSE(bench.there("keypad.ok"));
}

TEST_CASE("a keypad whose field is gone sets nothing, closes and rests", "[shell][app]") {
    Bench bench;
    const std::string before = bench.app.document_json();
    bench.tap_all({"step.water", "water.temperature", "keypad.3"});
    REQUIRE(bench.app.go_to_step("shape"));
    bench.tap("keypad.ok");
    CHECK_FALSE(bench.there("keypad.ok"));
    CHECK(bench.app.document_json() == before);
}
