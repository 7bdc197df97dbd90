// Regression values of a prototype, not published truth: test body F (140 mm, eleven stations, n = 2.6), as
// printed by a throw-away program that integrated the same curves in another language. They guard against
// unnoticed change.

#include "body/body.hpp"
#include "support/drawn_shapes.hpp"
#include "support/round_bodies.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <numbers>

using namespace evenfall;
using namespace evenfall::shape;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("body F of the prototype: volume, centroid, skin (regression values, not published)", "[shape]") {
    const auto lines = drawn_lines(support::prototype_shape());
    REQUIRE(lines.ok());
    const auto body = cut(*lines, {});
    REQUIRE(body.ok());
    const Segment& s = body->segments[0];
    // Half the last digit printed.
    CHECK_THAT(s.volume_m3 * 1e6, WithinAbs(57.4377, 0.5e-4));
    CHECK_THAT(s.centroid_m.x * 1e3, WithinAbs(60.849, 0.5e-3));
    // The prototype left the end discs out.
    double discs_m2 = 0.0;
    for (const double x : {0.0, 0.140}) {
        const Station st = (*lines)->at(x);
        discs_m2 += st.half_width_m * st.half_height_m * (*lines)->family().moments(2.6).area;
    }
    CHECK_THAT((s.skin_m2 - discs_m2) * 1e4,
               WithinAbs(105.076, 1.5e-3)); // the prototype's own rule was good to 1e-5
}

TEST_CASE("body F cut at .38 L and .68 L, gap 2 mm (regression values, not published)", "[shape]") {
    const auto lines = drawn_lines(support::prototype_shape());
    REQUIRE(lines.ok());
    const auto body = cut(*lines, {{0.38 * 0.140, 0.002, 0.0, 0.0}, {0.68 * 0.140, 0.002, 0.0, 0.0}});
    REQUIRE(body.ok());
    const double volume_cm3[] = {24.5576, 21.9860, 8.8611};
    const double x_mm[] = {30.702, 73.222, 111.490};
    for (std::size_t k = 0; k < 3; ++k) {
        CHECK_THAT(body->segments[k].volume_m3 * 1e6, WithinAbs(volume_cm3[k], 0.5e-4));
        CHECK_THAT(body->segments[k].centroid_m.x * 1e3, WithinAbs(x_mm[k], 0.5e-3));
    }
}

TEST_CASE(
    "a drawing through few stations of an ellipsoid is not the ellipsoid (regression values, not published)",
    "[shape]") {
    // Relative error of volume by number of cosine-spaced stations, as the prototype printed it.
    const std::pair<int, double> printed[] = {{9, -1.8e-3}, {17, -1.3e-5}, {33, 6.3e-6}};
    for (const auto& [stations, error] : printed) {
        document::Shape shape;
        for (int k = 0; k < stations; ++k) {
            const double t = std::numbers::pi * k / (stations - 1);
            const double x = 0.07 * (1.0 - std::cos(t));
            const double r = k == 0 || k + 1 == stations ? 0.0 : std::sin(t);
            shape.back.push_back({k + 1 == stations ? 0.14 : x, 0.0125 * r});
            shape.belly.push_back({k + 1 == stations ? 0.14 : x, -0.0125 * r});
            shape.half_width.push_back({k + 1 == stations ? 0.14 : x, 0.0125 * r});
        }
        shape.section.curve() = {{0.0, 2.0}};
        const auto lines = drawn_lines(shape);
        REQUIRE(lines.ok());
        const auto body = cut(*lines, {});
        REQUIRE(body.ok());
        const double exact = 4.0 / 3.0 * std::numbers::pi * 0.07 * 0.0125 * 0.0125;
        CHECK_THAT(body->segments[0].volume_m3 / exact - 1.0, WithinAbs(error, 0.05 * std::abs(error)));
    }
}

TEST_CASE("a film of 0.4 mm on a spheroid of 70 and 12.5 mm makes 49.3932 cm³ (regression value of a "
          "prototype, not published)",
          "[shape]") {
    const auto body = cut(std::make_shared<support::Ellipsoid>(0.140, 0.0125, 0.0125, 16), {});
    REQUIRE(body.ok());
    const Segment& s = body->segments[0];
    const double t = 0.4e-3;
    const double grown =
        s.volume_m3 + s.skin_m2 * t + s.curvature_m * t * t + 4.0 / 3.0 * std::numbers::pi * t * t * t;
    CHECK_THAT(grown, WithinRel(4.93932e-5, 1e-5));
}
