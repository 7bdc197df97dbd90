// Density of fresh and sea water against TEOS-10, IAPWS-95 and the check values of EOS-80.

#include "materials/water_density.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <cmath>

using namespace evenfall;
using Catch::Matchers::WithinAbs;

namespace {

struct SeaRow {
    double temperature_c;
    double salinity_g_kg;
    double density_kg_m3;
};
constexpr SeaRow teos10[] = {
#include "reference/teos10_table.inc"
};

struct FreshRow {
    double temperature_c;
    double density_kg_m3;
    double viscosity_pa_s;
};
constexpr FreshRow iapws[] = {
#include "reference/iapws_table.inc"
};

} // namespace

TEST_CASE("density is within 0.0085 kg/m³ of TEOS-10 from 0 to 40 °C and 0 to 40 g/kg (IOC, SCOR and IAPSO "
          "2010; frozen table)",
          "[water]") {
    double worst = 0.0;
    double worst_fresh = 0.0;
    for (const SeaRow& row : teos10) {
        const double error = std::fabs(*materials::water_density_kg_m3(row.temperature_c, row.salinity_g_kg) -
                                       row.density_kg_m3);
        worst = std::max(worst, error);
        if (row.salinity_g_kg == 0.0) worst_fresh = std::max(worst_fresh, error);
    }
    INFO("worst " << worst << " kg/m³, fresh " << worst_fresh << " kg/m³");
    CHECK(std::size(teos10) == 41 * 21);
    CHECK(worst < 0.0085);      // the error that materials/water_density.hpp claims; 0.02 was asked for
    CHECK(worst_fresh < 0.002); // likewise
}

TEST_CASE("fresh water's density is within 0.002 kg/m³ of IAPWS-95 (Wagner and Pruss 2002; frozen table)",
          "[water]") {
    for (const FreshRow& row : iapws) {
        INFO(row.temperature_c << " °C");
        CHECK_THAT(*materials::water_density_kg_m3(row.temperature_c, 0.0),
                   WithinAbs(row.density_kg_m3, 0.002));
    }
}

TEST_CASE("sea water of 35 g/kg at 20 °C weighs 1024.641 kg/m³, of 10 g/kg at 5 °C 1007.867 (TEOS-10, "
          "rho_t_exact at p = 0)",
          "[water]") {
    CHECK_THAT(*materials::water_density_kg_m3(20.0, 35.0), WithinAbs(1024.641, 0.0085));
    CHECK_THAT(*materials::water_density_kg_m3(5.0, 10.0), WithinAbs(1007.867, 0.0085));
    CHECK_THAT(*materials::water_density_kg_m3(20.0, 35.16504), WithinAbs(1024.766, 0.0085));
}

TEST_CASE("the polynomial gives the check values of EOS-80 at one atmosphere (UNESCO technical paper 44, "
          "Fofonoff and Millard 1983, second-hand)",
          "[water]") {
    constexpr double last_digit = 0.000006;
    CHECK_THAT(materials::eos80_density_kg_m3(0.0, 5.0), WithinAbs(999.96675, last_digit));
    CHECK_THAT(materials::eos80_density_kg_m3(0.0, 25.0), WithinAbs(997.04796, last_digit));
    CHECK_THAT(materials::eos80_density_kg_m3(35.0, 5.0), WithinAbs(1027.67547, last_digit));
    CHECK_THAT(materials::eos80_density_kg_m3(35.0, 25.0), WithinAbs(1023.34306, last_digit));
    CHECK_THAT(materials::eos80_density_kg_m3(40.0, 40.0), WithinAbs(1021.6788, 0.00006));
}
