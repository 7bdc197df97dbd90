#include "workshop/swing.hpp"

#include "base/trade.hpp"
#include "body/body.hpp"
#include "unit/water/afloat/forms.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <cmath>
#include <random>
#include <utility>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using joints::Pin;
using joints::SwingSide;
using units::deg_from_rad;
using units::rad_from_deg;

namespace {

/// A straight bar of 20 × 36 mm, nearly square-edged, cut in the middle of its 140 mm.
shape::Body bar(const document::Joint& joint, double half_width_aft_m = 0.010) {
    document::Shape shape;
    shape.back = {{0.0, 0.018}, {0.14, 0.018}};
    shape.belly = {{0.0, -0.018}, {0.14, -0.018}};
    shape.half_width = {{0.0, 0.010}, {0.0699, 0.010}, {0.0701, half_width_aft_m}, {0.14, half_width_aft_m}};
    shape.section.kind = document::SectionKind::chamfered;
    shape.section.curve() = {{0.0, 0.0}};
    const auto lines = shape::drawn_lines(shape);
    REQUIRE(lines.ok());
    auto body = shape::cut(*lines, {joint});
    REQUIRE(body.ok());
    return *body;
}

double degrees(const shape::Body& body, double pin_x_m, double coat_m = 0.0) {
    const joints::Swing s = joints::swing(body, 0, Pin{pin_x_m, 0.0}, SwingSide::starboard, coat_m);
    CHECK(s.stopped);
    return deg_from_rad(s.angle_rad);
}

document::Joint joint(double gap_mm, double fore_deg, double aft_deg) {
    return {0.07, gap_mm / 1000.0, rad_from_deg(fore_deg), rad_from_deg(aft_deg), {}};
}

struct Plan {
    double x, y;
};

/// The bar's joint from above as two convex outlines, in mm: where a vertex of one is inside the other, they
/// overlap.
struct Outlines {
    double fore_x, aft_x, fore_tan, aft_tan;
    Plan pin;

    [[nodiscard]] bool in_fore(Plan p) const {
        return p.x < fore_x - std::abs(p.y) * fore_tan && std::abs(p.y) < 10.0;
    }
    [[nodiscard]] bool in_aft(Plan p) const {
        return p.x > aft_x + std::abs(p.y) * aft_tan && std::abs(p.y) < 10.0;
    }
    [[nodiscard]] Plan turned(Plan p, double angle) const {
        const double c = std::cos(angle);
        const double s = std::sin(angle);
        return {pin.x + c * (p.x - pin.x) - s * (p.y - pin.y), pin.y + s * (p.x - pin.x) + c * (p.y - pin.y)};
    }
    [[nodiscard]] bool overlap(double angle) const {
        for (const double y : {-10.0, 0.0, 10.0}) {
            if (in_fore(turned({aft_x + std::abs(y) * aft_tan, y}, angle))) return true;
            if (in_aft(turned({fore_x - std::abs(y) * fore_tan, y}, -angle))) return true;
        }
        return false;
    }
    /// The first angle at which the aft outline, tail to starboard, runs into the fore one.
    [[nodiscard]] double first_touch() const {
        double from = 0.0;
        double to = 0.0;
        while (!overlap(to)) {
            if (to > 2.2) return to;
            from = to;
            to += rad_from_deg(0.05);
        }
        for (int k = 0; k < 60; ++k)
            (overlap(0.5 * (from + to)) ? to : from) = 0.5 * (from + to);
        return from;
    }
};

} // namespace

TEST_CASE("a pin anywhere near the joint swings until the two outlines from above first run into each other",
          "[joints]") {
    std::mt19937 random(11);
    const auto between = [&](double from, double to) {
        return std::uniform_real_distribution(from, to)(random);
    };
    for (const auto& [fore_deg, aft_deg] : {std::pair{20.0, 20.0}, {15.0, 30.0}, {35.0, 5.0}}) {
        const shape::Body body = bar(joint(2, fore_deg, aft_deg));
        for (int k = 0; k < 500; ++k) {
            const double x = between(-3.0, 3.0);
            const double y = between(-5.0, 5.0);
            INFO("reliefs " << fore_deg << "° and " << aft_deg << "°, pin " << x << " mm behind and " << y
                            << " mm to starboard");
            const Outlines seen{
                -1.0, 1.0, std::tan(rad_from_deg(fore_deg)), std::tan(rad_from_deg(aft_deg)), {x, y}};
            const joints::Swing s =
                joints::swing(body, 0, Pin{0.07 + x / 1000.0, y / 1000.0}, SwingSide::starboard);
            CHECK_THAT(deg_from_rad(s.angle_rad),
                       WithinAbs(std::min(deg_from_rad(seen.first_touch()), 120.0), 1e-6));
        }
    }
}

TEST_CASE("a pin that stands outside the wood near back and belly of an oval lure leaves the swing of its "
          "widest level",
          "[joints]") {
    const auto body = shape::cut(support::elliptic_bar_lines(0.14, 0.010, 0.018), {joint(2, 18, 18)});
    REQUIRE(body.ok());
    for (const double y : {0.0, 3.0, 4.0, 6.0}) {
        const double t = std::tan(rad_from_deg(18.0));
        const joints::Swing s = joints::swing(*body, 0, Pin{0.07, y / 1000.0}, SwingSide::starboard);
        INFO("pin " << y << " mm to starboard");
        CHECK_THAT(deg_from_rad(s.angle_rad),
                   WithinAbs(deg_from_rad(Outlines{-1.0, 1.0, t, t, {0.0, y}}.first_touch()), 0.01));
        CHECK_THAT(s.touches_z_m, WithinAbs(0.0, 0.0005));
    }
}

TEST_CASE("a joint of equal faces swings 2·atan(gap/(2b) + tan of the relief)", "[joints]") {
    struct Case {
        double gap_mm, relief_deg;
    };
    for (const Case c : {Case{2, 0}, Case{2, 15}, Case{3, 15}, Case{2, 25}}) {
        const double closed = 2.0 * std::atan(c.gap_mm / 20.0 + std::tan(rad_from_deg(c.relief_deg)));
        INFO("gap " << c.gap_mm << " mm, relief " << c.relief_deg << "°");
        CHECK_THAT(degrees(bar(joint(c.gap_mm, c.relief_deg, c.relief_deg)), 0.07),
                   WithinAbs(deg_from_rad(closed), 1e-6));
    }
}

TEST_CASE("one relieved face against a flat one swings as the corner that meets first says", "[joints]") {
    // By hand: 20° before, flat behind, pin midway in a gap of 2 mm, half width 10 mm. The aft corner (1, 10)
    // turns until it meets the fore flank x = −1 − y·tan20°, inside the flank's own corner.
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
    CHECK_THAT(deg_from_rad(low), WithinAbs(31.08, 0.01)); // the prototype's figure
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

TEST_CASE("a lure alike on both sides swings alike both ways; a pin off the middle swings farther towards "
          "its own side",
          "[joints]") {
    const shape::Body body = bar(joint(2, 15, 15));
    const auto at = [&](double y_m, SwingSide way) {
        return joints::swing(body, 0, Pin{0.07, y_m}, way).angle_rad;
    };
    CHECK_THAT(at(0.0, SwingSide::port), WithinAbs(at(0.0, SwingSide::starboard), 1e-12));
    CHECK_THAT(at(0.001, SwingSide::port), WithinAbs(at(-0.001, SwingSide::starboard), 1e-12));
    CHECK(at(0.001, SwingSide::starboard) > at(0.0, SwingSide::starboard));
    CHECK(at(0.001, SwingSide::port) < at(0.0, SwingSide::port));
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
