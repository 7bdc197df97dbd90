#include "water/fall/drag.hpp"

#include "body/superellipse.hpp"
#include "support/bars.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

using namespace evenfall;
using namespace evenfall::fall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr materials::WaterProperties tap{998.2, 1.0016e-3};

/// A/(4ab) of a superellipse (closed form with gamma functions).
double filled_share(double n) {
    return std::tgamma(1.0 + 1.0 / n) * std::tgamma(1.0 + 1.0 / n) / std::tgamma(1.0 + 2.0 / n);
}

Strip strip(double width_m, double chord_m, double exponent = 2.0) {
    return {0.0, 1.0, width_m, chord_m, exponent};
}

} // namespace

TEST_CASE("the superellipse that fills as much of its box has the section's own exponent within 0.2 %",
          "[fall]") {
    for (double n = 1.0; n <= 50.0; n *= 1.01) {
        INFO("n = " << n);
        CHECK_THAT(equivalent_exponent(filled_share(n)), WithinRel(n, 0.002));
        CHECK_THAT(pressure_drag_coefficient(strip(0.02, 0.035, equivalent_exponent(filled_share(n)))),
                   WithinAbs(pressure_drag_coefficient(strip(0.02, 0.035, n)), 0.001));
    }
    CHECK(equivalent_exponent(1.0) == 200.0);
    CHECK(equivalent_exponent(0.2) == equivalent_exponent(0.5));
    CHECK_THAT(equivalent_exponent(0.5), WithinRel(1.0, 0.002));
}

TEST_CASE(
    "a section 20 mm wide and 35 mm high has Cd 0.74 at Re 4500 as an ellipse and 0.90 with exponent 2.6 "
    "(regression values of a prototype, not published truth)",
    "[fall]") {
    const double speed = 4500.0 * tap.viscosity_pa_s / (tap.density_kg_m3 * 0.035);
    CHECK_THAT(section_drag_coefficient(strip(0.020, 0.035), speed, tap), WithinAbs(0.74, 0.005));
    CHECK_THAT(section_drag_coefficient(strip(0.020, 0.035, 2.6), speed, tap), WithinAbs(0.90, 0.005));
}

TEST_CASE("the drag coefficient has neither step nor kink where a section turns from tall to broad",
          "[fall]") {
    const double h = 1e-5;
    const double tall = pressure_drag_coefficient(strip(1.0, 1.0 + h));
    const double round = pressure_drag_coefficient(strip(1.0, 1.0));
    const double broad = pressure_drag_coefficient(strip(1.0, 1.0 - h));
    CHECK_THAT(round, WithinAbs(1.1, 1e-12));
    CHECK_THAT((tall - round) / h, WithinAbs((round - broad) / h, 1e-3));
}

TEST_CASE("broader, fuller and slower sections have the larger drag coefficient", "[fall]") {
    for (double width = 0.2; width < 10.0; width *= 1.1) {
        CHECK(pressure_drag_coefficient(strip(width, 1.0)) <
              pressure_drag_coefficient(strip(width * 1.1, 1.0)));
    }
    for (double n = 2.0; n < 12.0; n += 0.5) {
        CHECK(pressure_drag_coefficient(strip(1.0, 1.5, n)) <
              pressure_drag_coefficient(strip(1.0, 1.5, n + 0.5)));
    }
    CHECK(pressure_drag_coefficient(strip(1.0, 1.5, 1.3)) == pressure_drag_coefficient(strip(1.0, 1.5, 2.0)));
    for (double v = 0.01; v < 1.0; v *= 1.5) {
        CHECK(section_drag_coefficient(strip(0.02, 0.035), v, tap) >
              section_drag_coefficient(strip(0.02, 0.035), v * 1.5, tap));
    }
}

TEST_CASE("friction's part of the drag coefficient goes with the inverse root of speed", "[fall]") {
    const Strip s = strip(0.02, 0.035);
    CHECK_THAT(friction_drag_coefficient(s, 0.4, tap),
               WithinRel(friction_drag_coefficient(s, 0.1, tap) / 2.0, 1e-14));
    CHECK_THAT(section_drag_coefficient(s, 0.1, tap),
               WithinRel(friction_drag_coefficient(s, 0.1, tap) + pressure_drag_coefficient(s), 1e-14));
}

TEST_CASE("strips cover the body end to end once", "[fall]") {
    const support::EllipsoidLines lines(0.150, 0.012, 0.022);
    const auto slices = strips(lines);
    REQUIRE(slices.size() == 48);
    double length = 0.0;
    double seen_from_above = 0.0;
    for (std::size_t i = 0; i < slices.size(); ++i) {
        length += slices[i].length_m;
        seen_from_above += slices[i].length_m * slices[i].width_m;
        CHECK((slices[i].x_m > 0.0 && slices[i].x_m < 0.150));
        if (i > 0) CHECK(slices[i].x_m > slices[i - 1].x_m);
        CHECK_THAT(slices[i].chord_m / slices[i].width_m, WithinRel(22.0 / 12.0, 1e-12));
        CHECK_THAT(slices[i].exponent, WithinRel(2.0, 0.002));
    }
    // Midpoint rule on a sine half wave: 1 + (π/48)²/24 of it. An ellipse's outline it integrates to the last
    // digits.
    CHECK_THAT(length, WithinRel(0.150, 2e-4));
    CHECK_THAT(seen_from_above, WithinRel(std::numbers::pi * 0.075 * 0.012, 1e-12));
}

TEST_CASE("where a body has no width there is no strip", "[fall]") {
    const support::BarLines bar(0.100, 0.0, 0.010, 2.0);
    CHECK(strips(bar).empty());
}
