#include "materials/moisture.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("green wood of basic gravity 0.40, 0.32 and 0.45 weighs 478.4, 377.6 and 542.8 kg/m³ at 12 % (Wood "
          "Handbook FPL-GTR-282, 2021, eqs. 4-13 and 4-14, computed)",
          "[materials][published]") {
    // At fibre saturation, 30 %, the board has its green size and 1.30 times its oven-dry mass.
    CHECK_THAT(*materials::density_at_moisture(1300.0 * 0.40, 30.0, 12.0), WithinAbs(478.4, 0.05));
    CHECK_THAT(*materials::density_at_moisture(1300.0 * 0.32, 30.0, 12.0), WithinAbs(377.6, 0.05));
    CHECK_THAT(*materials::density_at_moisture(1300.0 * 0.45, 30.0, 12.0), WithinAbs(542.8, 0.05));
}

TEST_CASE("a board moved to another moisture and back has its first density again",
          "[materials][properties]") {
    for (const double density : {150.0, 420.0, 700.0}) {
        for (const double to : {0.0, 6.0, 19.0, 30.0}) {
            const double there = *materials::density_at_moisture(density, 12.0, to);
            CHECK_THAT(*materials::density_at_moisture(there, to, 12.0), WithinRel(density, 1e-13));
        }
    }
}

TEST_CASE("a moisture off its limits is refused by name", "[materials]") {
    const auto refused = materials::density_at_moisture(420.0, 12.0, 45.0);
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.problems().front().path == "/to_percent");
}
