// What a lure near the weight of its water does is told by its fall, not by its weight.

#include "base/trade.hpp"
#include "bench/uncertainty/uncertainty.hpp"
#include "output/bench_text.hpp"
#include "support/invented_lures.hpp"
#include "support/small_lures.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

/// A lure of 60 mm, heavy at its belly, made to have this weight in water by a bead of lead inside.
document::Document small_lure(double in_water_kg) {
    document::Document d = support::block();
    d.shape.back = {{0.0, 0.002}, {0.015, 0.007}, {0.060, 0.002}};
    d.shape.belly = {{0.0, -0.002}, {0.015, -0.008}, {0.060, -0.002}};
    d.shape.half_width = {{0.0, 0.001}, {0.015, 0.005}, {0.060, 0.001}};
    document::Part bead;
    bead.name = "Bead";
    bead.material = "lead";
    bead.embedded = 1.0;
    bead.at_m = {0.0235, 0.0, -0.004};
    d.parts = {bead};
    for (int i = 0; i < 4; ++i) {
        const auto e = evaluate(d);
        REQUIRE(e.ok());
        // Lead inside adds its weight less that of the wood it takes the place of.
        d.parts[0].mass_kg += (in_water_kg - e->answers.in_water.kg) / (1.0 - 500.0 / 11340.0);
    }
    return d;
}

Answers answers_at(double in_water_kg) {
    const auto e = evaluate(small_lure(in_water_kg));
    REQUIRE(e.ok());
    CHECK_THAT(e->answers.in_water.kg, WithinAbs(in_water_kg, 1e-8));
    return e->answers;
}

} // namespace

TEST_CASE("a lure of 60 mm that weighs 0.0499 g in water falls, at more than 30 mm/s") {
    const Answers a = answers_at(0.0499e-3);
    CHECK(a.behaviour == Behaviour::falls);
    REQUIRE((a.fall && a.under_water));
    CHECK(a.fall->speed_m_s > 0.030);
    CHECK(a.fall->speed_m_s == a.under_water->speed_m_s);
    CHECK(a.fall->slow_m_s < a.fall->speed_m_s);
    CHECK(a.fall->fast_m_s > a.fall->speed_m_s);
}

TEST_CASE("one as much lighter than its water floats, and its rise under water has a speed") {
    const Answers a = answers_at(-0.0499e-3);
    CHECK(a.behaviour == Behaviour::floats);
    CHECK_FALSE(a.fall);
    REQUIRE(a.under_water);
    CHECK(a.under_water->speed_m_s < -0.030);
    CHECK(a.under_water->slow_m_s > a.under_water->speed_m_s);
    CHECK(a.under_water->slow_m_s < 0.0);
    CHECK(a.under_water->fast_m_s < a.under_water->speed_m_s);
}

TEST_CASE("what rises or sinks slower than 10 mm/s suspends, whatever its weight") {
    for (const double milligrams : {-8.0, -2.0, -1.2, 1.2, 2.0, 8.0}) {
        const Answers a = answers_at(milligrams * 1e-6);
        INFO(milligrams << " mg");
        REQUIRE(a.under_water);
        const double speed = a.under_water->speed_m_s;
        CHECK((speed > 0.0) == (milligrams > 0.0));
        CHECK((a.behaviour == Behaviour::suspends) == (std::abs(speed) <= still_m_s));
        CHECK(a.fall.has_value() == (speed > still_m_s));
        // The sealed piece is bare here, and the tub's water the same.
        CHECK(a.stages.back().behaviour == a.behaviour);
    }
    CHECK(answers_at(1.2e-6).behaviour == Behaviour::suspends);
    CHECK(answers_at(-1.2e-6).behaviour == Behaviour::suspends);
    CHECK(answers_at(0.0).behaviour == Behaviour::suspends);
    CHECK_FALSE(answers_at(0.0).under_water);
}

TEST_CASE("behaviour goes by speed, and without a steady way by the sign of the weight") {
    CHECK(behaviour_of(0.011, MassInWater{1e-6}) == Behaviour::falls);
    CHECK(behaviour_of(0.010, MassInWater{1e-3}) == Behaviour::suspends);
    CHECK(behaviour_of(-0.010, MassInWater{-1e-3}) == Behaviour::suspends);
    CHECK(behaviour_of(-0.011, MassInWater{-1e-6}) == Behaviour::floats);
    CHECK(behaviour_of(std::nullopt, MassInWater{1e-6}) == Behaviour::suspends);
    CHECK(behaviour_of(std::nullopt, MassInWater{2e-6}) == Behaviour::falls);
    CHECK(behaviour_of(std::nullopt, MassInWater{-2e-6}) == Behaviour::floats);
}

TEST_CASE("chances to rise, hang and sink make one, and agree with draws near neutral") {
    for (const double in_water_kg : {-0.0005, 0.0, 0.0008}) {
        document::Document d = invented::preset_named("millrace-170");
        d.targets.by = document::TargetBy::in_water;
        d.targets.in_water_kg = in_water_kg;
        const auto plan = plan_lead(d);
        REQUIRE((plan.ok() && plan->met));
        d = plan->document;
        const auto s = uncertainty(d);
        const auto draws = uncertainty_by_draws(d, 10'000, 7);
        REQUIRE((s.ok() && draws.ok()));
        const UnderWater& u = s->under_water;
        INFO(in_water_kg << " kg: " << u.rises << ", " << u.hangs << ", " << u.sinks);
        CHECK_THAT(u.rises + u.hangs + u.sinks, WithinAbs(1.0, 1e-12));
        CHECK((u.rises > 0.0 && u.hangs > 0.0 && u.sinks > 0.0));
        // Half of those that hang still are lighter than their water.
        CHECK_THAT(draws->floats, WithinAbs(u.rises + 0.5 * u.hangs, 0.02));
        CHECK(u.speed_m_s.low < 0.0);
        CHECK(u.speed_m_s.high > 0.0);
        const Sentence told = output::near_neutral_sentence(u);
        CHECK_FALSE(told.empty());
        CHECK(told.text(units::metric).find(" mm/s") != std::string::npos);
        CHECK(told.text(units::inches).find(" in/s") != std::string::npos);
        CHECK(told.text(units::inches).find("mm") == std::string::npos);
    }
}

TEST_CASE("a lure far from neutral sinks or rises for certain, and no chance is told") {
    document::Document d = invented::preset_named("estuary-150");
    auto s = uncertainty(d);
    REQUIRE(s.ok());
    CHECK(s->under_water.sinks > 0.999);
    CHECK(s->under_water.speed_m_s.low > 0.0);
    CHECK(s->under_water.speed_m_s.low < s->fall_m_s->value);
    CHECK(s->under_water.speed_m_s.high > s->fall_m_s->value);
    CHECK(output::near_neutral_sentence(s->under_water).empty());
    d = support::block();
    s = uncertainty(d);
    REQUIRE(s.ok());
    CHECK(s->under_water.rises > 0.999);
    CHECK(s->under_water.speed_m_s.high < 0.0);
    CHECK(output::near_neutral_sentence(s->under_water).empty());
}

TEST_CASE("a body so short and pointed, or higher than long, is said to have a wide range of speed") {
    const auto told = [](const document::Document& d) {
        const auto e = evaluate(d);
        REQUIRE(e.ok());
        int found = 0;
        for (const Problem& p : e->answers.warnings)
            found += p.code == ProblemCode::drag_unknown ? 1 : 0;
        return found;
    };
    document::Document d = support::block();
    CHECK(told(d) == 0);
    d.shape.back = {{0.0, 0.070}, {0.120, 0.070}};
    d.shape.belly = {{0.0, -0.070}, {0.120, -0.070}};
    CHECK(told(d) == 1);
    // So slow that the drag laws end.
    CHECK(told(small_lure(0.005e-3)) == 1);
    CHECK(told(small_lure(0.5e-3)) == 0);
}
