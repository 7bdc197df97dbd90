#include "body/tail_loft.hpp"

#include "evenfall.hpp"
#include "support/soft_tails.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <limits>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using std::numbers::pi;

namespace {

shape::Segment solid(const document::Tail& tail) {
    const auto body = tail::shaped(tail);
    REQUIRE(body.ok());
    return body->segments.front();
}

Problem refused(const document::Document& document) {
    const auto outcome = evaluate(document);
    REQUIRE_FALSE(outcome.ok());
    return outcome.problems().front();
}

} // namespace

TEST_CASE(
    "a straight elliptic tail has the volume, centroid and moments of an elliptic cylinder (closed forms)",
    "[tail]") {
    const double l = 0.04, a = 0.002, b = 0.009;
    const auto s = solid(support::straight_tail(l, a, b));
    const double v = pi * a * b * l;
    CHECK_THAT(s.volume_m3, WithinRel(v, 1e-12));
    CHECK_THAT(s.centroid_m.x, WithinRel(0.5 * l, 1e-12));
    CHECK_THAT(s.inertia_m5.xx, WithinRel(v * (a * a + b * b) / 4.0, 1e-12));
    CHECK_THAT(s.inertia_m5.yy, WithinRel(v * (l * l / 12.0 + b * b / 4.0), 1e-12));
    CHECK_THAT(s.inertia_m5.zz, WithinRel(v * (l * l / 12.0 + a * a / 4.0), 1e-12));
}

TEST_CASE(
    "a tail that runs out to a point has the volume, centroid and moments of an elliptic cone (closed forms)",
    "[tail]") {
    const double l = 0.03, a = 0.003, b = 0.008;
    document::Tail t = support::straight_tail(l, a, b);
    for (auto* curve : {&t.back, &t.belly, &t.half_thickness})
        curve->back().value = 0.0;
    const auto s = solid(t);
    const double v = pi * a * b * l / 3.0;
    CHECK_THAT(s.volume_m3, WithinRel(v, 1e-12));
    CHECK_THAT(s.centroid_m.x, WithinRel(0.25 * l, 1e-12));
    CHECK_THAT(s.inertia_m5.xx, WithinRel(3.0 / 20.0 * v * (a * a + b * b), 1e-12));
    CHECK_THAT(s.inertia_m5.yy, WithinRel(3.0 / 80.0 * v * (4.0 * b * b + l * l), 1e-12));
    CHECK_THAT(s.inertia_m5.zz, WithinRel(3.0 / 80.0 * v * (4.0 * a * a + l * l), 1e-12));
}

TEST_CASE("a tail drawn through 63 points of an ellipsoid has its volume within 2e-5 (closed form; the drawn "
          "line is a cubic)",
          "[tail]") {
    const double l = 0.05, a = 0.004, b = 0.011;
    document::Tail t;
    for (int k = 0; k <= 62; ++k) {
        const double turn = pi * k / 62;
        const double x = k == 62 ? l : 0.5 * l * (1.0 - std::cos(turn));
        const double r = k == 0 || k == 62 ? 0.0 : std::sin(turn);
        t.back.push_back({x, 0.002 + b * r});
        t.belly.push_back({x, 0.002 - b * r});
        t.half_thickness.push_back({x, a * r});
    }
    const auto s = solid(t);
    CHECK_THAT(s.volume_m3, WithinRel(4.0 / 3.0 * pi * 0.5 * l * a * b, 2e-5));
    CHECK_THAT(s.centroid_m.x, WithinRel(0.5 * l, 1e-9));
    CHECK_THAT(s.centroid_m.z, WithinRel(0.002, 1e-9));
    const auto shadow = tail::shadow(t);
    CHECK_THAT(shadow.side_m2, WithinRel(pi * 0.5 * l * b, 1e-4));
    CHECK_THAT(shadow.above_m2, WithinRel(pi * 0.5 * l * a, 1e-4));
}

TEST_CASE("twice the size is eight times the volume, and a box's section fills its box",
          "[tail][properties]") {
    document::Tail t = support::paddle(0.1);
    const double once = solid(t).volume_m3;
    for (auto* curve : {&t.back, &t.belly, &t.half_thickness}) {
        for (auto& point : *curve)
            point = {2.0 * point.x_m, 2.0 * point.value};
    }
    CHECK_THAT(solid(t).volume_m3, WithinRel(8.0 * once, 1e-12));
    document::Tail box = support::straight_tail(0.04, 0.002, 0.009);
    box.exponent = 12.0;
    const Vec3 e = tail::extent(box);
    CHECK_THAT(e.x * e.y * e.z, WithinRel(0.04 * 0.004 * 0.018, 1e-12));
    CHECK(solid(box).volume_m3 > 0.98 * e.x * e.y * e.z);
    CHECK(solid(box).volume_m3 < e.x * e.y * e.z);
}

TEST_CASE("a tail that cannot be is refused by the name of its field", "[tail]") {
    const document::Document good = support::block_with_tail();
    REQUIRE(evaluate(good).ok());
    const auto path = [&](auto change) {
        document::Document d = good;
        change(d, *d.tail);
        const Problem p = refused(d);
        INFO(p.sentence.text(evenfall::units::metric));
        CHECK_FALSE(p.sentence.empty());
        return p.path;
    };
    using D = document::Document;
    using T = document::Tail;
    CHECK(path([](D&, T& t) { t.material = "lead"; }) == "/tail/material");
    CHECK(path([](D&, T& t) { t.x_m = 0.118; }) == "/tail/x_mm");
    CHECK(path([](D&, T& t) { t.back[2].value = -0.006; }) == "/tail/back_mm/2");
    CHECK(path([](D&, T& t) { t.back[2].x_m = 0.011; }) == "/tail/back_mm/2");
    CHECK(path([](D&, T& t) { t.back.back().x_m = 0.047; }) == "/tail/belly_mm/4");
    CHECK(path([](D&, T& t) { t.half_thickness[1].value = 0.0; }) == "/tail/half_thickness_mm/1");
    CHECK(path([](D&, T& t) { t.half_thickness[0].x_m = 0.001; }) == "/tail/half_thickness_mm/0");
    CHECK(path([](D&, T& t) { t.half_thickness.resize(1); }) == "/tail/half_thickness_mm");
    CHECK(path([](D&, T& t) { t.back[1].value = std::numeric_limits<double>::quiet_NaN(); }) ==
          "/tail/back_mm/1/1");
    CHECK(path([](D&, T& t) { t.exponent = 1.0; }) == "/tail/exponent");
    CHECK(path([](D&, T& t) { t.density_kg_m3 = 5000.0; }) == "/tail/density_kg_m3");
    CHECK(path([](D&, T& t) { t.tenon->thickness_m = 0.0031; }) == "/tail/tenon/thickness_mm");
    CHECK(path([](D& d, T&) { d.pockets[0].y_m = 0.0003; }) == "/tail/tenon/thickness_mm");
    CHECK(path([](D&, T& t) { t.tenon->length_m = 0.0141; }) == "/tail/tenon/length_mm");
    CHECK(path([](D&, T& t) { t.tenon->height_m = 0.0142; }) == "/tail/tenon/height_mm");
    CHECK(path([](D&, T& t) { t.x_m = 0.133; }) == "/tail/tenon/length_mm");
    CHECK(path([](D& d, T&) { d.pockets.clear(); }) == "/tail/tenon");
    CHECK(path([](D& d, T&) { d.pockets[0].x_to_m = 0.1195; }) == "/tail/tenon");
    CHECK(path([](D&, T& t) { t.tenon->thickness_m = -1.0; }) == "/tail/tenon/thickness_mm");
}

TEST_CASE("a tenon as large as its slot fits it", "[tail]") {
    document::Document d = support::block_with_tail();
    d.tail->tenon = document::Tenon{0.014, 0.003, 0.014};
    CHECK(evaluate(d).ok());
}
