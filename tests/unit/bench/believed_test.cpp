#include "bench/believed.hpp"

#include "answers/evaluation.hpp"
#include "document/read.hpp"
#include "support/invented_lures.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using namespace evenfall;
using Catch::Matchers::WithinRel;

TEST_CASE("without readings what is believed is what the document says", "[believed]") {
    const document::Document d = invented::preset_named("millrace-170");
    const auto plain = evaluate(d);
    const auto found = believed_answers(d);
    REQUIRE((plain.ok() && found.ok()));
    CHECK(found->answers.mass_kg == plain->answers.mass_kg);
    CHECK(found->answers.in_water_kg == plain->answers.in_water_kg);
    CHECK(found->answers.pitch_rad == plain->answers.pitch_rad);
    REQUIRE(found->uncertainty.has_value());
    CHECK_FALSE(found->uncertainty->has_readings);
}

TEST_CASE("with a heavy blank read, whole, segments and stages are of the heavier wood", "[believed]") {
    document::Document d = invented::preset_named("millrace-170");
    const auto plain = evaluate(d);
    REQUIRE(plain.ok());
    document::Reading heavy;
    heavy.stage = Stage::carved;
    heavy.mass_kg = 1.12 * plain->answers.stages.front().mass_kg;
    d.log = {heavy};
    const auto found = believed_answers(d);
    REQUIRE(found.ok());
    REQUIRE(found->uncertainty.has_value());
    const Answers& a = found->answers;
    CHECK(a.mass_kg == found->uncertainty->mass_kg.value);
    CHECK(a.mass_kg > 1.02 * plain->answers.mass_kg);
    CHECK(a.stages.front().mass_kg > 1.05 * plain->answers.stages.front().mass_kg);
    double segments_kg = 0.0;
    for (const SegmentAnswer& s : a.segments)
        segments_kg += s.mass_kg;
    CHECK_THAT(segments_kg, WithinRel(a.mass_kg, 1e-4));
}

TEST_CASE("what sinks without a steady fall sinks all the same, by what the log believes too", "[believed]") {
    Uncertainty sure;
    sure.has_readings = true;
    sure.in_water_kg.value = 0.004;
    const Answers answers = believed(Answers{}, &sure);
    CHECK(answers.behaviour == Behaviour::falls);
    CHECK_FALSE(answers.fall.has_value());
}

TEST_CASE("what cannot be evaluated has no believed answers", "[believed]") {
    document::Document d = invented::preset_named("millrace-170");
    d.wood.species = "no such wood";
    CHECK_FALSE(believed_answers(d).ok());
}
