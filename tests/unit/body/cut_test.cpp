#include "body/body.hpp"
#include "support/drawn_shapes.hpp"
#include "support/round_bodies.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>

using namespace evenfall;
using namespace evenfall::shape;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using support::degree;

namespace {

struct Twin {
    double volume = 0.0, x = 0.0, z = 0.0;
    double xx = 0.0, yy = 0.0, zz = 0.0, xz = 0.0;
};

/// The slow twin of cut(): columns of wood over the plan, straight from the definition of a joint. Knows the
/// lines and the skin heights, and nothing of rims, moments, Green's theorem or where flank and skin meet.
Twin by_columns(const Body& body, std::size_t segment) {
    const Segment& s = body.segments[segment];
    Twin t;
    const int slices = 1500;
    const int columns = 200;
    for (int i = 0; i < slices; ++i) {
        const double x = s.x_from_m + (s.x_to_m - s.x_from_m) * (i + 0.5) / slices;
        const Station st = body.lines->at(x);
        double half = st.half_width_m;
        if (segment > 0)
            half = std::min(half, (x - s.x_from_m) /
                                      std::tan(std::max(1e-12, body.joints[segment - 1].relief_aft_rad)));
        if (segment < body.joints.size())
            half = std::min(half,
                            (s.x_to_m - x) / std::tan(std::max(1e-12, body.joints[segment].relief_fore_rad)));
        for (int k = 0; k < columns; ++k) {
            const double u = (k + 0.5) / columns;
            const double y = half * u * (2.0 - u); // thinner towards the side
            const double w = 2.0 * half * 2.0 * (1.0 - u) / columns * (s.x_to_m - s.x_from_m) / slices;
            const double up = st.centre_z_m + st.half_height_m * body.lines->family().upper_z(
                                                                     st.parameter, y / st.half_width_m);
            const double low = st.centre_z_m + st.half_height_m * body.lines->family().lower_z(
                                                                      st.parameter, y / st.half_width_m);
            const double v = w * (up - low);
            const double vz = 0.5 * w * (up * up - low * low);
            t.volume += v;
            t.x += v * x;
            t.z += vz;
            t.xx += v * x * x;
            t.yy += v * y * y;
            t.zz += w * (up * up * up - low * low * low) / 3.0;
            t.xz += vz * x;
        }
    }
    return t;
}

Body cut_or_fail(const document::Shape& shape, const std::vector<document::Joint>& joints) {
    auto lines = drawn_lines(shape);
    REQUIRE(lines.ok());
    auto body = cut(*lines, joints);
    REQUIRE(body.ok());
    return *body;
}

Vec3 sum_of(const Body& body, double& volume) {
    Vec3 first;
    volume = 0.0;
    for (const Segment& s : body.segments) {
        volume += s.volume_m3;
        first += s.volume_m3 * s.centroid_m;
    }
    return first;
}

} // namespace

TEST_CASE("segments with reliefs weigh and balance like their columns of wood, in every kind of section",
          "[shape]") {
    for (const document::Section& section : support::section_kinds()) {
        document::Shape shape = support::drawn_minnow();
        shape.section = section;
        const Body body = cut_or_fail(shape, support::two_joints());
        for (std::size_t k = 0; k < 3; ++k) {
            INFO("segment " << k << " kind " << static_cast<int>(section.kind) << " parameter "
                            << section.curve().front().value);
            const Twin t = by_columns(body, k);
            const Segment& s = body.segments[k];
            // 1500 × 200 midpoint columns err by about 1e-5.
            CHECK_THAT(s.volume_m3, WithinRel(t.volume, 3e-5));
            CHECK_THAT(s.centroid_m.x, WithinAbs(t.x / t.volume, 1e-6));
            CHECK_THAT(s.centroid_m.z, WithinAbs(t.z / t.volume, 1e-6));
            CHECK(s.centroid_m.y == 0.0);
            const double xx = t.xx - t.x * t.x / t.volume;
            const double zz = t.zz - t.z * t.z / t.volume;
            CHECK_THAT(s.inertia_m5.xx, WithinRel(t.yy + zz, 1e-4));
            CHECK_THAT(s.inertia_m5.yy, WithinRel(xx + zz, 1e-4));
            CHECK_THAT(s.inertia_m5.zz, WithinRel(xx + t.yy, 1e-4));
            CHECK_THAT(s.inertia_m5.xz, WithinAbs(t.xz - t.x * t.z / t.volume, 1e-4 * s.inertia_m5.yy));
        }
    }
}

TEST_CASE("a relief on a cylinder takes off tan α times the first moment of its section, per face",
          "[shape]") {
    // Six rim points an eighth give 1e-6 of what is taken off, a tenth of the segment at most. Constant
    // section: ∬|y|dA = 4/3·a²b, skin ∮|y|ds, face πab/cos α: by hand.
    const double a = 0.010;
    const double b = 0.016;
    const double alpha = 25.0 * degree;
    const auto lines = std::make_shared<support::Cylinder>(0.1, a, b);
    const auto plain = cut(lines, {{0.05, 0.002, 0.0, 0.0}});
    const auto relieved = cut(lines, {{0.05, 0.002, alpha, 0.0}});
    REQUIRE(plain.ok());
    REQUIRE(relieved.ok());
    const Segment& fore = relieved->segments[0];
    const double lost = std::tan(alpha) * 4.0 / 3.0 * a * a * b;
    CHECK_THAT(plain->segments[0].volume_m3 - fore.volume_m3, WithinRel(lost, 1e-6));
    REQUIRE(fore.faces.size() == 1);
    CHECK_THAT(fore.faces[0].area_m2, WithinRel(std::numbers::pi * a * b / std::cos(alpha), 1e-6));
    CHECK_THAT(fore.faces[0].centroid_m.x,
               WithinAbs(0.049 - std::tan(alpha) * 4.0 / (3.0 * std::numbers::pi) * a, 1e-9));
    double ring = 0.0;
    double rim = 0.0;
    const int steps = 100000;
    for (int k = 0; k < steps; ++k) {
        const double t = 2.0 * std::numbers::pi * (k + 0.5) / steps;
        const double dt = 2.0 * std::numbers::pi / steps;
        ring += std::abs(a * std::cos(t)) * std::hypot(a * std::sin(t), b * std::cos(t)) * dt;
        rim += std::sqrt(std::pow(a * std::sin(t), 2) + std::pow(b * std::cos(t), 2) +
                         std::pow(std::tan(alpha) * a * std::sin(t), 2)) *
               dt;
    }
    CHECK_THAT(plain->segments[0].skin_m2 - fore.skin_m2, WithinRel(std::tan(alpha) * ring, 1e-6));
    CHECK_THAT(fore.faces[0].rim_m, WithinRel(rim, 1e-6));
    // The other segment is none the wiser.
    CHECK(relieved->segments[1].volume_m3 == plain->segments[1].volume_m3);
}

TEST_CASE("segments and what the saw takes add up to the whole", "[shape]") {
    for (const document::Section& section : support::section_kinds()) {
        document::Shape shape = support::drawn_minnow();
        shape.section = section;
        const Body whole = cut_or_fail(shape, {});
        // Flat cuts: the gaps are segments of their own when cut out by pairs of thin joints.
        const Body three = cut_or_fail(shape, {{0.054, 0.002, 0.0, 0.0}, {0.096, 0.002, 0.0, 0.0}});
        double parts = 0.0;
        const Vec3 first = sum_of(three, parts);
        const Body saw = cut_or_fail(
            shape,
            {{0.0529, 0.0002, 0, 0}, {0.0551, 0.0002, 0, 0}, {0.0949, 0.0002, 0, 0}, {0.0971, 0.0002, 0, 0}});
        const double gaps = saw.segments[1].volume_m3 + saw.segments[3].volume_m3;
        const double gaps_x = saw.segments[1].volume_m3 * saw.segments[1].centroid_m.x +
                              saw.segments[3].volume_m3 * saw.segments[3].centroid_m.x;
        const Segment& w = whole.segments[0];
        CHECK_THAT(parts + gaps, WithinRel(w.volume_m3, 1e-8));
        CHECK_THAT(first.x + gaps_x, WithinRel(w.volume_m3 * w.centroid_m.x, 1e-8));
        // Skin adds up too: end discs are in it, joint faces are not.
        double skin = 0.0;
        for (const Segment& s : three.segments)
            skin += s.skin_m2;
        CHECK_THAT(skin + saw.segments[1].skin_m2 + saw.segments[3].skin_m2, WithinRel(w.skin_m2, 2e-6));
    }
}

TEST_CASE("a lure k times as large has k³ the wood, k² the skin, k the curvature", "[shape]") {
    document::Shape large = support::drawn_minnow();
    for (auto* curve : {&large.back, &large.belly, &large.half_width}) {
        for (auto& p : *curve) {
            p.x_m *= 1.7;
            p.value *= 1.7;
        }
    }
    std::vector<document::Joint> joints = support::two_joints();
    const Body small_body = cut_or_fail(support::drawn_minnow(), joints);
    for (auto& j : joints) {
        j.at_m *= 1.7;
        j.gap_m *= 1.7;
    }
    const Body large_body = cut_or_fail(large, joints);
    for (std::size_t k = 0; k < 3; ++k) {
        const Segment& s = small_body.segments[k];
        const Segment& l = large_body.segments[k];
        CHECK_THAT(l.volume_m3, WithinRel(std::pow(1.7, 3) * s.volume_m3, 1e-11));
        CHECK_THAT(l.centroid_m.x, WithinRel(1.7 * s.centroid_m.x, 1e-11));
        CHECK_THAT(l.centroid_m.z, WithinAbs(1.7 * s.centroid_m.z, 1e-13));
        CHECK_THAT(l.skin_m2, WithinRel(1.7 * 1.7 * s.skin_m2, 1e-11));
        CHECK_THAT(l.curvature_m, WithinRel(1.7 * s.curvature_m, 1e-11));
        CHECK_THAT(l.inertia_m5.yy, WithinRel(std::pow(1.7, 5) * s.inertia_m5.yy, 1e-11));
    }
}

TEST_CASE("a lure turned belly up has its centroids and products of inertia turned too", "[shape]") {
    document::Shape turned = support::drawn_minnow();
    std::swap(turned.back, turned.belly);
    for (auto* curve : {&turned.back, &turned.belly}) {
        for (auto& p : *curve)
            p.value = -p.value;
    }
    const Body up = cut_or_fail(support::drawn_minnow(), support::two_joints());
    const Body down = cut_or_fail(turned, support::two_joints());
    for (std::size_t k = 0; k < 3; ++k) {
        CHECK_THAT(down.segments[k].volume_m3, WithinRel(up.segments[k].volume_m3, 1e-12));
        CHECK_THAT(down.segments[k].centroid_m.z, WithinAbs(-up.segments[k].centroid_m.z, 1e-15));
        CHECK_THAT(down.segments[k].inertia_m5.xz, WithinAbs(-up.segments[k].inertia_m5.xz, 1e-20));
        CHECK_THAT(down.segments[k].skin_centroid_m.z, WithinAbs(-up.segments[k].skin_centroid_m.z, 1e-14));
    }
}

TEST_CASE("more relief or a wider gap leaves less wood, and only in the segments they touch", "[shape]") {
    const auto joints = [](double gap, double relief) {
        return std::vector<document::Joint>{{0.06, gap, relief, relief}};
    };
    double before = cut_or_fail(support::drawn_minnow(), joints(0.002, 0.0)).segments[0].volume_m3;
    for (double relief = 5.0; relief <= 60.0; relief += 5.0) {
        const double now =
            cut_or_fail(support::drawn_minnow(), joints(0.002, relief * degree)).segments[0].volume_m3;
        CHECK(now < before);
        before = now;
    }
    CHECK(cut_or_fail(support::drawn_minnow(), joints(0.003, 0.2)).segments[1].volume_m3 <
          cut_or_fail(support::drawn_minnow(), joints(0.002, 0.2)).segments[1].volume_m3);
}

TEST_CASE("places between segments belong to none, and the nearest is always one", "[shape]") {
    const Body body = cut_or_fail(support::drawn_minnow(), support::two_joints());
    CHECK(segment_at(body, 0.0) == 0);
    CHECK(segment_at(body, 0.0535) == -1);
    CHECK(segment_at(body, 0.07) == 1);
    CHECK(segment_at(body, 0.14) == 2);
    CHECK(segment_at(body, 0.15) == -1);
    CHECK(segment_at(body, -0.01) == -1);
    CHECK(nearest_segment(body, -1.0) == 0);
    CHECK(nearest_segment(body, 0.0535) == 0);
    CHECK(nearest_segment(body, 0.0545) == 1);
    CHECK(nearest_segment(body, 1.0) == 2);
}
