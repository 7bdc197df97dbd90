#pragma once

// The application drawn without a screen: touches go in as they do on a tablet, and the document tells what
// they did.

#include "app/app.hpp"
#include "evenfall.hpp"

#include "imgui.h"
#include "imgui_internal.h"

#include <catch2/catch_test_macros.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cfloat>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

namespace evenfall::shell::bench_of_tests {

struct RecordingHost final : platform::Host {
    int changes = 0;
    std::string shared;
    std::string saved_name;
    std::string saved_text;
    std::string asked_id;
    bool sheet_seen = false;
    unsigned sheet_revision = 0;
    int prints = 0;
    std::string saved_sheet;
    std::vector<std::string> announced;
    int shelf_asked = 0;
    bool has_room = true;
    std::string dropped;
    std::string taken_back;
    int bins_emptied = 0;
    std::string plan;
    bool awake = false;
    void keep_awake(bool wanted) override { awake = wanted; }
    bool another_lure() override { return has_room; }
    void drop_kept(const std::string& id) override { dropped = id; }
    void take_back(const std::string& id) override { taken_back = id; }
    void empty_bin() override { ++bins_emptied; }
    bool take_everything(const std::string& plan_json) override {
        if (has_room) plan = plan_json;
        return has_room;
    }
    void show_sheet(float, float, float, float, unsigned revision) override {
        sheet_seen = true;
        sheet_revision = revision;
    }
    void hide_sheet() override { sheet_seen = false; }
    void print_sheet() override { ++prints; }
    void save_sheet(const std::string& name) override { saved_sheet = name; }
    void changed() override { ++changes; }
    void share(const std::string& link_text) override { shared = link_text; }
    void save_file(const std::string& name, const std::string& text) override {
        saved_name = name;
        saved_text = text;
    }
    void open_file() override {}
    void ask_text(const std::string& id, const std::string&, const std::string&) override { asked_id = id; }
    std::string today() override { return "2026-03-14"; }
    void announce(const std::string& text) override { announced.push_back(text); }
    void shelf_opens() override { ++shelf_asked; }
    std::string explained;
    void explain(const std::string& told_json) override { explained = told_json; }
};

inline std::string demo_text(const char* name) {
    std::ifstream file(std::string(EVENFALL_PRESETS_DIR "/") + name, std::ios::binary);
    REQUIRE(file.good());
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

/// Something on the screen that can be found by its name.
struct Item {
    std::string id;
    widgets::Rect place;
    bool visible = false;
    bool closed = false; ///< the heading of a closed section
};

/// One application on a screen that nobody sees.
struct Bench {
    RecordingHost host;
    ImGuiContext* context = ImGui::CreateContext();
    App app{host};
    double now_s = 0.0;

    explicit Bench(float width = 1024.0f, float height = 768.0f) {
        ImGui::GetIO().DisplaySize = {width, height};
        app.rebuild_fonts(1.0);
        unsigned char* pixels = nullptr;
        int w = 0;
        int h = 0;
        ImGui::GetIO().Fonts->GetTexDataAsAlpha8(&pixels, &w, &h);
        app.add_preset("millrace-170", demo_text("millrace-170.json"));
        REQUIRE(app.start(""));
        frames(3);
    }
    ~Bench() { ImGui::DestroyContext(context); }
    Bench(const Bench&) = delete;
    Bench& operator=(const Bench&) = delete;

    void frames(int count) {
        for (int i = 0; i < count; ++i) {
            ImGui::GetIO().DeltaTime = 1.0f / 60.0f;
            now_s += 1.0 / 60.0;
            ImGui::NewFrame();
            app.frame(now_s);
            ImGui::Render();
        }
    }

    /// Until nothing moves any more; a screen that never comes to rest fails.
    void rest() {
        int left = 1000;
        do
            frames(3);
        while (app.wants_frames() && --left > 0);
        REQUIRE(left > 0);
    }

    /// What the last frame drew that has a name, in order of drawing, seen or not.
    std::vector<Item> items() const {
        std::vector<Item> out;
        for (const auto& item : nlohmann::json::parse(app.items_json())) {
            out.push_back({item.at("id"),
                           {item.at("x"), item.at("y"), item.at("w"), item.at("h")},
                           item.at("visible"),
                           item.contains("closed")});
        }
        return out;
    }

    /// Of those the ones whose name begins so.
    std::vector<Item> items(const std::string& beginning) const {
        std::vector<Item> out = items();
        std::erase_if(out, [&](const Item& item) { return !item.id.starts_with(beginning); });
        return out;
    }

    bool place_of(const std::string& id, float& x, float& y, bool& visible) const {
        for (const Item& item : items()) {
            if (item.id != id) continue;
            x = item.place.x + item.place.w / 2.0f;
            y = item.place.y + item.place.h / 2.0f;
            visible = item.visible;
            return true;
        }
        return false;
    }

    void press(float x, float y) {
        ImGui::GetIO().AddMouseSourceEvent(ImGuiMouseSource_TouchScreen);
        ImGui::GetIO().AddMousePosEvent(x, y);
        ImGui::GetIO().AddMouseButtonEvent(0, true);
        frames(2);
    }
    void release() {
        ImGui::GetIO().AddMouseButtonEvent(0, false);
        ImGui::GetIO().AddMousePosEvent(-FLT_MAX, -FLT_MAX);
        rest();
    }

    void tap(const std::string& id) {
        CAPTURE(id);
        float x = 0.0f;
        float y = 0.0f;
        bool visible = false;
        REQUIRE(place_of(id, x, y, visible));
        REQUIRE(visible);
        press(x, y);
        release();
    }
    void tap_all(std::initializer_list<const char*> ids) {
        for (const char* id : ids)
            tap(id);
    }
    bool drawn(const std::string& id) const {
        const std::vector<Item> all = items();
        return std::any_of(all.begin(), all.end(), [&](const Item& item) { return item.id == id; });
    }
    /// Opens the closed sections of a panel, one after the other, until one holds this; all of them for "".
    void open_section_of(const std::string& id) {
        for (const Item& item : items()) {
            if (drawn(id)) return;
            if (item.closed) reach(item.id);
        }
    }
    /// The same for what a panel holds below its edge or in a closed section: the wheel brings it up.
    void reach(const std::string& id) {
        CAPTURE(id);
        open_section_of(id);
        for (int tries = 0; tries < 60 && !there(id); ++tries) {
            float x = 0.0f;
            float y = 0.0f;
            bool visible = false;
            REQUIRE(place_of(id, x, y, visible));
            const float height = ImGui::GetIO().DisplaySize.y;
            ImGui::GetIO().AddMousePosEvent(x, 0.75f * height); // over the panel, also on a phone
            ImGui::GetIO().AddMouseWheelEvent(0.0f, y > 0.75f * height ? -1.0f : 1.0f);
            rest();
        }
        ImGui::GetIO().AddMousePosEvent(-FLT_MAX, -FLT_MAX);
        rest();
        tap(id);
    }
    bool there(const std::string& id) const {
        float x = 0.0f;
        float y = 0.0f;
        bool visible = false;
        return place_of(id, x, y, visible) && visible;
    }
};

} // namespace evenfall::shell::bench_of_tests
