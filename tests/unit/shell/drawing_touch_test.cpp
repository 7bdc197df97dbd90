// Fingers on the drawing sheet alone, without a screen: what they choose, and what they move.

#include "drawing/sheet.hpp"
#include "look/fonts.hpp"
#include "look/theme.hpp"
#include "state/drag.hpp"
#include "state/edits.hpp"

#include "imgui.h"
#include "imgui_internal.h"
#include "support/presets.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <iterator>
#include <string>
#include <vector>

using namespace evenfall;
using namespace evenfall::shell;
using Catch::Matchers::WithinAbs;

namespace {

document::Document millrace() {
    return support::preset_named("millrace-170");
}

struct Sheet {
    ImGuiContext* context = ImGui::CreateContext();
    widgets::Ui ui;
    state::Session session{millrace()};
    const Uncertainty* uncertainty = nullptr;
    bool phone = false;

    explicit Sheet(bool small) : phone(small) {
        ImGuiIO& io = ImGui::GetIO();
        io.IniFilename = nullptr;
        io.DisplaySize = small ? ImVec2{390.0f, 300.0f} : ImVec2{600.0f, 560.0f};
        ui.type = look::build_fonts(*io.Fonts, 1.0);
        ui.ink = &look::palette(look::Scheme::light);
        ui.phone = small;
        unsigned char* pixels = nullptr;
        int w = 0;
        int h = 0;
        io.Fonts->GetTexDataAsAlpha8(&pixels, &w, &h);
        frames(2);
    }
    ~Sheet() { ImGui::DestroyContext(context); }
    Sheet(const Sheet&) = delete;
    Sheet& operator=(const Sheet&) = delete;

    void frames(int count) {
        const ImVec2 size = ImGui::GetIO().DisplaySize;
        for (int i = 0; i < count; ++i) {
            ImGui::GetIO().DeltaTime = 1.0f / 60.0f;
            ImGui::NewFrame();
            ui.items.begin_frame();
            ImGui::SetNextWindowPos({0.0f, 0.0f});
            ImGui::SetNextWindowSize(size);
            ImGui::Begin("sheet", nullptr, ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove);
            drawing::sheet(ui, session, {8.0f, 8.0f, size.x - 16.0f, size.y - 16.0f}, nullptr, uncertainty);
            ImGui::End();
            ui.items.finish_frame();
            ImGui::Render();
        }
    }
    ImVec2 middle(const char* id) const {
        const widgets::Item* item = ui.items.find(id);
        REQUIRE(item != nullptr);
        return {item->x + 0.5f * item->w, item->y + 0.5f * item->h};
    }
    void move(ImVec2 to) {
        ImGui::GetIO().AddMousePosEvent(to.x, to.y);
        frames(2);
    }
    void press(ImVec2 at) {
        ImGui::GetIO().AddMouseSourceEvent(ImGuiMouseSource_TouchScreen);
        move(at);
        ImGui::GetIO().AddMouseButtonEvent(0, true);
        frames(2);
    }
    void release() {
        ImGui::GetIO().AddMouseButtonEvent(0, false);
        frames(2);
    }
    void tap(const char* id) {
        press(middle(id));
        release();
    }
};

} // namespace

TEST_CASE("a tap on a drawn thing chooses it and opens its step", "[shell][drawing][touch]") {
    for (const bool phone : {false, true}) {
        Sheet sheet(phone);
        CAPTURE(phone);
        sheet.tap("draw.hole.3");
        CHECK(sheet.session.view.selection == state::Selection{state::ItemKind::hole, 3});
        CHECK(sheet.session.view.step == state::Step::lead);
        sheet.tap("draw.joint.1");
        CHECK(sheet.session.view.step == state::Step::joints);
        CHECK(sheet.session.history().size() == 1);
    }
}

TEST_CASE("a finger slides the station of the section along the ruler", "[shell][drawing][touch]") {
    Sheet sheet(false);
    const double before = sheet.session.view.section_x_m;
    const ImVec2 flag = sheet.middle("draw.section");
    sheet.press(flag);
    sheet.move({flag.x + 60.0f, flag.y});
    sheet.release();
    CHECK(sheet.session.view.section_x_m > before + 0.010);
    CHECK(sheet.session.history().size() == 1);
}

TEST_CASE("a tail by its shape is chosen on either view, goes with the finger, and does not go into the wood",
          "[shell][drawing][touch][tail]") {
    for (const char* id : {"draw.tail", "draw.above.tail"}) {
        Sheet sheet(false);
        CHECK(sheet.session.apply({"tail",
                                   [](document::Document d) {
                                       d.parts.clear();
                                       d = state::add_tail()(d);
                                       d.tail->tenon.reset();
                                       return d;
                                   },
                                   true}));
        sheet.frames(2);
        sheet.tap(id);
        CHECK(sheet.session.view.selection == state::Selection{state::ItemKind::tail, 0});
        CHECK(sheet.session.view.step == state::Step::hardware);
        const double x_m = sheet.session.document().tail->x_m;
        const ImVec2 at = sheet.middle(id);
        sheet.press(at);
        for (int i = 1; i <= 6; ++i)
            sheet.move({at.x + 2.0f * static_cast<float>(i), at.y});
        sheet.release();
        CHECK(sheet.session.kept().tail->x_m > x_m + 0.001);
        const ImVec2 there = sheet.middle(id);
        sheet.press(there);
        for (int i = 1; i <= 20; ++i)
            sheet.move({there.x - 6.0f * static_cast<float>(i), there.y});
        sheet.release();
        CHECK(sheet.session.kept().tail->x_m >= x_m - 1e-9);
    }
}

TEST_CASE("a chosen hole goes with the finger and is one entry of the history", "[shell][drawing][touch]") {
    Sheet sheet(false);
    const double x_m = sheet.session.document().holes[0].x_m;
    sheet.tap("draw.hole.0");
    const ImVec2 at = sheet.middle("draw.hole.0");
    sheet.press(at);
    for (int i = 1; i <= 6; ++i)
        sheet.move({at.x - 2.0f * static_cast<float>(i), at.y});
    CHECK(sheet.session.document().holes[0].x_m < x_m - 0.002);
    CHECK(sheet.session.kept().holes[0].x_m == x_m);
    sheet.release();
    CHECK(sheet.session.history().size() == 2);
    CHECK(sheet.session.kept().holes[0].x_m < x_m - 0.002);
    sheet.session.undo();
    CHECK_THAT(sheet.session.document().holes[0].x_m, WithinAbs(x_m, 0.0));
}

TEST_CASE("a hole that is not chosen does not go with the finger", "[shell][drawing][touch]") {
    Sheet sheet(false);
    const ImVec2 at = sheet.middle("draw.hole.0");
    sheet.press(at);
    sheet.move({at.x - 20.0f, at.y});
    sheet.release();
    CHECK(sheet.session.history().size() == 1);
    CHECK(sheet.session.document().holes[0].x_m == millrace().holes[0].x_m);
}

TEST_CASE(
    "a point of the back line goes with the finger, the others stay, and it is one entry of the history",
    "[shell][drawing][touch]") {
    for (const bool mirror : {false, true}) {
        CAPTURE(mirror);
        Sheet sheet(false);
        sheet.session.view.step = state::Step::shape;
        sheet.session.view.mirror = mirror;
        sheet.frames(2);
        const document::Shape before = sheet.session.document().shape;
        const ImVec2 at = sheet.middle("draw.back.5");
        const double px_per_m = static_cast<double>(sheet.middle("draw.back.7").x - at.x) /
                                (before.back[7].x_m - before.back[5].x_m);
        sheet.tap("draw.back.5");
        sheet.press(at);
        for (int i = 1; i <= 8; ++i)
            sheet.move({at.x, at.y - 2.0f * static_cast<float>(i)});
        sheet.release();
        const document::Shape& after = sheet.session.kept().shape;
        // By as much as the finger: the drawing keeps its scale while it is held, although the lure grows.
        CHECK_THAT(after.back[5].value - before.back[5].value, WithinAbs(16.0 / px_per_m, 0.0005));
        for (std::size_t k = 0; k < before.back.size(); ++k) {
            if (k != 5) CHECK(after.back[k].value == before.back[k].value);
        }
        if (!mirror)
            CHECK(after.belly[5].value == before.belly[5].value);
        else
            CHECK(after.belly[5].value < before.belly[5].value);
        CHECK(sheet.session.history().size() == 2);
        sheet.session.undo();
        CHECK(sheet.session.document().shape.back[5].value == before.back[5].value);
    }
}

TEST_CASE("a hole dragged where it cannot be drilled says so and goes back to where it could",
          "[shell][drawing][touch]") {
    Sheet sheet(false);
    sheet.tap("draw.hole.2");
    const ImVec2 at = sheet.middle("draw.hole.2");
    const ImVec2 gap = sheet.middle("draw.joint.0");
    sheet.press(at);
    for (int i = 1; i <= 10; ++i)
        sheet.move({at.x + (gap.x - at.x) * static_cast<float>(i) / 10.0f, at.y});
    CHECK(sheet.ui.items.find("draw.refused") != nullptr);
    sheet.release();
    const auto evaluation = evaluate(sheet.session.kept());
    CHECK(evaluation.ok());
    CHECK(sheet.session.history().size() <= 2);
}

TEST_CASE("snapped places are whole half millimetres or thirty-seconds of an inch, and a neighbour's level "
          "goes before them",
          "[shell][drawing][touch]") {
    state::DragRules rules;
    CHECK_THAT(state::snapped_m(0.01234, rules), WithinAbs(0.0125, 1e-12));
    rules.inches = true;
    CHECK_THAT(state::snapped_m(0.0250, rules), WithinAbs(31.0 / 32.0 * 0.0254, 0.0254 / 64.0));
    CHECK_THAT(state::snapped_m(0.0254, rules), WithinAbs(0.0254, 1e-12));
    rules.inches = false;
    const document::CurvePoints line{{0.0, 0.0052}, {0.05, 0.0100}, {0.1, 0.0107}};
    CHECK_THAT(state::snapped_level_m(0.0104, line, 1, rules), WithinAbs(0.0107, 1e-12));
    CHECK_THAT(state::snapped_level_m(0.0003, line, 1, rules), WithinAbs(0.0, 1e-12));
}

namespace {

double wood_m3(const Sheet& sheet) {
    double sum = 0.0;
    for (const auto& segment : sheet.session.evaluation()->body.segments)
        sum += segment.volume_m3;
    return sum;
}

/// The demo lure with a section drawn by hand, looked at in its middle.
void draw_section(Sheet& sheet) {
    sheet.session.view.step = state::Step::shape;
    sheet.session.view.small_view = state::SmallView::section;
    sheet.session.view.section_x_m = 0.030;
    REQUIRE(sheet.session.apply(
        {"Section", [](document::Document d) {
             d.holes.pop_back(); // too wide for a tail so thin
             d.shape.section.kind = document::SectionKind::drawn;
             d.shape.section.half_outline = {{0.0, -1.0}, {0.7, -0.7}, {1.0, 0.0}, {0.7, 0.7}, {0.0, 1.0}};
             return d;
         }}));
    sheet.frames(2);
}

} // namespace

TEST_CASE("a tap on the line of a drawn section adds a point there, and moves nothing else",
          "[shell][drawing][touch]") {
    for (const bool phone : {false, true}) {
        CAPTURE(phone);
        Sheet sheet(phone);
        draw_section(sheet);
        const ImVec2 a = sheet.middle("draw.section.point.1");
        const ImVec2 b = sheet.middle("draw.section.point.2");
        const double volume = wood_m3(sheet);
        sheet.press({0.5f * (a.x + b.x), 0.5f * (a.y + b.y)});
        sheet.release();
        const auto& outline = sheet.session.kept().shape.section.half_outline;
        REQUIRE(outline.size() == 6);
        CHECK_THAT(outline[2].y, WithinAbs(0.85, 0.04));
        CHECK_THAT(outline[2].z, WithinAbs(-0.35, 0.06));
        CHECK(sheet.session.view.selection == state::Selection{state::ItemKind::section_point, 2});
        CHECK(sheet.session.view.step == state::Step::shape);
        CHECK_THAT(wood_m3(sheet) / volume, WithinAbs(1.0, 0.01));
    }
}

TEST_CASE("a point of a drawn section goes with the finger, under a lens, and the widest keeps its width",
          "[shell][drawing][touch]") {
    Sheet sheet(false);
    draw_section(sheet);
    const ImVec2 at = sheet.middle("draw.section.point.1");
    sheet.press(at);
    for (int i = 1; i <= 6; ++i)
        sheet.move({at.x - 2.0f * static_cast<float>(i), at.y});
    CHECK(sheet.ui.items.find("draw.held") != nullptr);
    sheet.release();
    CHECK(sheet.session.kept().shape.section.half_outline[1].y < 0.69);
    const ImVec2 widest = sheet.middle("draw.section.point.2");
    sheet.press(widest);
    for (int i = 1; i <= 6; ++i)
        sheet.move({widest.x - 3.0f * static_cast<float>(i), widest.y - static_cast<float>(i)});
    sheet.release();
    CHECK(sheet.session.kept().shape.section.half_outline[2].y == 1.0);
    CHECK(sheet.session.kept().shape.section.half_outline[2].z > 0.0);
}

TEST_CASE("a drawn section gains a point in the middle of its longest side and never loses belly, back or "
          "its width",
          "[shell][edits]") {
    document::Document d = millrace();
    d.shape.section.kind = document::SectionKind::drawn;
    d.shape.section.half_outline = {{0.0, -1.0}, {1.0, 0.0}, {0.6, 0.6}, {0.0, 1.0}};
    const auto grown = state::add_section_point()(d).shape.section.half_outline;
    REQUIRE(grown.size() == 5);
    CHECK(grown[1].y == 0.5);
    CHECK(grown[1].z == -0.5);
    CHECK(state::remove_section_point(2)(d).shape.section.half_outline.size() == 3);
    for (const int kept : {-1, 0, 1, 3, 4}) {
        CAPTURE(kept);
        CHECK(state::remove_section_point(kept)(d).shape.section.half_outline.size() == 4);
    }
    const auto put = state::put_section_point(2, 1.7, -2.0)(d).shape.section.half_outline[2];
    CHECK(put.y == 1.0);
    CHECK(put.z == -1.0);
}

TEST_CASE(
    "the lure hangs and moves in the drawing as the bench log has it, and as drawn where nothing was read",
    "[shell][drawing]") {
    Sheet sheet(false);
    const auto drawn = [&] {
        sheet.frames(2);
        std::vector<float> corners;
        for (const ImDrawVert& v : ImGui::FindWindowByName("sheet")->DrawList->VtxBuffer)
            corners.insert(corners.end(), {v.pos.x, v.pos.y, v.uv.x, v.uv.y});
        return corners;
    };
    const auto bare = drawn();
    REQUIRE_FALSE(bare.empty());
    document::Document d = sheet.session.document();
    auto sure = uncertainty(d);
    REQUIRE(sure.ok());
    sheet.uncertainty = &*sure;
    CHECK((drawn() == bare));
    document::Reading heavy;
    heavy.stage = Stage::carved;
    heavy.mass_kg = 1.12 * evaluate(d)->answers.stages.front().mass.kg;
    d.log = {heavy};
    sure = uncertainty(d);
    REQUIRE(sure.ok());
    CHECK((drawn() != bare));
}
