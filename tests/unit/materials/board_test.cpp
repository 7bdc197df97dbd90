#include "materials/board.hpp"

#include "materials/moisture.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>

using namespace evenfall;
using namespace evenfall::materials;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

/// A board of 100 x 50 x 20 mm of this density.
Board of_density(double kg_m3, double moisture_percent = 12.0) {
    return {0.100, 0.050, 0.020, kg_m3 * 1e-4, moisture_percent};
}

const Wood& basswood() {
    return *find_wood("basswood");
}

} // namespace

TEST_CASE("a board's density is its mass over its three sides, and at another moisture as the handbook's "
          "equations move it",
          "[materials]") {
    const auto a = weigh_board(of_density(430.0), basswood(), 8.0);
    REQUIRE(a.ok());
    CHECK_THAT(a->density_kg_m3, WithinRel(430.0, 1e-12));
    CHECK(a->at_other_kg_m3 < a->density_kg_m3);
    // Basic gravity 0.40 (Wood Handbook FPL-GTR-282, 2021, eqs. 4-13 and 4-14, by hand): at 12 % 400/(1 −
    // 0.265·0.40·0.6)·1.12 = 478.428022 kg/m³, at 8 % 400/(1 − 0.265·0.40·22/30)·1.08 = 468.411161 kg/m³.
    CHECK_THAT(weigh_board(of_density(478.428022), basswood(), 8.0)->at_other_kg_m3,
               WithinAbs(468.411161, 1e-5));
    CHECK_THAT(weigh_board(of_density(430.0), basswood(), 12.0)->at_other_kg_m3, WithinRel(430.0, 1e-12));
}

TEST_CASE(
    "a board as dense as the table is usual, two and a half spreads off it is not, and either side says so",
    "[materials]") {
    const double usual = wood_density_kg_m3(basswood(), 12.0);
    CHECK_THAT(usual, WithinRel(1120.0 * 0.37,
                                1e-12)); // sg 0.37 at 12 %, Wood Handbook Table 5-3b, from a trade reprint
    CHECK_THAT(weigh_board(of_density(usual), basswood(), 12.0)->sigmas, WithinAbs(0.0, 1e-9));
    const double spread = specific_gravity(basswood()).spread;
    const auto heavy = weigh_board(of_density(usual * (1.0 + 2.5 * spread)), basswood(), 12.0);
    CHECK_THAT(heavy->sigmas, WithinAbs(2.5, 1e-9));
    CHECK(heavy->says == BoardComparison::heavier);
    CHECK(weigh_board(of_density(usual * (1.0 - 2.5 * spread)), basswood(), 12.0)->says ==
          BoardComparison::lighter);
    CHECK(weigh_board(of_density(usual * (1.0 + 1.9 * spread)), basswood(), 12.0)->says ==
          BoardComparison::usual);
}

TEST_CASE("the moisture that would explain a weight is the one at which an average piece weighs as much, "
          "where there is one",
          "[materials]") {
    for (const double percent : {2.0, 12.0, 25.0}) {
        const auto a = weigh_board(of_density(wood_density_kg_m3(basswood(), percent)), basswood(), 12.0);
        REQUIRE(a->would_explain_percent.has_value());
        CHECK_THAT(*a->would_explain_percent, WithinAbs(percent, 1e-4));
    }
    CHECK_FALSE(weigh_board(of_density(800.0), basswood(), 12.0)->would_explain_percent.has_value());
}

TEST_CASE("a board is refused by the name of the side or mass that cannot be", "[materials]") {
    const auto refused = [](Board b) {
        const auto a = weigh_board(b, basswood(), 12.0);
        return a.ok() ? std::string() : a.problems().front().path;
    };
    Board b = of_density(430.0);
    b.width_m = 0.0;
    CHECK(refused(b) == "/width_mm");
    b = of_density(430.0);
    b.mass_kg = std::nan("");
    CHECK(refused(b) == "/mass_g");
    CHECK(refused(of_density(430.0, 40.0)) == "/from_percent");
    CHECK(refused(of_density(4300.0)) == "/density_g_cm3");
}
