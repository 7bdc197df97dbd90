#include "workshop/resin_mix.hpp"

#include "base/trade.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <limits>
#include <optional>
#include <string>
#include <utility>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

resin::Mix mixed(const resin::MixRequest& request) {
    const auto m = resin::mix(request);
    REQUIRE(m.ok());
    return *m;
}

resin::MixRequest coat_of(double grams) {
    resin::MixRequest r;
    r.on_lure_kg = units::kg_from_g(grams);
    r.ratio.resin = 2.0;
    r.ratio.hardener = 1.0;
    return r;
}

} // namespace

TEST_CASE("a mix loses what it is said to lose, and the rest is on the lures", "[resin]") {
    resin::MixRequest r = coat_of(2.6);
    r.lures = 4;
    const auto m = mixed(r);
    // By hand: 4 · 2.6 g = 10.4 g; over 0.65 = 16 g, two parts to one 10.667 and 5.333 g.
    CHECK_THAT(units::g_from_kg(m.all.mixed_kg), WithinAbs(16.0, 1e-12));
    CHECK_THAT(units::g_from_kg(m.lost_kg), WithinAbs(5.6, 1e-12));
    CHECK_THAT(units::g_from_kg(m.all.resin_kg), WithinAbs(32.0 / 3.0, 1e-12));
    CHECK_THAT(units::g_from_kg(m.all.hardener_kg), WithinAbs(16.0 / 3.0, 1e-12));
    CHECK_THAT(m.all.resin_kg + m.all.hardener_kg, WithinRel(m.all.mixed_kg, 1e-14));
}

TEST_CASE("without the label's ratio there is no mix, and a plain sentence asks for it", "[resin]") {
    for (const auto& [a, b] :
         {std::pair<std::optional<double>, std::optional<double>>{{}, {}}, {2.0, {}}, {{}, 1.0}}) {
        resin::MixRequest r = coat_of(2.6);
        r.ratio.resin = a;
        r.ratio.hardener = b;
        const auto m = resin::mix(r);
        REQUIRE_FALSE(m.ok());
        CHECK(m.problems().front().path == "/ratio");
        CHECK(m.problems().front().code == ProblemCode::missing_key);
        CHECK(m.problems().front().sentence.text(units::metric) ==
              "Enter the parts of resin and of hardener as your label has them: the ratio differs from resin "
              "to "
              "resin.");
    }
}

TEST_CASE("equal volumes are not equal grams: each part weighs its volume by its own density", "[resin]") {
    resin::MixRequest r = coat_of(6.5);
    r.ratio = {true, 1.0, 1.0, 1150.0, 980.0};
    const auto m = mixed(r);
    // By hand: 10 g of 1.15 + 0.98 = 2.13 g for a centimetre of each: 4.6948 cm³ each, 5.3991 g and 4.6009 g.
    CHECK_THAT(units::cm3_from_m3(m.all.resin_m3), WithinAbs(4.6948, 5e-5));
    CHECK_THAT(m.all.resin_m3, WithinRel(m.all.hardener_m3, 1e-14));
    CHECK_THAT(units::g_from_kg(m.all.resin_kg), WithinAbs(5.3991, 5e-5));
    CHECK_THAT(units::g_from_kg(m.all.hardener_kg), WithinAbs(4.6009, 5e-5));
}

TEST_CASE("with equal densities parts by volume are parts by weight", "[resin][properties]") {
    resin::MixRequest r = coat_of(3.0);
    r.ratio = {false, 3.0, 1.0, 1100.0, 1100.0};
    const double by_weight = mixed(r).all.resin_kg;
    r.ratio.by_volume = true;
    CHECK_THAT(mixed(r).all.resin_kg, WithinRel(by_weight, 1e-14));
}

TEST_CASE("twice the lures take twice the mix", "[resin][properties]") {
    for (const int lures : {1, 3, 7, 40}) {
        resin::MixRequest r = coat_of(1.7);
        r.lures = lures;
        const auto once = mixed(r);
        r.lures = 2 * lures;
        const auto twice = mixed(r);
        CHECK_THAT(twice.all.mixed_kg, WithinRel(2.0 * once.all.mixed_kg, 1e-14));
        CHECK_THAT(twice.all.hardener_kg, WithinRel(2.0 * once.all.hardener_kg, 1e-14));
        CHECK(twice.working_s == once.working_s);
    }
}

TEST_CASE("the rate rule: 23 to 33 °C leaves 0.48 of the time, 23 to 15 °C gives 1.86 times (formula sheet, "
          "Arrhenius, 55 kJ/mol)",
          "[resin][regression]") {
    CHECK_THAT(resin::time_ratio(33.0, 23.0), WithinAbs(0.48, 0.005));
    CHECK_THAT(resin::time_ratio(15.0, 23.0), WithinAbs(1.86, 0.005));
    CHECK(resin::time_ratio(23.0, 23.0) == 1.0);
    // Common practice, no source: ten degrees halve the time.
    CHECK_THAT(resin::time_ratio(30.0, 20.0), WithinAbs(0.5, 0.05));
    // There and back again is no change.
    CHECK_THAT(resin::time_ratio(12.0, 27.0) * resin::time_ratio(27.0, 12.0), WithinRel(1.0, 1e-14));
}

TEST_CASE("a mix is no larger than the label's batch and gone before it thickens", "[resin][properties]") {
    for (const double per_lure_min : {1.0, 3.0, 6.0, 11.0}) {
        for (const double grams : {0.8, 2.6, 5.2}) {
            for (const int lures : {1, 2, 5, 12}) {
                resin::MixRequest r = coat_of(grams);
                r.lures = lures;
                r.per_lure_s = per_lure_min * 60.0;
                const auto m = mixed(r);
                REQUIRE(m.lures_a_mix > 0);
                CHECK(m.lures_a_mix * r.per_lure_s <= m.working_s * (1.0 + 1e-9));
                CHECK(m.cup.mixed_kg <= r.label.batch_kg * (1.0 + 1e-9));
                CHECK(m.mixes * m.lures_a_mix >= lures);
                CHECK((m.mixes - 1) * m.lures_a_mix < lures);
                CHECK(m.warnings.empty());
            }
        }
    }
}

TEST_CASE("where it thickens before one lure is done, or one lure is too large a batch, no mix is offered "
          "and a sentence says why",
          "[resin]") {
    resin::MixRequest r = coat_of(2.0);
    r.per_lure_s = 3600.0;
    auto m = mixed(r);
    CHECK(m.mixes == 0);
    REQUIRE(m.warnings.size() == 1);
    CHECK(m.warnings.front().path == "/per_lure_min");
    r = coat_of(30.0);
    m = mixed(r);
    CHECK(m.mixes == 0);
    REQUIRE(m.warnings.size() == 1);
    CHECK(m.warnings.front().path == "/label/batch_g");
    // As many mixes as the batch goes into it: loss included.
    for (const int mixes : {2, 5}) {
        r.on_lure_kg = (mixes - 0.4) * r.label.batch_kg * (1.0 - r.loss);
        CHECK(mixed(r)
                  .warnings.front()
                  .sentence.text(evenfall::units::metric)
                  .find("from " + std::to_string(mixes) + " mixes") != std::string::npos);
        r.on_lure_kg = mixes * r.label.batch_kg * (1.0 - r.loss);
        CHECK(mixed(r)
                  .warnings.front()
                  .sentence.text(evenfall::units::metric)
                  .find("from " + std::to_string(mixes) + " mixes") != std::string::npos);
    }
}

TEST_CASE("a warm room never cures sooner than the label says, a cold one later", "[resin]") {
    resin::MixRequest r = coat_of(2.0);
    r.room_c = 35.0;
    CHECK(mixed(r).cure_s == r.label.cure_s);
    r.room_c = 15.0;
    // The rate rule's 1.86 from 23 to 15 °C.
    CHECK_THAT(mixed(r).cure_s / r.label.cure_s, WithinAbs(1.86, 0.005));
}

TEST_CASE("a mix off its limits is refused by the name of the field", "[resin]") {
    const auto refused = [](const resin::MixRequest& r, const char* path) {
        const auto m = resin::mix(r);
        REQUIRE_FALSE(m.ok());
        CHECK(m.problems().front().path == path);
        CHECK_FALSE(m.problems().front().sentence.empty());
    };
    resin::MixRequest r = coat_of(2.0);
    r.loss = 1.0;
    refused(r, "/loss");
    r = coat_of(0.0);
    refused(r, "/on_lure_g");
    r = coat_of(2.0);
    r.lures = 0;
    refused(r, "/lures");
    r = coat_of(2.0);
    r.ratio.hardener = std::numeric_limits<double>::quiet_NaN();
    refused(r, "/ratio/hardener");
    r = coat_of(2.0);
    r.label.pot_life_s = r.label.working_s / 2.0;
    refused(r, "/label/pot_life_min");
    r = coat_of(2.0);
    r.mix_c = 60.0;
    refused(r, "/mix_c");
}
