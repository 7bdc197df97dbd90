#include "evenfall.hpp"
#include "support/presets.hpp"
#include "workshop/stock.hpp"

#include "base/trade.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <numbers>
#include <string>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

stock::StockList listed(const document::Document& d, const stock::Stock& s) {
    const auto e = evaluate(d);
    REQUIRE(e.ok());
    const auto list = stock::list(d, *e, s);
    REQUIRE(list.ok());
    REQUIRE_FALSE(list->holes.empty());
    return *list;
}

} // namespace

TEST_CASE("rod, shot and sheet as listed weigh the fills of the ledger again", "[stock]") {
    const auto d = support::preset_named("millrace-170");
    const double rho = 11340.0, size = 0.003;
    const auto rod = listed(d, {stock::Form::rod, size, "lead"});
    CHECK_THAT(rod.length_m * std::numbers::pi / 4.0 * size * size * rho, WithinRel(rod.fill_kg, 1e-12));
    const auto sheet = listed(d, {stock::Form::sheet, size, "lead"});
    CHECK_THAT(sheet.area_m2 * size * rho, WithinRel(sheet.fill_kg, 1e-12));
    const auto shot = listed(d, {stock::Form::shot, size, "lead"});
    const double one = rho * std::numbers::pi / 6.0 * size * size * size;
    CHECK_THAT(shot.count * one - shot.over_kg, WithinRel(shot.fill_kg, 1e-12));
    for (const auto& h : shot.holes)
        CHECK(std::abs(h.over_kg) <= 0.5 * one * (1.0 + 1e-9));
}

TEST_CASE("a quarter-inch lead rod 10 mm long weighs 3.591 g, so 3.591 g take 10 mm of it (density of lead, "
          "CRC Handbook, from memory)",
          "[stock]") {
    auto d = support::preset_named("millrace-170");
    const auto list = listed(d, {stock::Form::rod, units::m_from_inch(0.25), "lead"});
    const auto& h = list.holes.front();
    CHECK_THAT(h.length_m / h.fill_kg, WithinRel(0.010 / 0.003591, 1e-3));
}

TEST_CASE("an ounce of hardened shot number 6 counts about 225, of number 8 about 410 (published shot "
          "tables, from memory)",
          "[stock][published]") {
    // Antimony makes shot lighter than soft lead: 11.0, as the table's hardened lead.
    const auto an_ounce = [](double number) {
        const double d = stock::shot_m(number);
        return units::kg_from_oz(1.0) / (11000.0 * std::numbers::pi / 6.0 * d * d * d);
    };
    CHECK_THAT(an_ounce(6), WithinRel(225.0, 0.03));
    CHECK_THAT(an_ounce(8), WithinRel(410.0, 0.03));
    CHECK_THAT(units::mm_from_m(stock::shot_m(9)), WithinAbs(2.032, 1e-9));
    CHECK(std::isnan(stock::shot_m(0)));
}

TEST_CASE("rod thicker than a hole does not enter it", "[stock]") {
    const auto d = support::preset_named("millrace-170");
    for (const double size : {0.001, 0.03}) {
        for (const auto& h : listed(d, {stock::Form::rod, size, ""}).holes)
            CHECK(*h.enters == (size < 0.01));
    }
}

TEST_CASE("stock off its limits or of no ballast is refused by name", "[stock]") {
    const auto d = support::preset_named("millrace-170");
    const auto e = evaluate(d);
    REQUIRE(e.ok());
    const auto size = stock::list(d, *e, {stock::Form::rod, 0.0, ""});
    REQUIRE_FALSE(size.ok());
    CHECK(size.problems().front().path == "/size_mm");
    const auto material = stock::list(d, *e, {stock::Form::rod, 0.003, "epoxy"});
    REQUIRE_FALSE(material.ok());
    CHECK(material.problems().front().path == "/material");
}
