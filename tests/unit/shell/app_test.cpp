// The application drawn without a screen.

#include "bench/uncertainty/uncertainty.hpp"
#include "unit/shell/bench_of_tests.hpp"

#include "state/drawer.hpp"

#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <nlohmann/json.hpp>

using namespace evenfall;
using namespace evenfall::shell;
using namespace evenfall::shell::bench_of_tests;
using Catch::Matchers::WithinRel;

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

TEST_CASE("a finger that drags the panel scrolls it and taps nothing", "[shell][app]") {
    Bench bench;
    bench.tap("step.water");
    float x = 0.0f;
    float y = 0.0f;
    bool visible = false;
    REQUIRE(bench.place_of("water.temperature", x, y, visible));
    bench.press(x, y);
    for (int i = 1; i <= 12; ++i) {
        ImGui::GetIO().AddMousePosEvent(x, y - 5.0f * static_cast<float>(i));
        bench.frames(1);
    }
    bench.release();
    CHECK_FALSE(bench.there("keypad.ok"));
    float after_y = y;
    REQUIRE(bench.place_of("water.temperature", x, after_y, visible));
    // The drag begins a few px late; the glide may carry on.
    CHECK(after_y < y - 40.0f);
}

TEST_CASE("the shelf shares the very lure that is open", "[shell][app]") {
    Bench bench;
    bench.tap_all({"shelf.open", "shelf.share"});
    REQUIRE_FALSE(bench.host.shared.empty());
    const auto read = read_link(bench.host.shared);
    REQUIRE(read);
    CHECK(write_document(*read) == bench.app.document_json());
    bench.tap_all({"shelf.open", "shelf.save"});
    CHECK(bench.host.saved_name == "millrace-170.json");
}

TEST_CASE("where the device cannot keep the lure on the bench, no other one comes in its place",
          "[shell][app]") {
    Bench bench;
    const std::string before = bench.app.document_json();
    bench.app.add_preset("reedline-120", demo_text("reedline-120.json"));
    bench.host.has_room = false;
    for (const char* other : {"shelf.preset.reedline-120", "shelf.new"}) {
        bench.tap_all({"shelf.open", other});
        CHECK(bench.app.document_json() == before);
        CHECK_FALSE(bench.there("shelf.share"));
    }
    bench.host.has_room = true;
    bench.tap_all({"shelf.open", "shelf.new"});
    CHECK(bench.app.document_json() != before);
}

TEST_CASE("a lure too long for a link is not handed on as one", "[shell][app]") {
    Bench bench;
    document::Document wordy = bench.app.document();
    unsigned state = 1;
    for (int i = 0; i < 200; ++i) {
        document::Reading r;
        r.mass_kg = 0.03;
        for (int k = 0; k < 300; ++k)
            r.note += static_cast<char>('a' + ((state = state * 1664525u + 1013904223u) >> 24) % 26u);
        wordy.log.push_back(std::move(r));
    }
    REQUIRE_FALSE(read_link(write_link(wordy)));
    REQUIRE(bench.app.open_json(write_document(wordy)).empty());
    bench.tap_all({"shelf.open", "shelf.share"});
    CHECK(bench.host.shared.empty());
}

TEST_CASE("the plan of the page is the plan of the core", "[shell][app]") {
    Bench bench;
    const auto plan = plan_lead(bench.app.document());
    REQUIRE(plan);
    bench.tap_all({"step.lead", "lead.plan", "lead.keep"});
    CHECK(bench.app.document_json() == write_document(plan->document));
}

TEST_CASE("what is kept opens again as it was", "[shell][app]") {
    std::string kept;
    std::string document;
    {
        Bench bench;
        bench.tap("step.water");
        bench.tap("water.temperature");
        bench.tap_all({"keypad.7", "keypad.ok"});
        kept = bench.app.session_json();
        document = bench.app.document_json();
    }
    Bench again;
    REQUIRE(again.app.start(kept, ""));
    again.rest();
    CHECK(again.app.document_json() == document);
    CHECK(again.there("water.temperature"));
    CHECK_FALSE(again.app.start("not a session", ""));
    CHECK_FALSE(again.app.last_problem().empty());
}

TEST_CASE("a text that is no lure is refused with a sentence and changes nothing", "[shell][app]") {
    Bench bench;
    const std::string before = bench.app.document_json();
    CHECK_FALSE(bench.app.open_json("{").empty());
    CHECK_FALSE(bench.app.open_link("1.damaged").empty());
    CHECK(bench.app.document_json() == before);
    bench.rest();
    CHECK_FALSE(bench.app.last_problem().empty());
}

TEST_CASE("a name is asked for outside the drawing and comes back as an edit", "[shell][app]") {
    Bench bench;
    bench.tap("lure.name");
    CHECK(bench.host.asked_id == "lure.name");
    bench.app.set_text("lure.name", "Creek 90");
    bench.rest();
    CHECK(bench.app.document().name == "Creek 90");
}

TEST_CASE("every step can be reached and no target is smaller than 44 px, on a tablet and on a phone",
          "[shell][app]") {
    const float sizes[][2] = {{1024.0f, 768.0f}, {1366.0f, 1024.0f}, {390.0f, 844.0f}};
    for (const auto& size : sizes) {
        Bench bench(size[0], size[1]);
        for (const char* step : {"step.shape", "step.joints", "step.hardware", "step.lead", "step.finish",
                                 "step.water", "step.log", "step.sheet"}) {
            bench.tap(step);
            for (const Item& item : bench.items()) {
                // Answers are read, not touched; a toast is as high as its sentence; handles of the drawing
                // are areas of their own.
                if (item.id.starts_with("answer.") || item.id == "toast" || item.id.starts_with("draw."))
                    continue;
                CAPTURE(size[0], step, item.id, item.place.w, item.place.h);
                CHECK(item.place.w >= 44.0f);
                CHECK(item.place.h >= 44.0f);
            }
        }
    }
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

TEST_CASE("the fall is drawn only while it moves: started it wants frames, paused or slid it rests",
          "[shell][app]") {
    Bench bench;
    bench.tap("step.water");
    CHECK_FALSE(bench.app.wants_frames());
    float x = 0.0f;
    float y = 0.0f;
    bool visible = false;
    REQUIRE(bench.place_of("water.play", x, y, visible));
    const auto tap_play = [&] {
        bench.press(x, y);
        ImGui::GetIO().AddMouseButtonEvent(0, false);
        ImGui::GetIO().AddMousePosEvent(-FLT_MAX, -FLT_MAX);
        bench.frames(6);
    };
    tap_play();
    CHECK(bench.app.wants_frames());
    bench.frames(30);
    CHECK(bench.app.wants_frames());
    tap_play();
    CHECK_FALSE(bench.app.wants_frames());
    tap_play();
    CHECK(bench.app.wants_frames());
    bench.tap("water.scrub");
    CHECK_FALSE(bench.app.wants_frames());
    // Another step stops it.
    tap_play();
    bench.tap("step.lead");
    CHECK_FALSE(bench.app.wants_frames());
}

TEST_CASE("every view of the Water step opens, large enough for a finger, for every demo lure",
          "[shell][app]") {
    for (const char* demo :
         {"millrace-170.json", "reedline-120.json", "quarry-230.json", "estuary-150.json"}) {
        Bench bench(390.0f, 844.0f);
        REQUIRE(bench.app.open_json(demo_text(demo)).empty());
        bench.tap("step.water");
        CHECK(bench.there("water.temperature"));
        for (int view = 5; view >= 0; --view) {
            bench.tap("water.view." + std::to_string(view));
            for (const Item& item : bench.items("water.")) {
                CAPTURE(demo, view, item.id, item.place.w, item.place.h);
                CHECK(item.place.w >= 44.0f);
                CHECK(item.place.h >= 44.0f);
            }
        }
        CHECK(bench.there("water.temperature"));
    }
}

TEST_CASE("a depth tapped in is the depth of the drawn fall and no change of the lure", "[shell][app]") {
    Bench bench;
    bench.tap_all({"step.water", "water.view.1"});
    const std::string before = bench.app.document_json();
    bench.tap("water.depth");
    bench.tap_all({"keypad.1", "keypad.point", "keypad.5", "keypad.ok"}); // metres
    CHECK_FALSE(bench.there("keypad.ok"));
    CHECK(bench.app.document_json() == before);
    CHECK(bench.app.session_json().find("\"fall_depth_mm\":1500") != std::string::npos);
}

TEST_CASE("the numbers that follow as text are those of the strip, with readings too, and pieces and stages "
          "are of the same wood",
          "[shell][app]") {
    Bench bench;
    document::Document d = bench.app.document();
    const auto drawn = evaluate(d);
    REQUIRE(drawn.ok());
    document::Reading heavy;
    heavy.stage = Stage::carved;
    heavy.mass_kg = 1.12 * drawn->answers.stages.front().mass.kg;
    d.log = {heavy};
    REQUIRE(bench.app.open_json(write_document(d)).empty());
    bench.rest();
    const auto sure = uncertainty(d);
    REQUIRE(sure.ok());
    const Answers& strip = sure->evaluation.answers;
    REQUIRE(strip.mass.kg > 1.02 * drawn->answers.mass.kg);
    const auto text = nlohmann::json::parse(bench.app.answers_json());
    CHECK_THAT(text["mass_g"].get<double>(), WithinRel(1e3 * strip.mass.kg, 1e-5));
    CHECK_THAT(text["mass_sigma_g"].get<double>(), WithinRel(1e3 * strip.mass_sigma.kg, 1e-4));
    CHECK_THAT(text["in_water_g"].get<double>(), WithinRel(1e3 * strip.in_water.kg, 1e-5));
    CHECK_THAT(text["fall_mm_s"].get<double>(), WithinRel(1e3 * strip.fall->speed_m_s, 1e-5));
    CHECK_THAT(text["bg_mm"].get<double>(), WithinRel(1e3 * strip.bg_m, 1e-4));
    CHECK(text["behaviour"] == "falls");
    double pieces_g = 0.0;
    for (const auto& segment : text["segments"])
        pieces_g += segment["mass_g"].get<double>();
    CHECK_THAT(pieces_g, WithinRel(1e3 * strip.mass.kg, 1e-4));
    CHECK_THAT(text["stages"].front()["mass_g"].get<double>(),
               WithinRel(1e3 * sure->stages.front().mass_kg.value, 1e-4));
    CHECK_THAT(text["stages"].back()["in_water_g"].get<double>(), WithinRel(1e3 * strip.in_water.kg, 1e-3));
}

TEST_CASE("what was begun on one lure is not set on another that comes to the bench", "[shell][app]") {
    const auto other = read_document(demo_text("reedline-120.json"));
    REQUIRE(other.ok());
    Bench bench;
    bench.tap_all({"step.water", "water.temperature", "keypad.3"});
    REQUIRE(bench.app.open_link(write_link(*other)).empty());
    bench.rest();
    CHECK_FALSE(bench.there("keypad.ok"));
    CHECK(bench.app.document_json() == write_document(*other));

    // Nor from a list, nor a text asked for outside.
    bench.tap("step.shape");
    bench.reach("shape.wood");
    REQUIRE(bench.there("pick.cancel"));
    bench.app.set_text("lure.name", "Ripple");
    REQUIRE(bench.app.open_json(demo_text("millrace-170.json")).empty());
    bench.rest();
    CHECK_FALSE(bench.there("pick.cancel"));
    CHECK(bench.app.document().name == "Millrace 170");
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

TEST_CASE("the same refusal is told and announced each time it is met", "[shell][app]") {
    Bench bench;
    bench.tap("step.lead");
    bench.reach("lead.hole.4");
    int told = 0;
    std::size_t heard = 0;
    for (int tap = 0; tap < 6; ++tap) {
        const std::size_t holes = bench.app.document().holes.size();
        const std::size_t announced = bench.host.announced.size();
        bench.reach("lead.hole.4.duplicate");
        if (bench.app.document().holes.size() != holes) continue;
        CHECK(bench.there("toast"));
        CHECK(bench.host.announced.size() == announced + 1);
        if (!bench.host.announced.empty()) CHECK(bench.host.announced.back() == bench.app.last_problem());
        ++told;
        heard = bench.host.announced.size();
        bench.frames(60 * 14);
        CHECK_FALSE(bench.there("toast"));
        CHECK(bench.host.announced.size() == heard);
    }
    CHECK(told >= 2);
}

TEST_CASE("a second picture that is not fit leaves the first one where it is", "[shell][app]") {
    Bench bench;
    REQUIRE(bench.app.picture_room(100, 100) != nullptr);
    bench.app.picture_ready("");
    bench.rest();
    CHECK(bench.app.picture_room(1600, 16) == nullptr);
    bench.rest();
    CHECK_FALSE(bench.app.last_problem().empty());
    CHECK(bench.app.wanted_texture().rgba != nullptr);
    CHECK(bench.app.wanted_texture().width == 100);
}

TEST_CASE("a change made while a plan is shown goes on from the plan, as it is seen", "[shell][app]") {
    Bench bench;
    document::Document empty = bench.app.document();
    for (auto& hole : empty.holes) {
        hole.depth_m = 0.0;
        hole.fill.reset();
    }
    REQUIRE(bench.app.open_json(write_document(empty)).empty());
    bench.rest();
    bench.tap("step.lead");
    bench.reach("lead.plan");
    bench.reach("lead.hole.1");
    bench.reach("lead.hole.1.wall");
    bench.tap_all({"keypad.2", "keypad.point", "keypad.6", "keypad.ok"});
    document::Document planned = plan_lead(empty)->document;
    planned.holes[1].wall_m = 0.0026;
    CHECK(bench.app.document_json() == write_document(planned));
    bench.tap("undo");
    planned.holes[1].wall_m = empty.holes[1].wall_m;
    CHECK(bench.app.document_json() == write_document(planned));
    bench.tap("undo");
    CHECK(bench.app.document_json() == write_document(empty));
}

TEST_CASE("a part without a name, or for a full drawer, is not laid into it silently",
          "[shell][app][drawer]") {
    Bench bench;
    document::Document d = bench.app.document();
    d.parts[0].name.clear();
    REQUIRE(bench.app.open_json(write_document(d)).empty());
    bench.rest();
    bench.tap_all({"step.hardware", "hardware.0"});
    bench.reach("hardware.0.drawer");
    CHECK(bench.there("toast"));
    CHECK_FALSE(bench.app.last_problem().empty());
    CHECK_FALSE(bench.there("drawer.0"));
    state::Drawer full;
    for (std::size_t i = 0; i < state::most_things; ++i) {
        state::DrawerItem thing;
        thing.name = "Ring " + std::to_string(i);
        full.put(thing);
    }
    REQUIRE(bench.app.set_drawer(state::write_drawer(full)).empty());
    bench.app.set_text("hardware.0.name", "Hanger");
    bench.rest();
    const std::string before = bench.app.last_problem();
    bench.reach("hardware.0.drawer");
    CHECK(bench.app.last_problem() != before);
    // A file that does not fit in whole is not laid in by half.
    REQUIRE(bench.app.set_drawer(R"({"evenfall_drawer": 1, "things": []})").empty());
    state::Drawer one;
    one.put(full.things().front());
    REQUIRE(bench.app.add_to_drawer(state::write_drawer(one)).empty());
    state::Drawer others;
    for (std::size_t i = 1; i <= state::most_things; ++i) {
        state::DrawerItem thing;
        thing.name = "Bead " + std::to_string(i);
        others.put(thing);
    }
    CHECK_FALSE(bench.app.add_to_drawer(state::write_drawer(others)).empty());
    bench.rest();
    bench.reach("drawer.0");
    CHECK_FALSE(bench.there("drawer.1"));
}

TEST_CASE("a piece added to the drawer takes no other's place, and none is called as another is",
          "[shell][app][drawer]") {
    Bench bench;
    bench.tap("step.hardware");
    for (int i = 0; i < 3; ++i)
        bench.reach("drawer.add.wire");
    bench.reach("drawer.0");
    bench.reach("drawer.0.out");
    bench.reach("drawer.add.wire");
    CHECK(bench.app.last_problem().empty());
    bench.app.set_text("drawer.2.name", "Wire 2");
    bench.rest();
    CHECK_FALSE(bench.app.last_problem().empty());
    bench.reach("drawer.save");
    const auto kept = state::read_drawer(bench.host.saved_text);
    REQUIRE(kept.ok());
    REQUIRE(kept->things().size() == 3);
    CHECK(kept->things()[0].name == "Wire 2");
    CHECK(kept->things()[1].name == "Wire 3");
}
