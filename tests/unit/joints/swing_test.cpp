#include "joints/swing.hpp"

#include "shape/body.hpp"
#include "units/trade.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using joints::Pin;
using joints::Way;
using units::deg_from_rad;
using units::rad_from_deg;

namespace {

/// A straight bar of 20 × 36 mm, nearly square-edged, cut in the middle of its 140 mm.
shape::Body bar(const preset::Joint& joint, double half_width_aft_m = 0.010) {
    preset::Shape shape;
    shape.top = {{0.0, 0.018}, {0.14, 0.018}};
    shape.bottom = {{0.0, -0.018}, {0.14, -0.018}};
    shape.half_width = {{0.0, 0.010}, {0.0699, 0.010}, {0.0701, half_width_aft_m}, {0.14, half_width_aft_m}};
    shape.section.kind = preset::SectionKind::chamfered;
    shape.section.fullness = {{0.0, 0.0}};
    const auto lines = shape::drawn_lines(shape);
    REQUIRE(lines.ok());
    auto body = shape::cut(*lines, {joint});
    REQUIRE(body.ok());
    return *body;
}

double degrees(const shape::Body& body, double pin_x_m, double coat_m = 0.0) {
    const joints::Swing s = joints::swing(body, 0, Pin{pin_x_m, 0.0}, Way::starboard, coat_m);
    CHECK(s.stopped);
    return deg_from_rad(s.angle_rad);
}

preset::Joint joint(double gap_mm, double fore_deg, double aft_deg) {
    return {0.07, gap_mm / 1000.0, rad_from_deg(fore_deg), rad_from_deg(aft_deg), {}};
}

}  // namespace

TEST_CASE("a joint of equal faces swings 2·atan(gap/(2b) + tan of the relief)", "[joints]") {
    struct Case {
        double gap_mm, relief_deg;
    };
    for (const Case c : {Case{2, 0}, Case{2, 15}, Case{3, 15}, Case{2, 25}}) {
        const double closed = 2.0 * std::atan(c.gap_mm / 20.0 + std::tan(rad_from_deg(c.relief_deg)));
        INFO("gap " << c.gap_mm << " mm, relief " << c.relief_deg << "°");
        CHECK_THAT(degrees(bar(joint(c.gap_mm, c.relief_deg, c.relief_deg)), 0.07), WithinAbs(deg_from_rad(closed), 1e-6));
    }
}

TEST_CASE("one relieved face against a flat one swings as the corner that meets first says", "[joints]") {
    // By hand: 20° before, flat behind, pin midway in a gap of 2 mm, half width 10 mm. The aft corner (1, 10) turns until it
    // meets the fore flank x = −1 − y·tan20°, inside the flank's own corner.
    const double t = std::tan(rad_from_deg(20.0));
    double low = 0.0;
    double high = 1.5;
    for (int k = 0; k < 200; ++k) {
        const double psi = 0.5 * (low + high);
        const double x = std::cos(psi) - 10.0 * std::sin(psi);
        const double y = std::sin(psi) + 10.0 * std::cos(psi);
        (x > -1.0 - y * t ? low : high) = psi;
    }
    CHECK_THAT(degrees(bar(joint(2, 20, 0)), 0.07), WithinAbs(deg_from_rad(low), 1e-6));
    CHECK_THAT(deg_from_rad(low), WithinAbs(31.08, 0.01));  // the prototype's figure
}

TEST_CASE("a pin nearer to one face swings as the general corner equation says", "[joints]") {
    // The prototype: faces 0.5 and 1.5 mm from the pin, both 15°: 40.57°.
    CHECK_THAT(degrees(bar(joint(2, 15, 15)), 0.0695), WithinAbs(40.57, 0.01));
    CHECK_THAT(degrees(bar(joint(2, 15, 15)), 0.0705), WithinAbs(40.57, 0.01));
}

TEST_CASE("a coat on both faces narrows the swing as much as a gap narrower by both coats", "[joints]") {
    // Square faces: a coat of 0.3 mm moves each face by 0.3 mm; the corner is round, so it touches no sooner.
    const double coated = degrees(bar(joint(2, 0, 0)), 0.07, 0.0003);
    const double bare = degrees(bar(joint(2, 0, 0)), 0.07);
    const double narrower = deg_from_rad(2.0 * std::atan(1.4 / 20.0));
    CHECK(coated < bare);
    CHECK_THAT(coated, WithinAbs(narrower, 0.05));
    CHECK(coated >= narrower - 1e-6);
}

TEST_CASE("a lure alike on both sides swings alike both ways; a pin off the middle swings farther towards its own side", "[joints]") {
    const shape::Body body = bar(joint(2, 15, 15));
    const auto at = [&](double y_m, Way way) { return joints::swing(body, 0, Pin{0.07, y_m}, way).angle_rad; };
    CHECK_THAT(at(0.0, Way::port), WithinAbs(at(0.0, Way::starboard), 1e-12));
    CHECK_THAT(at(0.001, Way::port), WithinAbs(at(-0.001, Way::starboard), 1e-12));
    CHECK(at(0.001, Way::starboard) > at(0.0, Way::starboard));
    CHECK(at(0.001, Way::port) < at(0.0, Way::port));
}

TEST_CASE("more gap and more relief never swing less", "[joints]") {
    double before = 0.0;
    for (const double gap : {0.5, 1.0, 2.0, 4.0}) {
        const double now = degrees(bar(joint(gap, 10, 10)), 0.07);
        CHECK(now > before);
        before = now;
    }
    before = 0.0;
    for (const double relief : {0.0, 5.0, 15.0, 30.0}) {
        const double now = degrees(bar(joint(2, relief, relief)), 0.07);
        CHECK(now > before);
        before = now;
    }
}
