#include "materials/water_density.hpp"
#include "materials/water_properties.hpp"
#include "materials/water_viscosity.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <limits>

using namespace evenfall;
using namespace evenfall::materials;
using Catch::Matchers::WithinAbs;

TEST_CASE("water outside 0 to 40 °C or 0 to 40 g/kg is refused by name and not clamped", "[water]") {
    const double nan = std::nan("");
    const double endless = std::numeric_limits<double>::infinity();
    for (double t : {-0.001, 40.001, nan, endless, -endless}) {
        const auto water = water_properties(t, 10.0, "/tub");
        REQUIRE_FALSE(water.ok());
        REQUIRE(water.problems().size() == 1);
        CHECK(water.problems()[0].path == "/tub/temperature_C");
        CHECK(water.problems()[0].limit.text(evenfall::units::metric) == "0 to 40 °C");
        CHECK(water.problems()[0].sentence.text(evenfall::units::metric) ==
              "The water temperature must be from 0 to 40 °C.");
        CHECK(water.problems()[0].code ==
              (std::isfinite(t) ? ProblemCode::out_of_range : ProblemCode::not_a_number));
        CHECK_FALSE(water_density_kg_m3(t, 10.0).ok());
        CHECK_FALSE(water_viscosity_pa_s(t, 10.0).ok());
    }
    for (double s : {-0.001, 40.001, nan, endless, -endless}) {
        const auto water = water_properties(10.0, s);
        REQUIRE_FALSE(water.ok());
        REQUIRE(water.problems().size() == 1);
        CHECK(water.problems()[0].path == "/water/salinity_g_kg");
        CHECK(water.problems()[0].limit.text(evenfall::units::metric) == "0 to 40 g/kg");
        CHECK(water.problems()[0].sentence.text(evenfall::units::metric) ==
              "The salt in the water must be from 0 to 40 g per kg.");
    }
    CHECK(water_properties(nan, nan).problems().size() == 2);
}

TEST_CASE("the limits themselves are water", "[water]") {
    for (double t : {0.0, 40.0}) {
        for (double s : {0.0, 40.0}) {
            const auto water = water_properties(t, s);
            REQUIRE(water.ok());
            CHECK(water->density_kg_m3 == *water_density_kg_m3(t, s));
            CHECK(water->viscosity_pa_s == *water_viscosity_pa_s(t, s));
            CHECK((water->density_kg_m3 > 992.0 && water->density_kg_m3 < 1033.0));
            CHECK((water->viscosity_pa_s > 0.65e-3 && water->viscosity_pa_s < 1.95e-3));
        }
    }
    CHECK(water_properties(-0.0, -0.0).ok());
}

TEST_CASE("salt makes water heavier and thicker", "[water]") {
    for (double t = 0.0; t <= 40.0; t += 5.0) {
        for (double s = 0.0; s < 40.0; s += 1.0) {
            CHECK(*water_density_kg_m3(t, s) < *water_density_kg_m3(t, s + 1.0));
            CHECK(*water_viscosity_pa_s(t, s) < *water_viscosity_pa_s(t, s + 1.0));
        }
    }
}

TEST_CASE("warmth makes water thinner, and fresh water lighter from 4 °C on and heavier below", "[water]") {
    for (double t = 0.0; t < 40.0; t += 0.5) {
        CHECK(*water_viscosity_pa_s(t, 0.0) > *water_viscosity_pa_s(t + 0.5, 0.0));
        if (t >= 4.0) CHECK(*water_density_kg_m3(t, 0.0) > *water_density_kg_m3(t + 0.5, 0.0));
        if (t <= 3.0) CHECK(*water_density_kg_m3(t, 0.0) < *water_density_kg_m3(t + 0.5, 0.0));
    }
}

TEST_CASE("absolute salinity is not practical salinity: 35 g/kg is lighter than sea water of practical "
          "salinity 35 by 0.125 kg/m³",
          "[water]") {
    // Reference sea water of practical salinity 35 holds 35.16504 g/kg.
    const double by_practical = eos80_density_kg_m3(35.0, 20.0 * 1.00024);
    CHECK_THAT(*water_density_kg_m3(20.0, 35.16504), WithinAbs(by_practical, 1e-9));
    CHECK_THAT(by_practical - *water_density_kg_m3(20.0, 35.0), WithinAbs(0.125, 0.001));
}
