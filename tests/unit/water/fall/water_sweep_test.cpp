#include "water/fall/water_sweep.hpp"

#include "support/falling_bodies.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <cmath>

using namespace evenfall;
using namespace evenfall::fall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

FallingLure still_at(double temperature_c) {
    const auto water = materials::water_properties(temperature_c, 0.0).value();
    return support::prototype_lure(0.0, 0.001, 0.004, water);
}

} // namespace

TEST_CASE("a lure that hangs still at 8 °C weighs 0.094 g in water at 20 °C and falls (densities 999.849 and "
          "998.207, IAPWS-95)",
          "[fall]") {
    const auto sweep = water_sweep(still_at(8.0), {8.0, 0.0}, 41);
    REQUIRE(sweep.ok());
    REQUIRE(sweep->by_temperature.size() == 41);
    const SweepPoint& cold = sweep->by_temperature[8];
    const SweepPoint& warm = sweep->by_temperature[20];
    CHECK_THAT(cold.in_water_kg, WithinAbs(0.0, 1e-9));
    CHECK_FALSE(cold.vertical_m_s);
    CHECK_THAT(warm.temperature_c, WithinAbs(20.0, 1e-12));
    // Both densities are good to 0.002 kg/m³ and 57 cm³ make 0.2 mg of that.
    CHECK_THAT(warm.in_water_kg, WithinAbs((999.849 - 998.207) * support::prototype_volume_m3, 3e-7));
    REQUIRE(warm.vertical_m_s);
    CHECK(*warm.vertical_m_s > 0.0);
    // Wood that grows by 6e-5 a kelvin takes 12·6e-5 of the volume's water back: nearly half of it.
    CHECK_THAT(warm.in_water_kg - warm.swelled_in_water_kg,
               WithinRel(998.207 * support::prototype_volume_m3 * 12.0 * 6e-5, 1e-4));
    CHECK_THAT(cold.swelled_in_water_kg, WithinAbs(cold.in_water_kg, 1e-12));
}

TEST_CASE("the temperatures at which it hangs still lie either side of water's densest, and are none for a "
          "lure far from it",
          "[fall]") {
    const auto sweep = water_sweep(still_at(8.0), {8.0, 0.0});
    REQUIRE(sweep.ok());
    REQUIRE(sweep->still_at_c.size() == 2);
    CHECK((sweep->still_at_c[0] > 0.0 && sweep->still_at_c[0] < 3.98));
    CHECK_THAT(sweep->still_at_c[1], WithinAbs(8.0, 1e-4));
    CHECK(water_sweep(support::prototype_lure(0.005, 0.001, 0.004), {20.0, 0.0})->still_at_c.empty());
    CHECK(water_sweep(still_at(25.0), {25.0, 0.0})->still_at_c.size() == 1);
}

TEST_CASE("salt lifts: along the salinity in-water mass falls and a sinking lure comes to float", "[fall]") {
    const auto sweep = water_sweep(support::prototype_lure(0.001, 0.001, 0.004), {20.0, 0.0}, 11);
    REQUIRE(sweep.ok());
    const auto& list = sweep->by_salinity;
    REQUIRE(list.size() == 11);
    CHECK(std::is_sorted(list.begin(), list.end(),
                         [](const auto& a, const auto& b) { return a.in_water_kg > b.in_water_kg; }));
    CHECK(list.front().vertical_m_s.value() > 0.0);
    CHECK(list.back().vertical_m_s.value() < 0.0);
}

TEST_CASE("water off its limits and silly counts are refused", "[fall]") {
    const FallingLure d = still_at(8.0);
    CHECK(water_sweep(d, {-1.0, 0.0}).problems().front().path == "/water/temperature_C");
    CHECK(water_sweep(d, {8.0, std::nan("")}).problems().front().path == "/water/salinity_g_kg");
    CHECK(water_sweep(d, {8.0, 0.0}, 1).problems().front().path == "/points");
    CHECK(water_sweep(d, {8.0, 0.0}, 100000).problems().front().path == "/points");
}
