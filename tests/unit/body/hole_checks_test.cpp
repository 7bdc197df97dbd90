#include "base/trade.hpp"
#include "bench/uncertainty/uncertainty.hpp"
#include "body/body.hpp"
#include "body/hole_checks.hpp"
#include "evenfall.hpp"
#include "ledger/line.hpp"
#include "materials/solids.hpp"
#include "support/small_lures.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <catch2/matchers/catch_matchers_string.hpp>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

using namespace evenfall;
using Catch::Matchers::ContainsSubstring;
using Catch::Matchers::WithinAbs;
using units::m_from_mm;

namespace {

/// The first problem a document is refused for.
Problem refusal(const document::Document& document) {
    const auto outcome = evaluate(document);
    REQUIRE_FALSE(outcome.ok());
    return outcome.problems().front();
}

document::Document with_hole(double x_mm, double diameter_mm, double depth_mm) {
    document::Document d = support::block();
    d.holes = {support::belly_hole(x_mm, diameter_mm, 30)};
    d.holes[0].use = document::HoleUse::drilled;
    d.holes[0].depth_m = m_from_mm(depth_mm);
    d.holes[0].wall_m = m_from_mm(3);
    return d;
}

} // namespace

TEST_CASE("a hole that leaves less than its wall on the far side is refused with the depth that would do") {
    CHECK(evaluate(with_hole(60, 8, 27)).ok());
    const Problem p = refusal(with_hole(60, 8, 27.2));
    CHECK(p.code == ProblemCode::through_wall);
    CHECK(p.path == "/holes/0/depth_mm");
    CHECK_THAT(p.sentence.text(evenfall::units::metric),
               ContainsSubstring("27.2 mm deep") && ContainsSubstring("allows 27.0 mm"));
}

TEST_CASE("a drill point counts against the far wall") {
    document::Document d = with_hole(60, 8, 25);
    d.holes[0].end = document::HoleEnd::point_118; // 2.4 mm beyond the shoulder
    CHECK(refusal(d).code == ProblemCode::through_wall);
    d.holes[0].depth_m = m_from_mm(24.5);
    CHECK(evaluate(d).ok());
}

TEST_CASE("a bit too wide for the wood is refused") {
    const Problem p = refusal(with_hole(60, 16, 10));
    CHECK(p.code == ProblemCode::through_wall);
    CHECK_THAT(p.sentence.text(evenfall::units::metric), ContainsSubstring("16.0 mm bit is too wide"));
}

TEST_CASE("a bit wider than the wood, with nothing drilled yet, has no room and makes nothing NaN") {
    const document::Document d = with_hole(60, 40, 0);
    const auto e = evaluate(d);
    REQUIRE(e.ok());
    const holes::Bore bore = holes::place(d.holes[0], e->body);
    REQUIRE(bore.segment == 0);
    CHECK(bore.skin_drop_m == bore.far_skin_m);
    CHECK(holes::fill_free_m(d.holes[0], bore) >= bore.far_skin_m);
    const auto s = uncertainty(d);
    REQUIRE(s.ok());
    CHECK(s->trim.room_up_kg == 0.0);
}

TEST_CASE("a hole near the end of its segment, outside it, or in a joint's gap is refused") {
    CHECK(refusal(with_hole(5, 8, 10)).code == ProblemCode::outside_segment);
    CHECK(refusal(with_hole(130, 8, 10)).code == ProblemCode::outside_segment);
    document::Document d = with_hole(60, 8, 10);
    d.segment_names = {"Fore", "Aft"};
    document::Joint joint;
    joint.at_m = m_from_mm(60);
    d.joints = {joint};
    CHECK(refusal(d).code == ProblemCode::outside_segment);
    d.joints[0].at_m = m_from_mm(67.5);
    const Problem p = refusal(d); // 60 + 4 mm of hole + 3 mm of wall reaches beyond the face at 66.5
    CHECK(evaluate(with_hole(60, 8, 10)).ok());
    CHECK(p.code == ProblemCode::outside_segment);
    CHECK_THAT(p.sentence.text(evenfall::units::metric), ContainsSubstring("the limit is 3.0 mm"));
}

TEST_CASE("relief brings the joint face nearer to a hole") {
    document::Document d = with_hole(60, 8, 10);
    d.segment_names = {"Fore", "Aft"};
    document::Joint joint;
    joint.at_m = m_from_mm(68.5);
    joint.gap_m = m_from_mm(2);
    d.joints = {joint};
    CHECK(evaluate(d).ok());
    d.joints[0].relief_fore_rad = units::rad_from_deg(30);
    CHECK(refusal(d).code == ProblemCode::outside_segment);
}

TEST_CASE("the wood between a hole and a relieved face is the nearest of the face's points (brute force)") {
    document::Document d = with_hole(60, 6, 10);
    d.segment_names = {"Fore", "Aft"};
    d.joints = {document::Joint{}};
    d.joints[0].gap_m = m_from_mm(2);
    for (const double relief : {0.0, 20.0, 45.0, 60.0}) {
        for (const double y : {0.0, -1.0, 2.0}) {
            for (const bool aft : {false, true}) {
                const double tan = std::tan(units::rad_from_deg(relief));
                const double face_mm = aft ? 48.0 : 72.0;
                d.joints[0].at_m = m_from_mm(aft ? face_mm - 1.0 : face_mm + 1.0);
                d.joints[0].relief_fore_rad = aft ? 0.0 : units::rad_from_deg(relief);
                d.joints[0].relief_aft_rad = aft ? units::rad_from_deg(relief) : 0.0;
                d.holes[0].y_m = m_from_mm(y);
                double least = 1e9;
                for (double across = -30.0; across <= 30.0; across += 0.001) {
                    least = std::min(least, std::hypot(12.0 - std::fabs(across) * tan, across - y));
                }
                least -= 3.0;
                CAPTURE(relief, y, aft, least);
                const auto stands = [&] {
                    const auto outcome = evaluate(d);
                    return outcome.ok() || outcome.problems().front().path != "/holes/0/x_mm";
                };
                d.holes[0].wall_m = m_from_mm(least - 0.01);
                CHECK(stands());
                d.holes[0].wall_m = m_from_mm(least + 0.01);
                CHECK_FALSE(stands());
            }
        }
    }
}

namespace {

/// The block with a drawn section: a keel where the widest lies high, a bilge where it lies low.
document::Document with_section(std::vector<document::OutlinePoint> half_outline, double diameter_mm,
                                double depth_mm) {
    document::Document d = with_hole(60, diameter_mm, depth_mm);
    d.shape.section.kind = document::SectionKind::drawn;
    d.shape.section.half_outline = std::move(half_outline);
    return d;
}

const std::vector<document::OutlinePoint> keel{{0.0, -1.0}, {1.0, 0.8}, {0.0, 1.0}};

/// Grams of a kind of line.
double grams(const Evaluation& e, ledger::Kind kind) {
    double kg = 0.0;
    for (const ledger::Line& line : e.ledger)
        kg += line.kind == kind ? line.mass_kg : 0.0;
    return units::g_from_kg(kg);
}

} // namespace

TEST_CASE("a bit goes into a belly that is wider than the body's middle") {
    document::Document d = with_section({{0.0, -1.0}, {1.0, -0.9}, {0.0, 1.0}}, 8,
                                        6); // half widths 10 mm below, 5.3 mm in the middle
    CHECK(evaluate(d).ok());
    d.holes[0].depth_m = m_from_mm(12); // half width there: 10·1.2/1.9 = 6.3 mm, less than 4 + 3
    CHECK(refusal(d).code == ProblemCode::through_wall);
    d.holes[0].depth_m = m_from_mm(10);
    CHECK(evaluate(d).ok());
    d.holes[0].diameter_m = m_from_mm(15);
    CHECK_THAT(refusal(d).sentence.text(evenfall::units::metric), ContainsSubstring("too wide"));
}

TEST_CASE("under a keel no more fill goes in than the wood that comes out has room for, and a hole that "
          "hardly touches wood is none") {
    document::Document d = with_section(keel, 6, 8);
    const auto evaluation = evaluate(d);
    REQUIRE(evaluation.ok());
    const double lens = holes::place(d.holes[0], evaluation->body).skin_drop_m;
    const double cap = d.holes[0].cap->length_m;
    REQUIRE(lens > cap);
    const double area = 0.25 * 3.14159265358979 * 0.006 * 0.006;
    d.holes[0].fill->mass_kg = 11340.0 * area * (d.holes[0].depth_m - lens - 1e-5);
    CHECK(evaluate(d).ok());
    d.holes[0].fill->mass_kg = 11340.0 * area * (d.holes[0].depth_m - lens + 1e-5);
    CHECK(refusal(d).path == "/holes/0/fill");
    d.holes[0].fill->mass_kg = 0.0;
    d.holes[0].depth_m = lens - 1e-5;
    CHECK(refusal(d).path == "/holes/0/depth_mm");
    d.holes[0].use = document::HoleUse::fixed;
    CHECK(refusal(d).path == "/holes/0/depth_mm");
}

TEST_CASE(
    "a plan under a keel leaves at least half the cap over its lead, and no more lead than wood came out") {
    document::Document d = with_section(keel, 6, 0);
    d.holes[0].use = document::HoleUse::ballast;
    d.holes.push_back(d.holes[0]);
    d.holes[0].x_m = m_from_mm(40);
    d.holes[1].x_m = m_from_mm(80);
    d.targets.by = document::TargetBy::in_water;
    const auto bare = evaluate(d);
    REQUIRE(bare.ok());
    d.targets.in_water_kg = bare->answers.in_water.kg + 0.002;
    const auto plan = plan_lead(d);
    REQUIRE(plan.ok());
    for (const Problem& p : plan->shortfalls)
        UNSCOPED_INFO(p.sentence.text(evenfall::units::metric));
    REQUIRE(plan->holes.back().column_m > 0.0);
    CHECK_THAT(plan->after.in_water.kg, WithinAbs(d.targets.in_water_kg, 1e-6));
    const auto after = evaluate(plan->document);
    REQUIRE(after.ok());
    const double area_cm2 = 2.0 * 0.25 * 3.14159265358979 * 0.6 * 0.6; // of both holes
    const double cap_g_cm3 = materials::find_solid(d.holes[0].cap->material)->density_kg_m3.value / 1000.0;
    CHECK_THAT(grams(*after, ledger::Kind::cap), WithinAbs(cap_g_cm3 * area_cm2 * 0.1, 1e-9));
    const double out_cm3 = -grams(*after, ledger::Kind::hole_wood) / 0.5;
    CHECK_THAT(out_cm3, WithinAbs(grams(*after, ledger::Kind::fill) / 11.34 + area_cm2 * 0.1, 1e-6));
}

TEST_CASE("what a bit takes out of a hollow in the belly is more than its own cylinder") {
    document::Document d = with_hole(60, 10, 8);
    d.holes[0].wall_m = 0.0;
    d.shape.belly.clear();
    for (const auto& [x, z] :
         {std::pair{0.0, -15.0}, {50.0, -15.0}, {60.0, -8.0}, {70.0, -15.0}, {120.0, -15.0}}) {
        d.shape.belly.push_back({m_from_mm(x), m_from_mm(z)});
    }
    const auto evaluation = evaluate(d);
    REQUIRE(evaluation.ok());
    // Brute force: a fine grid over the disc, from the skin to the shoulder.
    const int n = 400;
    double cm3 = 0.0;
    for (int i = 0; i < n; ++i) {
        for (int k = 0; k < n; ++k) {
            const double x = 10.0 * ((i + 0.5) / n - 0.5);
            const double y = 10.0 * ((k + 0.5) / n - 0.5);
            if (std::hypot(x, y) > 5.0) continue;
            const double skin =
                1e3 * shape::skin_heights(*evaluation->body.lines, m_from_mm(60 + x), m_from_mm(y)).belly_z_m;
            cm3 += std::max(-8.0 + 8.0 - skin, 0.0) * 1e-3 * (10.0 / n) * (10.0 / n);
        }
    }
    CHECK(cm3 > 1.1 * 0.25 * 3.14159265 * 0.8);
    CHECK_THAT(-grams(*evaluation, ledger::Kind::hole_wood) / 0.5, WithinAbs(cm3, 0.02 * cm3));
}

TEST_CASE("a hole that is not drilled takes no wood: a pocket and another hole may be where it would go") {
    document::Document d = with_hole(60, 8, 0);
    d.holes[0].use = document::HoleUse::ballast;
    d.holes.push_back(with_hole(60, 8, 20).holes[0]);
    d.holes[1].from = document::HoleFrom::back;
    CHECK(evaluate(d).ok());
    d.holes[0].depth_m = m_from_mm(6);
    CHECK(evaluate(d).ok());
    d.holes[0].depth_m = m_from_mm(8); // 2 mm of wood between them
    CHECK(refusal(d).code == ProblemCode::overlap);
}

TEST_CASE("two holes in the same wood are refused, one from the belly and one from the back that do not meet "
          "are not") {
    document::Document d = with_hole(60, 8, 10);
    d.holes.push_back(d.holes[0]);
    d.holes[1].x_m = m_from_mm(67);
    const Problem p = refusal(d);
    CHECK(p.code == ProblemCode::overlap);
    CHECK(p.path == "/holes/1/x_mm");
    d.holes[1].from = document::HoleFrom::back;
    CHECK(evaluate(d).ok());
    d.holes[1].depth_m = m_from_mm(19);
    CHECK(refusal(d).code == ProblemCode::overlap);
}

TEST_CASE("a fill longer than its room, a cap longer than its hole, stock wider than the hole, lead in no "
          "hole: refused by name") {
    document::Document d = with_hole(60, 8, 10);
    d.holes[0].fill->mass_kg = 0.006; // 10.5 mm of lead in 8 mm of room
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

TEST_CASE(
    "a mistake that leaves a thin wall is taken as it is, one that comes out on the other side is not") {
    document::Document d = with_hole(60, 8, 29);
    d.holes[0].use = document::HoleUse::fixed;
    CHECK(evaluate(d).ok());
    d.holes[0].depth_m = m_from_mm(31);
    CHECK(refusal(d).code == ProblemCode::through_wall);
}

TEST_CASE("a pocket that meets no wood, ends before it begins, or cuts into a hole is refused") {
    document::Document d = with_hole(60, 8, 10);
    document::Pocket pocket;
    pocket.x_from_m = m_from_mm(125);
    pocket.x_to_m = m_from_mm(140);
    d.pockets = {pocket};
    CHECK(refusal(d).code == ProblemCode::outside_segment);
    d.pockets[0].x_to_m = m_from_mm(100);
    CHECK(refusal(d).code == ProblemCode::out_of_order);
    d.pockets[0].x_from_m = m_from_mm(62);
    CHECK(refusal(d).code == ProblemCode::overlap);
    d.pockets[0].z_from_m = m_from_mm(0); // above the hole's end at −5 mm
    CHECK(evaluate(d).ok());
}

TEST_CASE("pockets that leave no wood of a segment are refused, at the one that takes the last of it") {
    document::Document d = support::block(); // 120 × 20 × 30 mm
    document::Pocket pocket;
    pocket.x_from_m = 0.0;
    pocket.x_to_m = m_from_mm(125);
    pocket.width_m = m_from_mm(19.9);
    d.pockets = {pocket};
    CHECK(evaluate(d).ok());
    d.pockets[0].width_m = m_from_mm(21);
    const Problem all = refusal(d);
    CHECK(all.code == ProblemCode::outside_segment);
    CHECK(all.path == "/pockets/0/x_from_mm");
    CHECK(all.sentence.text(evenfall::units::metric) == "Pocket 1 leaves no wood of segment 1.");
    // Two halves, each of which leaves the other.
    d.pockets[0].x_to_m = m_from_mm(60);
    CHECK(evaluate(d).ok());
    pocket.width_m = m_from_mm(21);
    pocket.x_from_m = m_from_mm(60);
    d.pockets.push_back(pocket);
    CHECK(refusal(d).path == "/pockets/1/x_from_mm");
}

TEST_CASE("the depth limit names the builder's stop, the far wall and the side wall, whichever comes first") {
    document::Document d = support::fish();
    const auto evaluation = evaluate(d);
    REQUIRE(evaluation.ok());
    const shape::Body& body = evaluation->body;
    document::Hole hole = support::belly_hole(46, 8, 20);
    CHECK(holes::depth_limit(hole, holes::place(hole, body), body).stop == holes::DepthStop::bit);
    hole.max_depth_m = m_from_mm(60);
    const auto deep = holes::depth_limit(hole, holes::place(hole, body), body);
    CHECK(deep.stop != holes::DepthStop::bit);
    CHECK(deep.depth_m < m_from_mm(36));
    hole.wall_m =
        m_from_mm(6.5); // 4 + 6.5 mm of an 11.3 mm half width: the side gives out soon after the middle
    const auto side = holes::depth_limit(hole, holes::place(hole, body), body);
    CHECK(side.stop == holes::DepthStop::side_wall);
    // At that depth the skin is just so far away (looked up on the drawing, not in the check).
    const holes::Bore bore = holes::place(hole, body);
    double least = 1.0;
    for (const double x : {42.0, 46.0, 50.0}) {
        least =
            std::min(least, shape::skin_half_width(*body.lines, m_from_mm(x), bore.mouth_z_m + side.depth_m));
    }
    CHECK_THAT(least, WithinAbs(m_from_mm(4 + 6.5), 1e-6));
}
