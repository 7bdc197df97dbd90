#include "body/pocket_surface.hpp"
#include "body/rim_table.hpp"
#include "support/drawn_body.hpp"
#include "support/round_bodies.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

using namespace evenfall;
using namespace evenfall::shape;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr double endless = std::numeric_limits<double>::infinity();

Body cut_by(std::shared_ptr<const Lines> lines, const std::vector<document::Joint>& joints) {
    auto body = cut(std::move(lines), joints);
    REQUIRE(body.ok());
    return *body;
}

Body uncut(std::shared_ptr<const Lines> lines) {
    return cut_by(std::move(lines), {});
}

/// A block of 120 × 20 × 30 mm.
Body block(const std::vector<document::Joint>& joints = {}) {
    document::Shape s;
    s.back = {{0.0, 0.015}, {0.120, 0.015}};
    s.belly = {{0.0, -0.015}, {0.120, -0.015}};
    s.half_width = {{0.0, 0.010}, {0.120, 0.010}};
    s.section.kind = document::SectionKind::chamfered;
    s.section.curve() = {{0.0, 0.0}};
    auto lines = drawn_lines(s);
    REQUIRE(lines.ok());
    return cut_by(*lines, joints);
}

struct Slow {
    double wall = 0.0;
    double skin = 0.0;
    double faces = 0.0;
    double skin_x = 0.0, skin_z = 0.0, wall_x = 0.0, wall_z = 0.0;
};

/// The same areas by small tiles: each tile of each surface counts where its middle lies in the wood (walls)
/// or in the box (skin, faces).
Slow by_tiles(const Body& body, std::size_t segment, Box box) {
    const Segment& s = body.segments[segment];
    const Lines& lines = *body.lines;
    const double fore = segment > 0 ? std::tan(body.joints[segment - 1].relief_aft_rad) : 0.0;
    const double aft = segment < body.joints.size() ? std::tan(body.joints[segment].relief_fore_rad) : 0.0;
    box.y_from_m = std::max(box.y_from_m, -0.02);
    box.y_to_m = std::min(box.y_to_m, 0.02);
    box.z_from_m = std::max(box.z_from_m, -0.03);
    box.z_to_m = std::min(box.z_to_m, 0.03);
    const auto between_faces = [&](double x, double y) {
        return x > s.x_from_m + fore * std::abs(y) && x < s.x_to_m - aft * std::abs(y);
    };
    const auto in_wood = [&](double x, double y, double z) {
        return between_faces(x, y) && std::abs(y) < skin_half_width(lines, x, z);
    };
    const auto in_box = [&](double x, double y, double z) {
        return x > box.x_from_m && x < box.x_to_m && y > box.y_from_m && y < box.y_to_m && z > box.z_from_m &&
               z < box.z_to_m;
    };
    const int n = 500;
    Slow out;
    const auto wall = [&](double x, double y, double z, double area) {
        if (!in_wood(x, y, z)) return;
        out.wall += area;
        out.wall_x += area * x;
        out.wall_z += area * z;
    };
    const double lx = box.x_to_m - box.x_from_m, ly = box.y_to_m - box.y_from_m,
                 lz = box.z_to_m - box.z_from_m;
    for (int i = 0; i < n; ++i) {
        for (int k = 0; k < n; ++k) {
            const double u = (i + 0.5) / n, v = (k + 0.5) / n;
            const double tile = 1.0 / (n * static_cast<double>(n));
            for (const double x : {box.x_from_m, box.x_to_m})
                wall(x, box.y_from_m + u * ly, box.z_from_m + v * lz, tile * ly * lz);
            for (const double y : {box.y_from_m, box.y_to_m})
                wall(box.x_from_m + u * lx, y, box.z_from_m + v * lz, tile * lx * lz);
            for (const double z : {box.z_from_m, box.z_to_m})
                wall(box.x_from_m + u * lx, box.y_from_m + v * ly, z, tile * lx * ly);
            // Skin, both sides.
            const double x =
                std::max(box.x_from_m, lines.nose_m()) +
                u * (std::min(box.x_to_m, lines.tail_m()) - std::max(box.x_from_m, lines.nose_m()));
            const double dx =
                (std::min(box.x_to_m, lines.tail_m()) - std::max(box.x_from_m, lines.nose_m())) / n;
            const Station st = lines.at(x);
            const SkinPoint p = skin_point(st, lines.family().rim(st.parameter, 2.0 * v - 1.0));
            const double cross = p.y_x * p.z_tau - p.z_x * p.y_tau;
            const double area =
                dx * (2.0 / n) * std::sqrt(p.y_tau * p.y_tau + p.z_tau * p.z_tau + cross * cross);
            for (const double side : {1.0, -1.0}) {
                if (!in_box(x, side * p.y, p.z) || !between_faces(x, p.y)) continue;
                out.skin += area;
                out.skin_x += area * x;
                out.skin_z += area * p.z;
            }
            // Faces, by y and z.
            const double y = -0.02 + 0.04 * u, z = -0.03 + 0.06 * v;
            const double facet = 0.04 * 0.06 * tile;
            if (segment > 0) {
                const double at = s.x_from_m + fore * std::abs(y);
                if (in_box(at, y, z) && std::abs(y) < skin_half_width(lines, at, z))
                    out.faces += facet * std::hypot(1.0, fore);
            }
            if (segment < body.joints.size()) {
                const double at = s.x_to_m - aft * std::abs(y);
                if (in_box(at, y, z) && std::abs(y) < skin_half_width(lines, at, z))
                    out.faces += facet * std::hypot(1.0, aft);
            }
        }
    }
    return out;
}

} // namespace

TEST_CASE("a box inside a block has its own six sides and twelve edges, and opens nowhere", "[shape]") {
    const PocketSurface s = pocket_surface(block(), 0, {0.040, 0.060, -0.003, 0.005, -0.002, 0.004});
    CHECK_THAT(s.wall.area_m2, WithinRel(2.0 * (0.020 * 0.008 + 0.020 * 0.006 + 0.008 * 0.006), 1e-12));
    CHECK_THAT(s.inner_edge_m, WithinRel(4.0 * (0.020 + 0.008 + 0.006), 1e-12));
    CHECK(s.skin.area_m2 == 0.0);
    CHECK(s.faces.area_m2 == 0.0);
    CHECK_THAT(s.wall.centroid_m().x, WithinAbs(0.050, 1e-12));
    CHECK_THAT(s.wall.centroid_m().y, WithinAbs(0.001, 1e-12));
    CHECK_THAT(s.wall.centroid_m().z, WithinAbs(0.001, 1e-12));
}

TEST_CASE("a box whose end stands in a relieved face keeps the edges that are still in wood there",
          "[shape]") {
    // Face in the middle at 60 mm, falling back at 45°: at 59 mm there is wood only within 1 mm of the
    // middle, at 6 mm aside only before 54 mm.
    const Body body = block({{0.061, 0.002, std::numbers::pi / 4.0, std::numbers::pi / 4.0, {}}});
    const PocketSurface s = pocket_surface(body, 0, {0.050, 0.059, -0.006, 0.006, -0.002, 0.002});
    const double fore_end = 2.0 * 0.012 + 2.0 * 0.004;
    const double along = 4.0 * 0.004;
    const double aft_end = 2.0 * 0.002;
    CHECK_THAT(s.inner_edge_m, WithinRel(fore_end + along + aft_end, 1e-9));
}

TEST_CASE("a slot through the belly of a block has four walls and a roof, and takes its mouth from the skin",
          "[shape]") {
    const PocketSurface s = pocket_surface(block(), 0, {0.040, 0.060, -0.002, 0.002, -endless, 0.005});
    CHECK_THAT(s.wall.area_m2, WithinRel(2.0 * (0.020 + 0.004) * 0.020 + 0.020 * 0.004, 1e-12));
    CHECK_THAT(s.inner_edge_m, WithinRel(4.0 * 0.020 + 2.0 * (0.020 + 0.004), 1e-12));
    CHECK_THAT(s.skin.area_m2, WithinRel(0.020 * 0.004, 1e-9));
    CHECK_THAT(s.skin.centroid_m().z, WithinAbs(-0.015, 1e-12));
}

TEST_CASE("a tail slot through a block's end takes its mouths from back, belly and end, and has three walls",
          "[shape]") {
    const PocketSurface s = pocket_surface(block(), 0, {0.100, 0.130, -0.001, 0.001, -endless, endless});
    CHECK_THAT(s.wall.area_m2, WithinRel(2.0 * 0.020 * 0.030 + 0.002 * 0.030, 1e-12));
    CHECK_THAT(s.inner_edge_m, WithinRel(2.0 * 0.030, 1e-12));
    CHECK_THAT(s.skin.area_m2, WithinRel(2.0 * 0.020 * 0.002 + 0.002 * 0.030, 1e-9));
}

TEST_CASE("a box around the whole lure has no walls and takes all its skin", "[shape]") {
    for (const document::Section& section : support::section_kinds()) {
        const Body body = support::minnow_body(section, support::two_joints());
        for (int k = 0; k < 3; ++k) {
            const Segment& segment = body.segments[static_cast<std::size_t>(k)];
            const PocketSurface s = pocket_surface(body, k, {-1.0, 1.0, -1.0, 1.0, -endless, endless});
            double faces = 0.0;
            for (const Face& face : segment.faces)
                faces += face.area_m2;
            INFO("segment " << k << " kind " << static_cast<int>(section.kind));
            CHECK(s.wall.area_m2 == 0.0);
            CHECK_THAT(s.skin.area_m2, WithinRel(segment.skin_m2, 1e-3));
            CHECK_THAT(s.faces.area_m2, WithinRel(faces, 1e-3));
        }
    }
}

TEST_CASE(
    "the cap that a plane cuts off a sphere has 2πrh of skin and a flat wall of π(2rh − h²) (Archimedes)",
    "[shape]") {
    const double r = 0.02;
    const Body ball = uncut(std::make_shared<support::Ellipsoid>(2.0 * r, r, r, 12));
    for (const double h : {0.004, 0.010, 0.020}) {
        const PocketSurface s = pocket_surface(ball, 0, {-1.0, 1.0, -1.0, 1.0, r - h, endless});
        INFO("cap of " << h);
        CHECK_THAT(s.skin.area_m2, WithinRel(2.0 * std::numbers::pi * r * h, 2e-2));
        CHECK_THAT(s.wall.area_m2, WithinRel(std::numbers::pi * (2.0 * r * h - h * h), 2e-2));
    }
}

TEST_CASE("walls, mouths and lost joint faces are what small tiles say, in every kind of section",
          "[shape]") {
    const Box boxes[] = {
        {0.056, 0.064, -0.002, 0.002, -0.004, 0.004},     // eye pocket that opens in a relieved fore face
        {0.080, 0.094, -0.002, 0.002, -endless, endless}, // slot right through
        {0.075, 0.095, -0.004, 0.003, -endless, 0.002},   // through the belly, off the middle
        {0.060, 0.090, -0.050, 0.050, -0.020, -0.005},    // across: sides, belly and flank bound it
        {0.088, 0.099, -0.003, 0.003, -0.006, 0.004},     // over the flat aft face into the gap
    };
    for (const document::Section& section : support::section_kinds()) {
        const Body body = support::minnow_body(section, support::two_joints());
        for (const Box& box : boxes) {
            const PocketSurface s = pocket_surface(body, 1, box);
            const Slow slow = by_tiles(body, 1, box);
            INFO("x from " << box.x_from_m << " z from " << box.z_from_m << " kind "
                           << static_cast<int>(section.kind));
            // 500 × 500 tiles err by a row of tiles where an outline cuts through them: 2/500 of one side.
            const double tiles = 6e-3;
            CHECK_THAT(s.wall.area_m2, WithinRel(slow.wall, tiles));
            CHECK_THAT(s.skin.area_m2, WithinAbs(slow.skin, tiles * std::max(slow.skin, 1e-6)));
            CHECK_THAT(s.faces.area_m2, WithinAbs(slow.faces, 2.0 * tiles * std::max(slow.faces, 1e-5)));
            CHECK_THAT(s.wall.centroid_m().x, WithinAbs(slow.wall_x / slow.wall, 5e-5));
            CHECK_THAT(s.wall.centroid_m().z, WithinAbs(slow.wall_z / slow.wall, 5e-5));
            if (slow.skin > 1e-6) {
                CHECK_THAT(s.skin.centroid_m().x, WithinAbs(slow.skin_x / slow.skin, 5e-5));
                CHECK_THAT(s.skin.centroid_m().z, WithinAbs(slow.skin_z / slow.skin, 5e-5));
            }
        }
    }
}
