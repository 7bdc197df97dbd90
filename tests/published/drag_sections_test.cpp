// Drag coefficients of endless bars across the flow, and what free ends leave of them, against published
// values. Values "from memory" are recalled from the named book and were not read again.

#include "water/fall/drag.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>

using namespace evenfall::fall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

/// Drag coefficient of an elliptic section of unit width at a Reynolds number on its width.
double ellipse(double chord_per_width, double reynolds_on_width) {
    return section_drag_coefficient({0.0, 1.0, 1.0, chord_per_width, 2.0}, reynolds_on_width, {1.0, 1.0});
}

/// Drag of a fixed finite cylinder as a share of an endless one's, between rows of the table, in the
/// logarithm of l/d.
double finite_cylinder(double length_per_diameter) {
    constexpr double l_d[] = {1.0, 2.0, 5.0, 10.0, 40.0};
    constexpr double cd[] = {0.63, 0.68, 0.74, 0.82, 0.98};
    std::size_t i = 0;
    while (i < 3 && l_d[i + 1] < length_per_diameter)
        ++i;
    const double t = std::log(length_per_diameter / l_d[i]) / std::log(l_d[i + 1] / l_d[i]);
    return (cd[i] + t * (cd[i + 1] - cd[i])) / 1.20;
}

} // namespace

TEST_CASE("a circular section's drag lies in the band of the data at Re 10 000 (1.05 to 1.2; Wieselsberger's "
          "curve, from memory)",
          "[fall]") {
    CHECK(ellipse(1.0, 1e4) > 1.05);
    CHECK(ellipse(1.0, 1e4) < 1.20);
}

TEST_CASE("a circular section's drag lies in the band of the data at Re 100 000 (1.1 to 1.25; "
          "Wieselsberger's curve, from memory)",
          "[fall]") {
    CHECK(ellipse(1.0, 1e5) > 1.10);
    CHECK(ellipse(1.0, 1e5) < 1.25);
}

TEST_CASE("a circular section's drag at Re 1000 is a quarter high, not more (0.95 to 1.05; Wieselsberger's "
          "curve, from memory)",
          "[fall]") {
    // Where the data dip, the closure does not follow: the excess is stated in water/fall/drag.hpp and held
    // to that here.
    CHECK_THAT(ellipse(1.0, 1e3) / 1.00, WithinAbs(1.25, 0.05));
}

TEST_CASE("elliptic sections have 0.6, 0.35 and 0.25 at 2:1, 4:1 and 8:1 within 15 % (White, Fluid "
          "Mechanics, Table 7.2, from memory)",
          "[fall]") {
    // The table is for laminar flow around Re 1e4 to 1e5; its values are rounded to 0.05.
    CHECK_THAT(ellipse(2.0, 1e4), WithinRel(0.6, 0.15));
    CHECK_THAT(ellipse(4.0, 1e4), WithinRel(0.35, 0.15));
    CHECK_THAT(ellipse(8.0, 1e4), WithinRel(0.25, 0.15));
    CHECK_THAT(ellipse(1.0, 1e4), WithinRel(1.2, 0.15));
}

TEST_CASE("a 2:1 ellipse has about half the drag of a circle at Re 14 000 (Choi and Lee 2000, J. Fluids "
          "Struct. 14, abstract)",
          "[fall]") {
    CHECK_THAT(ellipse(2.0, 1.4e4) / ellipse(1.0, 1.4e4), WithinAbs(0.5, 0.05));
}

TEST_CASE("an ellipse twice as broad as high has about 1.6 (Hoerner 1965, ch. 3, from memory)", "[fall]") {
    CHECK_THAT(ellipse(0.5, 1e5), WithinRel(1.6, 0.05));
}

TEST_CASE("a thin plate across the flow has 1.98 (Hoerner 1965, ch. 3, from memory)", "[fall]") {
    CHECK_THAT(pressure_drag_coefficient({0.0, 1.0, 1.0, 1e-6, 2.0}), WithinAbs(1.98, 1e-6));
}

TEST_CASE("the low end of the end effect is a fixed cylinder of 6 to 10 widths (finite cylinders after "
          "Wieselsberger 1922, from memory)",
          "[fall]") {
    for (double l_d : {6.0, 7.0, 8.0, 9.0, 10.0}) {
        INFO("length " << l_d << " widths");
        CHECK_THAT(finite_cylinder(l_d), WithinAbs(end_effect.low, 0.04));
    }
    CHECK_THAT(finite_cylinder(10.0), WithinAbs(0.683, 0.0005));
    CHECK(finite_cylinder(10.0) > end_effect.low);
    CHECK(finite_cylinder(40.0) < end_effect.high);
    // A lure shorter than six widths has less than the band allows for.
    CHECK(finite_cylinder(5.0) < end_effect.low);
}

TEST_CASE("freely falling cylinders of 2 to 20 diameters lie inside the end effect's band (Isaacs and Thodos "
          "1967, from memory)",
          "[fall]") {
    // Cd = 0.99 (ρp/ρf)^0.12 (L/D)^−0.08 against 1.02 of an endless cylinder at Re 1e4; lures are hardly
    // denser than water.
    for (double l_d : {2.0, 5.0, 6.0, 7.0, 9.0, 20.0}) {
        const double share = 0.99 * std::pow(1.02, 0.12) * std::pow(l_d, -0.08) / 1.02;
        INFO("length " << l_d << " diameters: " << share);
        CHECK(share > end_effect.low);
        CHECK(share < end_effect.high);
    }
}
