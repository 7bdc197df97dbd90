#include "base/trade.hpp"
#include "bench/uncertainty/uncertainty.hpp"
#include "support/invented_lures.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("Drawn in portions or at once, the draws are the same; another seed draws others") {
    const document::Document document = invented::preset_named("millrace-170");
    const auto once = uncertainty_by_draws(document, 300, 5);
    auto run = DrawRun::start(document, 5);
    REQUIRE((once.ok() && run.ok()));
    for (const std::size_t k : {1u, 99u, 200u})
        run->run(k);
    CHECK(run->count() == 300);
    CHECK(run->result().in_water_kg.mean == once->in_water_kg.mean);
    CHECK(run->result().fall_m_s.high_95 == once->fall_m_s.high_95);
    CHECK(uncertainty_by_draws(document, 300, 6)->in_water_kg.mean != once->in_water_kg.mean);
}

TEST_CASE(
    "SplitMix64 gives its published first numbers for seed 1234567 (reference code of Vigna, from memory)") {
    // The reference counts from the seed itself; a draw's count starts at a mixed number, which for draw 0 of
    // this seed is 1234567.
    bench::Random random(2710597752463413364u, 0);
    for (const std::uint64_t published : {6457827717110365317u, 3203168211198807973u, 9817491932198370423u,
                                          4593380528125082431u, 16408922859458223821u})
        CHECK(random.next() == published);
}

TEST_CASE("Normal draws have the normal distribution's first moments") {
    bench::Random random(1, 0);
    double sum = 0.0;
    double square = 0.0;
    double fourth = 0.0;
    constexpr int count = 200'000;
    for (int i = 0; i < count; ++i) {
        const double z = random.normal();
        sum += z;
        square += z * z;
        fourth += z * z * z * z;
    }
    CHECK_THAT(sum / count, WithinAbs(0.0, 0.01));
    CHECK_THAT(square / count, WithinAbs(1.0, 0.015));
    CHECK_THAT(fourth / count, WithinAbs(3.0, 0.1));
}

TEST_CASE("First order and draws agree where the lure sinks clearly") {
    const document::Document document = invented::preset_named("estuary-150");
    const auto s = uncertainty(document);
    const auto d = uncertainty_by_draws(document, 20'000, 11);
    REQUIRE((s.ok() && d.ok()));
    CHECK_THAT(d->mass_kg.sigma, WithinRel(s->mass_kg.sigma, 0.02));
    CHECK_THAT(d->in_water_kg.sigma, WithinRel(s->in_water_kg.sigma, 0.02));
    CHECK_THAT(d->in_water_kg.mean, WithinAbs(s->in_water_kg.value, 0.02 * s->in_water_kg.sigma));
    CHECK_THAT(d->pitch_rad.sigma, WithinRel(s->pitch_rad.sigma, 0.03));
    CHECK_THAT(d->fall_m_s.sigma, WithinRel(s->fall_m_s->sigma, 0.05));
    CHECK_THAT(d->chances.fall, WithinAbs(s->chances_now.fall, 0.02));
    CHECK_THAT(d->chances.pitch, WithinAbs(s->chances_now.pitch, 0.02));
    CHECK_THAT(d->chances.both, WithinAbs(s->chances_now.both, 0.02));
}

TEST_CASE("A lure that leans is drawn at the hang that its evaluation tells") {
    document::Document document = invented::preset_named("estuary-150");
    document::Part weight;
    weight.name = "Weight to starboard";
    weight.material = "lead";
    weight.mass_kg = 0.006;
    weight.at_m = {0.055, 0.010, 0.0};
    document.parts.push_back(weight);
    const auto e = evaluate(document);
    const auto d = uncertainty_by_draws(document, 20'000, 4);
    REQUIRE((e.ok() && d.ok() && e->answers.roll_rad && e->answers.pitch_rad));
    REQUIRE(*e->answers.roll_rad > 10.0 * units::degree_rad);
    // The mean of a bent function of the draws lies a little off its value at their mean.
    CHECK_THAT(d->pitch_rad.mean, WithinAbs(*e->answers.pitch_rad, 0.1 * d->pitch_rad.sigma));
}

TEST_CASE(
    "A lure rolled by more than 20° is drawn at the pitch it hangs at, not at that of its unrolled arm") {
    document::Document document = invented::preset_named("estuary-150");
    document::Part weight;
    weight.material = "lead";
    weight.mass_kg = 0.012;
    weight.at_m = {0.020, 0.012, 0.0};
    document.parts.push_back(weight);
    const auto e = evaluate(document);
    const auto s = uncertainty(document);
    const auto d = uncertainty_by_draws(document, 20'000, 4);
    REQUIRE((e.ok() && s.ok() && d.ok() && e->answers.roll_rad && e->answers.pitch_rad));
    REQUIRE(*e->answers.roll_rad > 20.0 * units::degree_rad);
    const double hangs = *e->answers.pitch_rad;
    const double unrolled = std::atan2(e->answers.g_m.x - e->answers.b_m.x, e->answers.bg_m);
    REQUIRE(std::abs(unrolled - hangs) > 2.0 * units::degree_rad);
    CHECK_THAT(d->pitch_rad.median, WithinAbs(hangs, 0.25 * std::abs(unrolled - hangs)));
    CHECK_THAT(s->pitch_rad.value, WithinAbs(hangs, 1e-9));
}

TEST_CASE("Near neutral, first order fails the fall and the draws say so: half of them float") {
    // Speed goes as the root of in-water mass: its slope grows without bound, and a straight spread reaches
    // below zero.
    document::Document document = invented::preset_named("millrace-170");
    document.targets.by = document::TargetBy::in_water;
    document.targets.in_water_kg = 0.0001;
    const auto plan = plan_lead(document);
    REQUIRE((plan.ok() && plan->met));
    document = plan->document;
    document.targets.by = document::TargetBy::fall;
    document.targets.fall_m_s = 0.03;
    const auto s = uncertainty(document);
    const auto d = uncertainty_by_draws(document, 10'000, 3);
    REQUIRE((s.ok() && d.ok() && s->fall_m_s));
    CHECK_THAT(d->floats, WithinAbs(0.5, 0.05));
    CHECK_THAT(d->in_water_kg.sigma,
               WithinRel(s->in_water_kg.sigma, 0.03)); // the weight itself is near-linear still
    CHECK(s->fall_m_s->sigma > 5.0 * s->fall_m_s->value);
    CHECK(d->fall_m_s.sigma < 0.5 * s->fall_m_s->sigma);
    // The chances keep the curve, and agree all the same.
    CHECK_THAT(s->chances_now.fall, WithinAbs(d->chances.fall, 0.01));
}

TEST_CASE("Chances by quadrature agree with draws after readings that leave narrow spreads") {
    document::Document document = invented::preset_named("millrace-170");
    invented::Recipe recipe(document);
    bench::Random random(9, 9);
    const Eigen::VectorXd u = recipe.truth(random);
    for (document::Reading r : {invented::weighed(document::ReadingKind::dry_weight, Stage::sealed),
                                invented::weighed(document::ReadingKind::held_under, Stage::sealed)}) {
        REQUIRE(recipe.take(r, u, random));
        document.log.push_back(r);
    }
    const auto s = uncertainty(document);
    const auto d = uncertainty_by_draws(document, 20'000, 2);
    REQUIRE((s.ok() && d.ok()));
    CHECK_THAT(d->chances.fall, WithinAbs(s->chances_now.fall, 0.02));
    CHECK_THAT(d->chances.both, WithinAbs(s->chances_now.both, 0.02));
}
