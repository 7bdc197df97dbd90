#include "unit/workshop/answered_joint.hpp"
#include "unit/workshop/hinged_block.hpp"
#include "workshop/chain.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>

using namespace evenfall;
using namespace evenfall::joints;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("a swung chain keeps its pins together and every segment its length", "[joints]") {
    const std::vector<Pin> pins{{0.05, 0.0}, {0.09, 0.001}, {0.12, 0.0}};
    const std::vector<double> swings{0.5, -0.2, 0.9};
    const auto stands = chain_poses(pins, swings);
    REQUIRE(stands.size() == 4);
    double turned = 0.0;
    for (std::size_t k = 0; k < pins.size(); ++k) {
        const Pin before = stands[k].of(pins[k].x_m, pins[k].y_m);
        const Pin behind = stands[k + 1].of(pins[k].x_m, pins[k].y_m);
        CHECK_THAT(before.x_m, WithinAbs(behind.x_m, 1e-15));
        CHECK_THAT(before.y_m, WithinAbs(behind.y_m, 1e-15));
        turned += swings[k];
        CHECK_THAT(stands[k + 1].turned_rad, WithinAbs(turned, 1e-15));
    }
}

TEST_CASE("a chain of even spacing and swing lies on the circle that its turn radius names", "[joints]") {
    // Pins 30 mm apart, each swung by 0.3 rad: the middles of the links touch a circle of radius
    // l/(2·tan(ψ/2)).
    std::vector<Pin> pins;
    for (int k = 1; k <= 6; ++k)
        pins.push_back({0.030 * k, 0.0});
    const std::vector<double> swings(6, 0.3);
    const double radius = turn_radius_m(0.030 * 7, pins, swings);
    CHECK_THAT(radius, WithinRel(0.030 / (2.0 * std::tan(0.15)), 1e-12));
    const auto stands = chain_poses(pins, swings);
    // Centre: to starboard (positive y) of the first link's middle.
    for (std::size_t k = 0; k < stands.size(); ++k) {
        const Pin middle = stands[k].of(0.015 + 0.030 * static_cast<double>(k), 0.0);
        CHECK_THAT(std::hypot(middle.x_m - 0.015, middle.y_m - radius), WithinAbs(radius, 1e-12));
    }
    CHECK(std::isinf(turn_radius_m(0.1, {}, {})));
}
