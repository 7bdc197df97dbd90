#include "body/body.hpp"
#include "support/drawn_body.hpp"
#include "support/round_bodies.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <limits>

using namespace evenfall;
using namespace evenfall::shape;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

const double endless = std::numeric_limits<double>::infinity();

/// Wood inside a box by small cubes.
BoxCut by_cubes(const Body& body, std::size_t segment, Box box) {
    const Segment& s = body.segments[segment];
    const double fore = segment > 0 ? std::tan(body.joints[segment - 1].relief_aft_rad) : 0.0;
    const double aft = segment < body.joints.size() ? std::tan(body.joints[segment].relief_fore_rad) : 0.0;
    box.y_from_m = std::max(box.y_from_m, -0.02);
    box.y_to_m = std::min(box.y_to_m, 0.02);
    BoxCut sum;
    const int n = 600;
    const double dx = (box.x_to_m - box.x_from_m) / n;
    const double dy = (box.y_to_m - box.y_from_m) / n;
    for (int i = 0; i < n; ++i) {
        for (int k = 0; k < n; ++k) {
            const double x = box.x_from_m + (i + 0.5) * dx;
            const double y = box.y_from_m + (k + 0.5) * dy;
            if (x < s.x_from_m + fore * std::abs(y) || x > s.x_to_m - aft * std::abs(y)) continue;
            const SkinHeights skin = skin_heights(*body.lines, x, y);
            const double top = std::min(skin.back_z_m, box.z_to_m);
            const double bottom = std::max(skin.belly_z_m, box.z_from_m);
            if (!(top > bottom)) continue;
            const double v = dx * dy * (top - bottom);
            sum.volume_m3 += v;
            sum.centroid_m += v * Vec3{x, y, 0.5 * (top + bottom)};
        }
    }
    if (sum.volume_m3 > 0.0) sum.centroid_m = sum.centroid_m / sum.volume_m3;
    return sum;
}

} // namespace

TEST_CASE("skin heights and skin half width tell the same surface", "[shape]") {
    for (const document::Section& section : support::section_kinds()) {
        const Body body = support::minnow_body(section, {});
        for (const double x : {0.004, 0.033, 0.071, 0.12}) {
            const Station s = body.lines->at(x);
            for (const double share : {0.2, 0.5, 0.8}) {
                const SkinHeights skin = skin_heights(*body.lines, x, share * s.half_width_m);
                CHECK(skin.back_z_m > skin.belly_z_m);
                const SkinHeights port = skin_heights(*body.lines, x, -share * s.half_width_m);
                CHECK(port.back_z_m == skin.back_z_m);
                const double flat =
                    s.centre_z_m + s.half_height_m * (1.0 - 1e-9); // on a flat back any width goes
                if (skin.back_z_m < flat)
                    CHECK_THAT(skin_half_width(*body.lines, x, skin.back_z_m),
                               WithinAbs(share * s.half_width_m, 1e-9));
            }
            CHECK(std::isnan(skin_heights(*body.lines, x, 1.01 * s.half_width_m).back_z_m));
            CHECK(skin_half_width(*body.lines, x, s.centre_z_m + 1.01 * s.half_height_m) == 0.0);
        }
        for (const double x : {-0.001, 0.141, std::numeric_limits<double>::quiet_NaN()}) {
            CHECK(std::isnan(skin_heights(*body.lines, x, 0.0).back_z_m));
            CHECK(skin_half_width(*body.lines, x, 0.0) == 0.0);
        }
    }
}

TEST_CASE("a column's mean skin height is the mean over its disc", "[shape]") {
    const support::Ellipsoid body(0.15, 0.012, 0.022, 12);
    for (const double x : {0.05, 0.075, 0.11}) {
        const double d = 0.009;
        const ColumnSkin column = column_skin(body, x, 0.001, d);
        double mean = 0.0;
        const int rings = 200;
        const int spokes = 200;
        for (int i = 0; i < rings; ++i) {
            const double r = 0.5 * d * std::sqrt((i + 0.5) / rings);
            for (int k = 0; k < spokes; ++k) {
                const double t = 2.0 * std::numbers::pi * (k + 0.5) / spokes;
                mean += skin_heights(body, x + r * std::cos(t), 0.001 + r * std::sin(t)).back_z_m /
                        (rings * spokes);
            }
        }
        // Degree 5: what is left is the skin's sixth-order part, 5 µm on this narrow back (0.1 % of a 5 mm
        // column).
        CHECK_THAT(column.back_mean_z_m, WithinAbs(mean, 5e-6));
        CHECK_THAT(column.back_axis_z_m, WithinAbs(skin_heights(body, x, 0.001).back_z_m, 1e-15));
        CHECK(column.back_mean_z_m < column.back_axis_z_m);
        CHECK_THAT(column.belly_mean_z_m, WithinAbs(-column.back_mean_z_m, 1e-15));
    }
    CHECK(std::isnan(column_skin(body, 0.01, 0.003, 0.01).back_mean_z_m));
}

TEST_CASE("wood in a box is what small cubes say: inside, through the belly, at a relieved face, across the "
          "whole width",
          "[shape]") {
    const Box boxes[] = {
        {0.056, 0.064, -0.002, 0.002, -0.004, 0.004}, // eye pocket in a relieved fore face, inside the wood
        {0.080, 0.094, -0.002, 0.002, -endless, endless}, // slot right through
        {0.075, 0.095, -0.004, 0.003, -endless, 0.002},   // through the belly, off the middle
        {0.060, 0.090, -0.050, 0.050, -0.020, -0.005},    // across: sides, belly and flank bound it
        {0.050, 0.058, -0.050, 0.050, 0.000, 0.010},      // reaches over the flank into the gap
    };
    for (const document::Section& section : support::section_kinds()) {
        const Body body = support::minnow_body(section, support::two_joints());
        for (const Box& box : boxes) {
            INFO("x from " << box.x_from_m << " z from " << box.z_from_m << " kind "
                           << static_cast<int>(section.kind));
            const BoxCut cut = box_in_segment(body, 1, box);
            const BoxCut cubes = by_cubes(body, 1, box);
            // 600 × 600 cubes err by up to 2e-4 where a side cuts through them.
            CHECK_THAT(cut.volume_m3, WithinRel(cubes.volume_m3, 1e-3));
            CHECK_THAT(cut.centroid_m.x, WithinAbs(cubes.centroid_m.x, 1e-5));
            CHECK_THAT(cut.centroid_m.y, WithinAbs(cubes.centroid_m.y, 1e-5));
            CHECK_THAT(cut.centroid_m.z, WithinAbs(cubes.centroid_m.z, 1e-5));
        }
    }
}

TEST_CASE(
    "a box within the wood is its own volume, one around the segment is the segment, one beside it nothing",
    "[shape]") {
    for (const document::Section& section : support::section_kinds()) {
        const Body body = support::minnow_body(section, support::two_joints());
        CHECK_THAT(box_in_segment(body, 1, {0.07, 0.08, -0.001, 0.003, -0.002, 0.004}).volume_m3,
                   WithinRel(0.01 * 0.004 * 0.006, 1e-12));
        for (int k = 0; k < 3; ++k) {
            const Segment& s = body.segments[static_cast<std::size_t>(k)];
            const BoxCut all = box_in_segment(body, k, {-1.0, 1.0, -1.0, 1.0, -endless, endless});
            CHECK_THAT(all.volume_m3, WithinRel(s.volume_m3, 1e-4));
            CHECK_THAT(all.centroid_m.x, WithinAbs(s.centroid_m.x, 1e-5));
            CHECK_THAT(all.centroid_m.z, WithinAbs(s.centroid_m.z, 1e-5));
        }
        CHECK(box_in_segment(body, 0, {0.07, 0.08, -0.001, 0.001, -1.0, 1.0}).volume_m3 == 0.0);
        CHECK(box_in_segment(body, 1, {0.07, 0.08, -0.001, 0.001, 0.05, 1.0}).volume_m3 == 0.0);
        CHECK(box_in_segment(body, 1, {0.08, 0.07, -0.001, 0.001, -1.0, 1.0}).volume_m3 == 0.0);
    }
}

TEST_CASE("outlines close round the segment, with its relief in the view from above", "[shape]") {
    const Body body = support::minnow_body(support::section_kinds()[1], support::two_joints());
    const auto shoelace = [](const std::vector<Point2>& p) {
        double twice = 0.0;
        for (std::size_t k = 0; k < p.size(); ++k) {
            const Point2& a = p[k];
            const Point2& b = p[(k + 1) % p.size()];
            twice += a.u * b.v - b.u * a.v;
        }
        return std::abs(0.5 * twice);
    };
    // Section area by its moments; chords of 256 points cut off 1e-4.
    const Station s = body.lines->at(0.07);
    const double area = s.half_width_m * s.half_height_m * body.lines->family().moments(2.6).area;
    CHECK_THAT(shoelace(section_outline(*body.lines, 0.07, 128)), WithinRel(area, 5e-4));

    const std::vector<Point2> top = top_outline(body, 1, 100);
    double least = 1.0;
    for (const Point2& p : top)
        least = std::min(least, p.u);
    CHECK(least == body.segments[1].x_from_m); // the ridge of the V stands on the middle plane
    for (const Point2& p : top) {
        CHECK(p.u >=
              body.segments[1].x_from_m + std::tan(body.joints[0].relief_aft_rad) * std::abs(p.v) - 1e-9);
        CHECK(p.u <= body.segments[1].x_to_m + 1e-12);
    }
    const std::vector<Point2> side = side_outline(body, 1, 100);
    CHECK(side.front().u == body.segments[1].x_from_m);
    double plane_area = 0.0;
    const int n = 2000;
    for (int k = 0; k < n; ++k) {
        const double dx = (body.segments[1].x_to_m - body.segments[1].x_from_m) / n;
        plane_area += dx * 2.0 * body.lines->at(body.segments[1].x_from_m + (k + 0.5) * dx).half_height_m;
    }
    CHECK_THAT(shoelace(side), WithinRel(plane_area, 1e-5));
}
