// The application drawn without a screen.

#include "bench/uncertainty/uncertainty.hpp"
#include "unit/shell/bench_of_tests.hpp"

#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <nlohmann/json.hpp>

using namespace evenfall;
using namespace evenfall::shell;
using namespace evenfall::shell::bench_of_tests;
using Catch::Matchers::WithinRel;

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

TEST_CASE("the plan of the page is the plan of the core", "[shell][app]") {
    Bench bench;
    const auto plan = plan_lead(bench.app.document());
    REQUIRE(plan);
    bench.tap_all({"step.lead", "lead.plan", "lead.keep"});
    CHECK(bench.app.document_json() == write_document(plan->document));
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
        for (int view = 6; view >= 0; --view) {
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
