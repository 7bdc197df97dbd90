// Regression values of a prototype, not published truth: its worked ballast case and its two sentences on
// water. The case gives the holes' columns but not where they stand, so what can be held is the weight that
// they bring.

#include "base/trade.hpp"
#include "evenfall.hpp"
#include "materials/water_density.hpp"
#include "support/small_lures.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using units::m_from_mm;

namespace {

double in_water_g(const document::Document& d) {
    const auto e = evaluate(d);
    REQUIRE(e.ok());
    return units::g_from_kg(e->answers.in_water.kg);
}

/// What a column of lead brings in wood of 560 kg/m³: drilled and filled, less the same hole with its cap
/// alone.
double column_g(double diameter_mm, double column_mm) {
    document::Document d = support::block();
    d.wood.density_kg_m3 = 560.0;
    d.holes = {support::belly_hole(60, diameter_mm, 25)};
    d.holes[0].use = document::HoleUse::fixed;
    d.holes[0].depth_m = m_from_mm(2.0);
    const double capped = in_water_g(d);
    d.holes[0].depth_m = m_from_mm(2.0 + column_mm);
    d.holes[0].fill = document::Fill{"lead", std::nullopt, m_from_mm(column_mm), std::nullopt};
    return in_water_g(d) - capped;
}

} // namespace

TEST_CASE("columns of 7.82, 7.67, 7.43, 7.28 mm in 8 mm holes and 7.00 mm in a 6 mm one lift −17.498 g to "
          "0.995 g (regression value of a prototype)") {
    const double brought =
        column_g(8, 7.82) + column_g(8, 7.67) + column_g(8, 7.43) + column_g(8, 7.28) + column_g(6, 7.00);
    CHECK_THAT(
        -17.498 + brought,
        WithinAbs(0.995, 0.015)); // four columns printed to 0.01 mm are good to 0.011 g, the base to 0.001 g
}

TEST_CASE("water is an input: 60 cm³ gain 0.175 g from 4 to 25 °C and lose 1.61 g from fresh to sea water of "
          "1025 kg/m³ (regression values of a prototype)") {
    const auto at = [](double c) { return materials::water_density_kg_m3(c, 0.0).value(); };
    CHECK_THAT(60e-6 * (at(4.0) - at(25.0)) * 1e3, WithinAbs(0.175, 0.001));
    CHECK_THAT(60e-6 * (1025.0 - at(20.0)) * 1e3, WithinAbs(1.61, 0.005));
}
