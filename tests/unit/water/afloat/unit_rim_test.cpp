#include "water/afloat/unit_rim.hpp"

#include "body/polygon.hpp"
#include "body/superellipse.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <vector>

using namespace evenfall;
using namespace evenfall::afloat;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

/// The slow twin: a fine polygon through the rim, clipped edge by edge (Sutherland and Hodgman 1974), areas
/// by the shoelace.
struct Clipped {
    double area = 0.0, y = 0.0, z = 0.0;
};
Clipped clipped(const shape::SectionFamily& family, double parameter, double p, double q, double c,
                double limit) {
    struct Point {
        double y, z;
    };
    std::vector<Point> rim;
    constexpr int fine = 21000; // a multiple of 5 and 7: corners of the outlines below are met
    for (int i = 0; i <= fine; ++i) {
        const shape::RimPoint r = family.rim(parameter, -1.0 + 2.0 * i / fine);
        rim.push_back({r.y, r.z});
    }
    for (int i = fine - 1; i > 0; --i)
        rim.push_back({-rim[static_cast<std::size_t>(i)].y, rim[static_cast<std::size_t>(i)].z});
    const auto clip = [&rim](double ny, double nz, double d) {
        std::vector<Point> kept;
        for (std::size_t i = 0; i < rim.size(); ++i) {
            const Point a = rim[i];
            const Point b = rim[(i + 1) % rim.size()];
            const double fa = ny * a.y + nz * a.z - d;
            const double fb = ny * b.y + nz * b.z - d;
            if (fa <= 0.0) kept.push_back(a);
            if ((fa <= 0.0) != (fb <= 0.0)) {
                const double t = fa / (fa - fb);
                kept.push_back({a.y + t * (b.y - a.y), a.z + t * (b.z - a.z)});
            }
        }
        rim = kept;
    };
    clip(p, q, c);
    clip(1.0, 0.0, limit);
    clip(-1.0, 0.0, limit);
    Clipped out;
    for (std::size_t i = 0; i < rim.size(); ++i) {
        const Point a = rim[i];
        const Point b = rim[(i + 1) % rim.size()];
        const double cross = a.y * b.z - b.y * a.z;
        out.area += 0.5 * cross;
        out.y += cross * (a.y + b.y) / 6.0;
        out.z += cross * (a.z + b.z) / 6.0;
    }
    return out;
}

double worst_error(const shape::SectionFamily& family, double parameter, double limit) {
    const UnitRim rim(family, parameter);
    double worst = 0.0;
    for (double angle = 0.03; angle < 6.3; angle += 0.41) {
        for (const double c : {-0.9, -0.5, -0.1, 0.2, 0.6, 0.95}) {
            const double p = std::sin(angle);
            const double q = std::cos(angle);
            std::optional<RimLimit> edge;
            if (limit < 1.0) edge = rim.limit(limit);
            const UnitCut cut = rim.cut({p, q, c, q, -p}, edge ? &*edge : nullptr);
            const Clipped slow = clipped(family, parameter, p, q, c, limit < 1.0 ? limit : 2.0);
            for (const double off : {cut.area - slow.area, cut.moment_y - slow.y, cut.moment_z - slow.z})
                worst = std::max(worst, std::abs(off) / rim.area());
        }
    }
    return worst;
}

} // namespace

TEST_CASE("a whole unit rim has the closed-form area of its family") {
    for (const double n : {1.2, 2.0, 2.4, 4.0, 12.0}) {
        const shape::Superellipse family(n, n);
        CHECK_THAT(UnitRim(family, n).area(), WithinRel(family.moments(n).area, 1e-13));
    }
    const shape::Chamfered chamfered;
    CHECK_THAT(UnitRim(chamfered, 0.3).area(), WithinRel(4.0 - 2.0 * 0.09, 1e-13));
}

TEST_CASE("cut by any line, a superellipse keeps area and moments to 3e-5 of the whole for exponents 1.5 to "
          "4, to 1e-4 from 1.2 to 12") {
    for (const double n : {1.5, 2.0, 2.3, 3.0, 4.0})
        CHECK(worst_error(shape::Superellipse(n, n), n, 1.0) < 3e-5);
    for (const double n : {1.2, 8.0, 12.0})
        CHECK(worst_error(shape::Superellipse(n, n), n, 1.0) < 1e-4);
}

TEST_CASE("cut by any line, a polygon is exact") {
    for (const double cut : {0.0, 0.4, 1.0})
        CHECK(worst_error(shape::Chamfered{}, cut, 1.0) < 2e-12);
    // A waisted outline: the rim goes in and out of the water more than once.
    const shape::FreeOutline waisted({{0.0, -1.0},
                                      {0.5, -0.9},
                                      {0.6, -0.2},
                                      {1.0, 0.4},
                                      {0.7, 0.5},
                                      {0.3, 0.55},
                                      {0.25, 0.9},
                                      {0.0, 1.0}});
    CHECK(worst_error(waisted, 0.0, 1.0) < 2e-12);
}

TEST_CASE("a V relief leaves the middle of a section: |Y| within its limit, cut like the rest") {
    for (const double limit : {0.1, 0.5, 0.9}) {
        CHECK(worst_error(shape::Chamfered{}, 0.4, limit) < 2e-12);
        CHECK(worst_error(shape::Superellipse(2.3, 2.3), 2.3, limit) < 5e-5);
    }
    const UnitRim rim(shape::Superellipse(2.0, 2.0), 2.0);
    const double middle = 2.0 * (std::asin(0.5) + 0.5 * std::sqrt(0.75)); // of the unit circle between ±½
    CHECK_THAT(rim.limit(0.5).area, WithinAbs(middle, 1e-4));
    CHECK_THAT(rim.limit(0.0).area, WithinAbs(0.0, 1e-12));
}

TEST_CASE(
    "the waterline's moments are those of the chord, and the derivative of the area with the line's height") {
    const UnitRim rim(shape::Superellipse(2.0, 2.0), 2.0);
    const double p = std::sin(0.7);
    const double q = std::cos(0.7);
    const UnitCut cut = rim.cut({p, q, 0.3, q, -p}, nullptr);
    const double half = std::sqrt(1.0 - 0.09);
    CHECK(cut.crossed);
    CHECK_THAT(cut.chord[0], WithinAbs(2.0 * half, 1e-4));
    CHECK_THAT(cut.chord[1], WithinAbs(0.0, 1e-4));
    CHECK_THAT(cut.chord[2], WithinAbs(2.0 / 3.0 * half * half * half, 1e-4));
    const double step = 1e-5;
    const double rise =
        rim.cut({p, q, 0.3 + step, q, -p}, nullptr).area - rim.cut({p, q, 0.3 - step, q, -p}, nullptr).area;
    CHECK_THAT(rise / (2.0 * step), WithinRel(cut.chord[0], 1e-7));
}

TEST_CASE("a level line takes the short way and finds what the long way finds") {
    const UnitRim rim(shape::Superellipse(2.6, 2.6), 2.6);
    const UnitCut level = rim.cut({0.0, 0.8, 0.2, 1.0, 0.0}, nullptr);
    const UnitCut hardly = rim.cut({1e-12, 0.8, 0.2, 1.0, -1e-12}, nullptr);
    CHECK_THAT(level.area, WithinAbs(hardly.area, 1e-10));
    CHECK_THAT(level.moment_z, WithinAbs(hardly.moment_z, 1e-10));
    CHECK_THAT(level.chord[0], WithinAbs(hardly.chord[0], 1e-10));
    CHECK_THAT(level.chord[2], WithinAbs(hardly.chord[2], 1e-10));
    CHECK_THAT(hardly.moment_y, WithinAbs(0.0, 1e-10));
}

TEST_CASE("the reach of a section is its greatest height in a direction") {
    const UnitRim round(shape::Superellipse(2.0, 2.0), 2.0);
    for (const double angle : {0.0, 0.4, 1.0, 1.5, 2.0, 3.0})
        CHECK_THAT(round.reach(std::sin(angle), std::cos(angle), nullptr), WithinAbs(1.0, 1e-4));
    const UnitRim square(shape::Chamfered{}, 0.0);
    CHECK_THAT(square.reach(0.3, -0.8, nullptr), WithinAbs(1.1, 1e-15));
    const RimLimit limit = square.limit(0.5);
    CHECK_THAT(square.reach(0.3, 0.8, &limit), WithinAbs(0.95, 1e-15));
}
