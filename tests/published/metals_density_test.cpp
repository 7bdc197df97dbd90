// Densities of metals against published values and what a hole full of lead weighs.

#include "materials/solids.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <numbers>

using namespace evenfall::materials;
using Catch::Matchers::WithinAbs;

namespace {

double density(const char* id) {
    return find_solid(id)->density_kg_m3.value;
}

double flat_hole_of_lead_g(double diameter_m, double depth_m) {
    return density("lead") * std::numbers::pi / 4.0 * diameter_m * diameter_m * depth_m * 1e3;
}

} // namespace

TEST_CASE("lead, steel and aluminium agree with the rounded values 11.3, 7.8 and 2.7 (Wood Handbook "
          "FPL-GTR-190, 2010, ch. 4)",
          "[materials]") {
    CHECK_THAT(density("lead"), WithinAbs(11300.0, 50.0));
    CHECK_THAT(density("steel"), WithinAbs(7800.0, 50.0));
    CHECK_THAT(density("aluminium"), WithinAbs(2700.0, 50.0));
}

TEST_CASE("metals stand in their order of weight (CRC Handbook of Chemistry and Physics, from memory)",
          "[materials]") {
    const char* lightest_first[] = {"aluminium", "tin",     "steel",         "stainless", "brass",
                                    "copper",    "bismuth", "lead_antimony", "lead",      "tungsten_alloy",
                                    "tungsten"};
    for (std::size_t i = 1; i < std::size(lightest_first); ++i) {
        INFO(lightest_first[i]);
        CHECK(density(lightest_first[i - 1]) < density(lightest_first[i]));
    }
}

TEST_CASE("10 mm of lead weigh 3.591 g in a 1/4 in hole, 5.611 g in 5/16, 8.080 g in 3/8 (lead 11.34, CRC "
          "Handbook, from memory)",
          "[materials]") {
    CHECK_THAT(flat_hole_of_lead_g(0.0254 / 4.0, 0.010), WithinAbs(3.591, 0.0005));
    CHECK_THAT(flat_hole_of_lead_g(0.0254 * 5.0 / 16.0, 0.010), WithinAbs(5.611, 0.0005));
    CHECK_THAT(flat_hole_of_lead_g(0.0254 * 3.0 / 8.0, 0.010), WithinAbs(8.080, 0.0005));
}
