// Viscosity of fresh and sea water against IAPWS R12-08 and sea-water tables.

#include "materials/water_viscosity.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

struct FreshRow {
    double temperature_c;
    double density_kg_m3;
    double viscosity_pa_s;
};
constexpr FreshRow iapws[] = {
#include "reference/iapws_table.inc"
};

} // namespace

TEST_CASE("fresh water's viscosity is within 0.02 % of IAPWS R12-08 (2008; frozen table)", "[water]") {
    for (const FreshRow& row : iapws) {
        INFO(row.temperature_c << " °C");
        CHECK_THAT(*materials::water_viscosity_pa_s(row.temperature_c, 0.0),
                   WithinRel(row.viscosity_pa_s, 2e-4));
    }
}

TEST_CASE("sea water's viscosity follows the closed form (Sharqawy, Lienhard and Zubair 2010, eqs. 22 and "
          "23, second-hand; evaluated apart)",
          "[water]") {
    struct Row {
        double salinity_g_kg;
        double mpa_s[6]; // at 5, 10 … 30 °C
    };
    const Row rows[] = {{0.0, {1.5181, 1.3060, 1.1377, 1.0018, 0.8902, 0.7973}},
                        {10.0, {1.5441, 1.3296, 1.1592, 1.0215, 0.9084, 0.8142}},
                        {35.0, {1.6193, 1.3968, 1.2199, 1.0766, 0.9588, 0.8606}}};
    for (const Row& row : rows) {
        for (int i = 0; i < 6; ++i) {
            INFO(row.salinity_g_kg << " g/kg, " << 5 * (i + 1) << " °C");
            CHECK_THAT(*materials::water_viscosity_pa_s(5.0 * (i + 1), row.salinity_g_kg) * 1e3,
                       WithinAbs(row.mpa_s[i], 0.00011));
        }
    }
}

TEST_CASE("sea water of 30 g/kg at 10 °C has 1.384 mPa·s within 1 % (fit of Dorsey 1940, Table 87)",
          "[water]") {
    CHECK_THAT(*materials::water_viscosity_pa_s(10.0, 30.0) * 1e3, WithinRel(1.383779, 0.01));
}
