#include "evenfall.hpp"
#include "holes/checks.hpp"
#include "support/small_lures.hpp"
#include "units/trade.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <catch2/matchers/catch_matchers_string.hpp>

#include <algorithm>
#include <cmath>

using namespace evenfall;
using Catch::Matchers::ContainsSubstring;
using Catch::Matchers::WithinAbs;
using units::m_from_mm;

namespace {

/// The first problem a document is refused for.
Problem refusal(const preset::Document& document) {
    const auto outcome = evaluate(document);
    REQUIRE_FALSE(outcome.ok());
    return outcome.problems().front();
}

preset::Document with_hole(double x_mm, double diameter_mm, double depth_mm) {
    preset::Document d = support::block();
    d.holes = {support::belly_hole(x_mm, diameter_mm, 30)};
    d.holes[0].use = preset::HoleUse::drilled;
    d.holes[0].depth_m = m_from_mm(depth_mm);
    d.holes[0].wall_m = m_from_mm(3);
    return d;
}

}  // namespace

TEST_CASE("a hole that leaves less than its wall on the far side is refused with the depth that would do") {
    CHECK(evaluate(with_hole(60, 8, 27)).ok());
    const Problem p = refusal(with_hole(60, 8, 27.2));
    CHECK(p.code == ProblemCode::through_wall);
    CHECK(p.path == "/holes/0/depth_mm");
    CHECK_THAT(p.sentence, ContainsSubstring("27.2 mm deep") && ContainsSubstring("allows 27.0 mm"));
}

TEST_CASE("a drill point counts against the far wall") {
    preset::Document d = with_hole(60, 8, 25);
    d.holes[0].end = preset::HoleEnd::point_118;  // 2.4 mm beyond the shoulder
    CHECK(refusal(d).code == ProblemCode::through_wall);
    d.holes[0].depth_m = m_from_mm(24.5);
    CHECK(evaluate(d).ok());
}

TEST_CASE("a bit too wide for the wood is refused") {
    const Problem p = refusal(with_hole(60, 16, 10));
    CHECK(p.code == ProblemCode::through_wall);
    CHECK_THAT(p.sentence, ContainsSubstring("16.0 mm bit is too wide"));
}

TEST_CASE("a hole near the end of its segment, outside it, or in a joint's gap is refused") {
    CHECK(refusal(with_hole(5, 8, 10)).code == ProblemCode::outside_segment);
    CHECK(refusal(with_hole(130, 8, 10)).code == ProblemCode::outside_segment);
    preset::Document d = with_hole(60, 8, 10);
    d.segment_names = {"Fore", "Aft"};
    preset::Joint joint;
    joint.at_m = m_from_mm(60);
    d.joints = {joint};
    CHECK(refusal(d).code == ProblemCode::outside_segment);
    d.joints[0].at_m = m_from_mm(67.5);
    const Problem p = refusal(d);  // 60 + 4 mm of hole + 3 mm of wall reaches beyond the face at 66.5
    CHECK(evaluate(with_hole(60, 8, 10)).ok());
    CHECK(p.code == ProblemCode::outside_segment);
    CHECK_THAT(p.sentence, ContainsSubstring("the limit is 3.0 mm"));
}

TEST_CASE("relief brings the joint face nearer to a hole") {
    preset::Document d = with_hole(60, 8, 10);
    d.segment_names = {"Fore", "Aft"};
    preset::Joint joint;
    joint.at_m = m_from_mm(68.5);
    joint.gap_m = m_from_mm(2);
    d.joints = {joint};
    CHECK(evaluate(d).ok());
    d.joints[0].relief_fore_rad = units::rad_from_deg(20);
    CHECK(refusal(d).code == ProblemCode::outside_segment);
}

TEST_CASE("two holes in the same wood are refused, one from the belly and one from the back that do not meet are not") {
    preset::Document d = with_hole(60, 8, 10);
    d.holes.push_back(d.holes[0]);
    d.holes[1].x_m = m_from_mm(67);
    const Problem p = refusal(d);
    CHECK(p.code == ProblemCode::overlap);
    CHECK(p.path == "/holes/1/x_mm");
    d.holes[1].from = preset::HoleFrom::back;
    CHECK(evaluate(d).ok());
    d.holes[1].depth_m = m_from_mm(19);
    CHECK(refusal(d).code == ProblemCode::overlap);
}

TEST_CASE("a fill longer than its room, a cap longer than its hole, stock wider than the hole, lead in no hole: refused by name") {
    preset::Document d = with_hole(60, 8, 10);
    d.holes[0].fill->mass_kg = 0.006;  // 10.5 mm of lead in 8 mm of room
    CHECK(refusal(d).code == ProblemCode::does_not_fit);
    CHECK(refusal(d).path == "/holes/0/fill");
    d.holes[0].fill->mass_kg = 0.004;
    CHECK(evaluate(d).ok());
    d.holes[0].cap->length_m = m_from_mm(11);
    CHECK(refusal(d).path == "/holes/0/cap/length_mm");
    d.holes[0].cap->length_m = m_from_mm(2);
    d.holes[0].fill->stock_diameter_m = m_from_mm(9);
    CHECK(refusal(d).path == "/holes/0/fill/stock_diameter_mm");
    d.holes[0].fill->stock_diameter_m.reset();
    d.holes[0].depth_m = 0.0;
    CHECK(refusal(d).path == "/holes/0/fill");
}

TEST_CASE("a mistake that leaves a thin wall is taken as it is, one that comes out on the other side is not") {
    preset::Document d = with_hole(60, 8, 29);
    d.holes[0].use = preset::HoleUse::fixed;
    CHECK(evaluate(d).ok());
    d.holes[0].depth_m = m_from_mm(31);
    CHECK(refusal(d).code == ProblemCode::through_wall);
}

TEST_CASE("a pocket that meets no wood, ends before it begins, or cuts into a hole is refused") {
    preset::Document d = with_hole(60, 8, 10);
    preset::Pocket pocket;
    pocket.x_from_m = m_from_mm(125);
    pocket.x_to_m = m_from_mm(140);
    d.pockets = {pocket};
    CHECK(refusal(d).code == ProblemCode::outside_segment);
    d.pockets[0].x_to_m = m_from_mm(100);
    CHECK(refusal(d).code == ProblemCode::out_of_order);
    d.pockets[0].x_from_m = m_from_mm(62);
    CHECK(refusal(d).code == ProblemCode::overlap);
    d.pockets[0].z_from_m = m_from_mm(0);  // above the hole's end at −5 mm
    CHECK(evaluate(d).ok());
}

TEST_CASE("pockets that leave no wood of a segment are refused, at the one that takes the last of it") {
    preset::Document d = support::block();  // 120 × 20 × 30 mm
    preset::Pocket pocket;
    pocket.x_from_m = 0.0;
    pocket.x_to_m = m_from_mm(125);
    pocket.width_m = m_from_mm(19.9);
    d.pockets = {pocket};
    CHECK(evaluate(d).ok());
    d.pockets[0].width_m = m_from_mm(21);
    const Problem all = refusal(d);
    CHECK(all.code == ProblemCode::outside_segment);
    CHECK(all.path == "/pockets/0/x_from_mm");
    CHECK(all.sentence == "Pocket 1 leaves no wood of segment 1.");
    // Two halves, each of which leaves the other.
    d.pockets[0].x_to_m = m_from_mm(60);
    CHECK(evaluate(d).ok());
    pocket.width_m = m_from_mm(21);
    pocket.x_from_m = m_from_mm(60);
    d.pockets.push_back(pocket);
    CHECK(refusal(d).path == "/pockets/1/x_from_mm");
}

TEST_CASE("the depth limit names the builder's stop, the far wall and the side wall, whichever comes first") {
    preset::Document d = support::fish();
    const auto evaluation = evaluate(d);
    REQUIRE(evaluation.ok());
    const shape::Body& body = evaluation->body;
    preset::Hole hole = support::belly_hole(46, 8, 20);
    CHECK(holes::depth_limit(hole, holes::place(hole, body), body).stop == holes::DepthStop::bit);
    hole.max_depth_m = m_from_mm(60);
    const auto deep = holes::depth_limit(hole, holes::place(hole, body), body);
    CHECK(deep.stop != holes::DepthStop::bit);
    CHECK(deep.depth_m < m_from_mm(36));
    hole.wall_m = m_from_mm(6.5);  // 4 + 6.5 mm of an 11.3 mm half width: the side gives out soon after the middle
    const auto side = holes::depth_limit(hole, holes::place(hole, body), body);
    CHECK(side.stop == holes::DepthStop::side_wall);
    // At that depth the skin is just so far away (looked up on the drawing, not in the check).
    const holes::Bore bore = holes::place(hole, body);
    double least = 1.0;
    for (const double x : {42.0, 46.0, 50.0}) {
        least = std::min(least, shape::skin_half_width(*body.lines, m_from_mm(x), bore.mouth_z_m + side.depth_m));
    }
    CHECK_THAT(least, WithinAbs(m_from_mm(4 + 6.5), 1e-6));
}
