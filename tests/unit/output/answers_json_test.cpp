#include "output/answers_json.hpp"

#include "output/trees.hpp"
#include "unit/document/documents.hpp"

#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <nlohmann/json.hpp>

using namespace evenfall;
using namespace evenfall::testing;
using Catch::Matchers::WithinAbs;
using nlohmann::json;

// The JSON keeps a millionth of each unit.
constexpr double kept = 0.51e-6;

TEST_CASE("the answers' JSON says what the answers say, in the units of its keys") {
    const document::Document document = document_of(preset_text("millrace-170.json"));
    const Outcome<Evaluation> evaluation = evaluate(document);
    REQUIRE(evaluation.ok());
    const Answers& answers = evaluation->answers;
    const json tree = json::parse(output::answers_json(document, *evaluation));
    CHECK(tree["name"] == "Millrace 170");
    CHECK_THAT(tree["mass_g"].get<double>(), WithinAbs(answers.mass.kg * 1e3, kept));
    CHECK_THAT(tree["displaced_cm3"].get<double>(), WithinAbs(answers.displaced_m3 * 1e6, kept));
    CHECK_THAT(tree["in_water_g"].get<double>(), WithinAbs(answers.in_water.kg * 1e3, kept));
    REQUIRE(answers.fall.has_value());
    CHECK_THAT(tree["fall_mm_s"].get<double>(), WithinAbs(answers.fall->speed_m_s * 1e3, kept));
    REQUIRE(answers.pitch_rad.has_value());
    CHECK_THAT(tree["pitch_deg"].get<double>(),
               WithinAbs(*answers.pitch_rad * 180.0 / 3.14159265358979323846, kept));
    CHECK_THAT(tree["g_mm"][2].get<double>(), WithinAbs(answers.g_m.z * 1e3, kept));
    CHECK_THAT(tree["b_mm"][0].get<double>(), WithinAbs(answers.b_m.x * 1e3, kept));
    REQUIRE(tree["segments"].size() == 3);
    CHECK(tree["segments"][1]["name"] == "Middle");
    CHECK_THAT(tree["segments"][1]["volume_cm3"].get<double>(),
               WithinAbs(answers.segments[1].wood_m3 * 1e6, kept));
    REQUIRE(tree["stages"].size() == 8);
    CHECK(tree["stages"][4]["stage"] == "sealed");
    CHECK_THAT(tree["stages"][4]["in_tub_g"].get<double>(),
               WithinAbs(answers.stages[4].in_tub.kg * 1e3, kept));
    CHECK(tree["stages"][0]["fall_mm_s"].is_null()); // bare wood floats
    REQUIRE(tree["stages_with_all"].size() == 4);
    CHECK(tree["stages_with_all"][1]["stage"] == "sealed");
    CHECK(tree["stages_with_all"][1]["in_tub_g"] > tree["stages"][4]["in_tub_g"]);
}

TEST_CASE("what does not apply is null in the JSON, not a number") {
    document::Document document = document_of(preset_text("reedline-120.json"));
    Outcome<Evaluation> evaluation = evaluate(document);
    REQUIRE(evaluation.ok());
    evaluation->answers.pitch_rad.reset();
    const json tree = json::parse(output::answers_json(document, *evaluation));
    CHECK(tree["fall_mm_s"].is_null());
    CHECK(tree["pitch_deg"].is_null());
    CHECK(tree["behaviour"] == "floats");
}

TEST_CASE("a plan's JSON lists each hole it may use, counted from 1, with lead and depth") {
    document::Document document = document_of(preset_text("millrace-170.json"));
    document.holes[1].use = document::HoleUse::fixed;
    const Outcome<LeadPlan> plan = plan_lead(document);
    REQUIRE(plan.ok());
    const json tree = json::parse(output::lead_json(*plan));
    CHECK(tree["met"].get<bool>() == plan->met);
    REQUIRE(tree["fills"].size() == 5);
    CHECK(tree["fills"][0]["hole"] == 1);
    CHECK(tree["fills"][1]["hole"] == 3);
    CHECK(tree["fills"][1]["name"] == "3 head");
    CHECK_THAT(tree["fills"][1]["mass_g"].get<double>(), WithinAbs(plan->holes[1].mass_kg * 1e3, kept));
    CHECK_THAT(tree["fills"][1]["depth_mm"].get<double>(), WithinAbs(plan->holes[1].depth_m * 1e3, kept));
    CHECK_THAT(tree["mass_g"].get<double>(), WithinAbs(plan->after.mass.kg * 1e3, kept));
    CHECK_THAT(tree["before"]["mass_g"].get<double>(), WithinAbs(plan->before.mass.kg * 1e3, kept));
}

TEST_CASE("problems keep their code, place, limit and sentence in the JSON") {
    const json list = json::parse(document::laid_out_text(output::problem_list(
        {{ProblemCode::out_of_range, "/holes/0/depth_mm", "0 to 100 mm", "Too deep."}}, units::metric)));
    CHECK(list ==
          json::parse(
              R"([{"code":2,"path":"/holes/0/depth_mm","limit":"0 to 100 mm","sentence":"Too deep."}])"));
}
