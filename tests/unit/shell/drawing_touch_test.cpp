// Fingers on the drawing sheet alone, without a screen: what they choose, and what they move.

#include "drawing/sheet.hpp"
#include "look/fonts.hpp"
#include "look/theme.hpp"

#include "imgui.h"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <fstream>
#include <iterator>
#include <string>

using namespace evenfall;
using namespace evenfall::shell;
using Catch::Matchers::WithinAbs;

namespace {

preset::Document millrace() {
    std::ifstream file(EVENFALL_PRESETS_DIR "/millrace-170.json", std::ios::binary);
    REQUIRE(file.good());
    auto read = read_document({std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()});
    REQUIRE(read.ok());
    return *read;
}

struct Sheet {
    ImGuiContext* context = ImGui::CreateContext();
    widgets::Ui ui;
    state::Session session{millrace()};
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
            drawing::sheet(ui, session, {8.0f, 8.0f, size.x - 16.0f, size.y - 16.0f});
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
