// How good the chosen numbers of points are. The claims stand in core/body/body.hpp.

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
using support::degree;

namespace {

/// Skin between the planes of a segment by small triangles, each kept where its middle lies between the
/// flanks.
double skin_by_triangles(const Body& body, std::size_t segment) {
    const Segment& s = body.segments[segment];
    const double fore = segment > 0 ? std::tan(body.joints[segment - 1].relief_aft_rad) : 0.0;
    const double aft = segment < body.joints.size() ? std::tan(body.joints[segment].relief_fore_rad) : 0.0;
    const int slices = 400;
    const int steps = 480; // a multiple of every number of rim pieces, so that corners are points
    const auto point = [&](int i, int k) {
        const double x = s.x_from_m + (s.x_to_m - s.x_from_m) * i / slices;
        const Station st = body.lines->at(x);
        const RimPoint p = body.lines->family().rim(st.parameter, -1.0 + 2.0 * k / steps);
        return Vec3{x, st.half_width_m * p.y, st.centre_z_m + st.half_height_m * p.z};
    };
    const auto area = [&](const Vec3& a, const Vec3& b, const Vec3& c) {
        const Vec3 m = (a + b + c) / 3.0;
        if (m.x < s.x_from_m + fore * m.y || m.x > s.x_to_m - aft * m.y) return 0.0;
        const Vec3 u = b - a;
        const Vec3 v = c - a;
        return 0.5 * length({u.y * v.z - u.z * v.y, u.z * v.x - u.x * v.z, u.x * v.y - u.y * v.x});
    };
    double sum = 0.0;
    std::vector<Vec3> before;
    for (int i = 0; i <= slices; ++i) {
        std::vector<Vec3> now;
        for (int k = 0; k <= steps; ++k)
            now.push_back(point(i, k));
        for (std::size_t k = 0; i > 0 && k + 1 < now.size(); ++k) {
            sum += 2.0 * (area(before[k], before[k + 1], now[k]) + area(before[k + 1], now[k + 1], now[k]));
        }
        before = std::move(now);
    }
    return sum;
}

/// ∬H dA of a convex segment as the integral of its support function over all directions (Minkowski 1903),
/// the support being the farthest of many points of its surface.
double curvature_by_support(const Body& body, std::size_t segment) {
    const Segment& s = body.segments[segment];
    const double fore = segment > 0 ? std::tan(body.joints[segment - 1].relief_aft_rad) : 0.0;
    const double aft = segment < body.joints.size() ? std::tan(body.joints[segment].relief_fore_rad) : 0.0;
    std::vector<Vec3> points;
    const int slices = 160;
    for (int i = 0; i <= slices; ++i) {
        for (int k = 0; k <= 64; ++k) {
            // A place of the rim, then the run of x that the flanks leave there (by repeated substitution).
            const double tau = -1.0 + 2.0 * k / 64.0;
            double from = s.x_from_m;
            double to = s.x_to_m;
            for (int round = 0; round < 60; ++round) {
                const Station f = body.lines->at(from);
                const Station t = body.lines->at(to);
                from = s.x_from_m + fore * f.half_width_m * body.lines->family().rim(f.parameter, tau).y;
                to = s.x_to_m - aft * t.half_width_m * body.lines->family().rim(t.parameter, tau).y;
            }
            const double x = from + (to - from) * 0.5 * (1.0 - std::cos(std::numbers::pi * i / slices));
            const Station st = body.lines->at(x);
            const RimPoint p = body.lines->family().rim(st.parameter, tau);
            points.push_back({x, st.half_width_m * p.y, st.centre_z_m + st.half_height_m * p.z});
        }
    }
    double sum = 0.0;
    const int n = 48;
    for (int i = 0; i < n; ++i) {
        const double mu = -1.0 + 2.0 * (i + 0.5) / n;
        const double r = std::sqrt(1.0 - mu * mu);
        for (int k = 0; k < n; ++k) {
            // Starboard directions: port ones give the same.
            const double phi = -0.5 * std::numbers::pi + std::numbers::pi * (k + 0.5) / n;
            const Vec3 direction{mu, r * std::cos(phi), r * std::sin(phi)};
            double farthest = -1.0;
            for (const Vec3& p : points)
                farthest = std::max(farthest, dot(direction, p));
            sum += farthest;
        }
    }
    return sum * 4.0 * std::numbers::pi / (n * n);
}

} // namespace

TEST_CASE(
    "skin of relieved segments is that of small triangles, for every kind of section and every exponent",
    "[shape]") {
    std::vector<document::Section> sections = support::section_kinds();
    for (const double n : {1.2, 1.5, 4.0, 8.0, 12.0})
        sections.push_back({document::SectionKind::rounded, {{0.0, n}}, {}, {}});
    for (const document::Section& section : sections) {
        document::Shape shape = support::drawn_minnow();
        shape.section = section;
        const auto lines = drawn_lines(shape);
        REQUIRE(lines.ok());
        const auto body = cut(*lines, support::two_joints());
        REQUIRE(body.ok());
        INFO("kind " << static_cast<int>(section.kind) << " parameter " << section.curve().front().value);
        // The middle segment has no end disc. Triangles err by up to 2e-4 along the flanks.
        CHECK_THAT(body->segments[1].skin_m2, WithinRel(skin_by_triangles(*body, 1), 8e-4));
        const auto flat = cut(*lines, {{0.054, 0.002, 0.0, 0.0}, {0.096, 0.002, 0.0, 0.0}});
        REQUIRE(flat.ok());
        const double n = section.curve().front().value;
        const bool is_usual = section.kind != document::SectionKind::rounded || (n >= 1.5 && n <= 8.0);
        CHECK_THAT(flat->segments[1].skin_m2, WithinRel(skin_by_triangles(*flat, 1), is_usual ? 1e-4 : 7e-4));
    }
}

TEST_CASE("curvature of cut and relieved ellipsoids is the integral of their support (Minkowski 1903)",
          "[shape]") {
    const auto lines = std::make_shared<support::Ellipsoid>(0.150, 0.012, 0.022, 12);
    const auto body =
        cut(lines, {{0.055, 0.002, 20.0 * degree, 35.0 * degree}, {0.100, 0.002, 0.0, 15.0 * degree}});
    REQUIRE(body.ok());
    for (std::size_t k = 0; k < 3; ++k) {
        INFO("segment " << k);
        // 48 × 48 directions and some ten thousand points err by 1e-3.
        CHECK_THAT(body->segments[k].curvature_m, WithinRel(curvature_by_support(*body, k), 6e-3));
    }
}
