// A reading that slipped is found, told, and left out until the carver says that it stands.

#include "base/trade.hpp"
#include "bench/uncertainty/posterior.hpp"
#include "unit/bench/uncertainty/bench_readings.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <string>

using namespace evenfall;
using namespace evenfall::support;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using document::ReadingKind;

namespace {

bool tells(const ReadingFit& fit, const char* words) {
    return std::any_of(fit.explanations.begin(), fit.explanations.end(), [&](const Sentence& why) {
        return why.text(units::metric).find(words) != std::string::npos;
    });
}

Uncertainty sure_of(const document::Document& document) {
    auto s = uncertainty(document);
    REQUIRE(s);
    return std::move(s).value();
}

/// What is expected of the lure at a stage, as the scale would show it [g].
struct Expected {
    double dry_g, held_g;
};
Expected expected(Stage stage) {
    const Uncertainty s = sure_of(millrace());
    const StagePrediction& at = s.stages[static_cast<std::size_t>(stage)];
    return {1e3 * at.mass_kg.value, 1e3 * at.displaced_kg.value};
}

void check_same(const Uncertainty& a, const Uncertainty& b) {
    CHECK_THAT(a.in_water_kg.value, WithinRel(b.in_water_kg.value, 1e-9));
    CHECK_THAT(a.in_water_kg.sigma, WithinRel(b.in_water_kg.sigma, 1e-9));
    CHECK_THAT(a.chances_corrected.both, WithinAbs(b.chances_corrected.both, 1e-9));
}

} // namespace

TEST_CASE("249 for 24.9 is left out of figures and advice, and the slipped point is suggested") {
    const auto [dry_g, held_g] = expected(Stage::carved);
    const document::Document right = with({held(Stage::carved, held_g)});
    const document::Document slipped = with({held(Stage::carved, held_g), dry(Stage::carved, 10.0 * dry_g)});
    const Uncertainty s = sure_of(slipped);
    const ReadingFit& fit = s.readings[1];
    CHECK(fit.left_out);
    CHECK_FALSE(fit.used);
    CHECK(fit.z_score > 8.0);
    CHECK(fit.warning.text(units::metric).find("left out") != std::string::npos);
    CHECK(tells(fit, "decimal point"));
    CHECK(s.readings[0].used);
    CHECK(s.readings[0].warning.empty());
    check_same(s, sure_of(right));
    const auto advised = do_now(slipped);
    const auto without = do_now(right);
    REQUIRE((advised && without));
    CHECK_THAT(advised->after.mass.kg, WithinRel(without->after.mass.kg, 1e-9));
    const auto next = for_next_lure(slipped);
    const auto next_without = for_next_lure(right);
    REQUIRE((next && next_without));
    CHECK_THAT(evaluate(*next)->answers.mass.kg, WithinRel(evaluate(*next_without)->answers.mass.kg, 1e-9));
}

TEST_CASE("a reading that is told to stand is believed again") {
    const auto [dry_g, held_g] = expected(Stage::carved);
    document::Document d = with({held(Stage::carved, held_g), dry(Stage::carved, 10.0 * dry_g)});
    d.log[1].stands = true;
    const Uncertainty s = sure_of(d);
    CHECK(s.readings[1].used);
    CHECK_FALSE(s.readings[1].left_out);
    CHECK(s.mass_kg.value > sure_of(millrace()).mass_kg.value + 0.05);
}

TEST_CASE("ounces put down as grams, and a depth in inches put down as millimetres, are suggested as such") {
    const auto [dry_g, held_g] = expected(Stage::carved);
    const Uncertainty ounces = sure_of(with({dry(Stage::carved, dry_g / 28.349523)}));
    CHECK(ounces.readings[0].left_out);
    CHECK(tells(ounces.readings[0], "ounces"));

    const auto [sealed_g, sealed_held_g] = expected(Stage::sealed);
    const double speed = sure_of(millrace()).stages_with_all[1].tub_fall_m_s->value;
    document::Reading fall = invented::with_all(invented::timed(Stage::sealed, 0.02)); // 20 inches, not mm
    fall.time_s = 20.0 * 0.0254 / speed + 0.3;
    const Uncertainty inches =
        sure_of(with({dry(Stage::sealed, sealed_g), held(Stage::sealed, sealed_held_g), fall}));
    CHECK(tells(inches.readings[2], "The other unit of length: 508.0 mm"));
    CHECK(inches.readings[2].left_out);
}

TEST_CASE("a wood farther off than was believed is told, and not taken for a slip") {
    const Uncertainty blank = sure_of(millrace());
    const StagePrediction& carved = blank.stages[static_cast<std::size_t>(Stage::carved)];
    const double dry_g = 1e3 * (carved.mass_kg.value + 5.0 * carved.mass_kg.sigma);
    const Uncertainty s = sure_of(with({dry(Stage::carved, dry_g)}));
    CHECK(s.readings[0].used);
    CHECK_FALSE(s.readings[0].left_out);
    CHECK_FALSE(s.readings[0].warning.empty());
    CHECK(s.mass_kg.value > blank.mass_kg.value);
}

TEST_CASE("two slips among right readings are both found, and none of the right ones goes") {
    const auto [dry_g, held_g] = expected(Stage::carved);
    const auto [sealed_g, sealed_held_g] = expected(Stage::sealed);
    const Uncertainty s =
        sure_of(with({dry(Stage::carved, dry_g), held(Stage::carved, held_g / 10.0),
                      dry(Stage::sealed, sealed_g * 10.0), held(Stage::sealed, sealed_held_g)}));
    CHECK_FALSE(s.readings[0].left_out);
    CHECK(s.readings[1].left_out);
    CHECK(s.readings[2].left_out);
    CHECK_FALSE(s.readings[3].left_out);
}
