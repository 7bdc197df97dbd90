#include "body/body.hpp"
#include "support/drawn_shapes.hpp"
#include "support/round_bodies.hpp"

#include <catch2/catch_test_macros.hpp>

#include <cmath>
#include <functional>
#include <limits>

using namespace evenfall;
using namespace evenfall::shape;
using support::degree;

namespace {

const double not_a_number = std::numeric_limits<double>::quiet_NaN();

/// The problem of a drawing that was changed in one place.
Problem drawing_problem(const std::function<void(document::Shape&)>& change) {
    document::Shape shape = support::drawn_minnow();
    change(shape);
    const auto lines = drawn_lines(shape);
    REQUIRE_FALSE(lines.ok());
    return lines.problems().front();
}

Problem cut_problem(const std::vector<document::Joint>& joints) {
    const auto lines = drawn_lines(support::drawn_minnow());
    REQUIRE(lines.ok());
    const auto body = cut(*lines, joints);
    REQUIRE_FALSE(body.ok());
    return body.problems().front();
}

document::Section drawn_section(std::vector<document::OutlinePoint> points) {
    return {document::SectionKind::drawn, {}, {}, std::move(points)};
}

} // namespace

TEST_CASE("a drawing is refused by the point that is wrong, in one sentence with the limit", "[shape]") {
    const auto nan_point = drawing_problem([](auto& s) { s.back[3].value = not_a_number; });
    CHECK(nan_point.code == ProblemCode::not_a_number);
    CHECK(nan_point.path == "/shape/back_mm/3");
    CHECK(nan_point.sentence.text(evenfall::units::metric) == "Point 4 of the back line is not a number.");

    CHECK(drawing_problem([](auto& s) { s.belly[1].x_m = std::numeric_limits<double>::infinity(); }).path ==
          "/shape/belly_mm/1");

    const auto order = drawing_problem([](auto& s) { s.half_width[2].x_m = s.half_width[1].x_m; });
    CHECK(order.code == ProblemCode::out_of_order);
    CHECK(order.path == "/shape/half_width_mm/2");
    CHECK(order.sentence.text(evenfall::units::metric) ==
          "Point 3 of the half width must lie at least 0.01 mm behind the point before it.");

    const auto few = drawing_problem([](auto& s) { s.belly.resize(1); });
    CHECK(few.path == "/shape/belly_mm");
    CHECK(few.sentence.text(evenfall::units::metric) == "The belly line has 1 points and needs at least 2.");

    const auto many = drawing_problem([](auto& s) {
        s.back.clear();
        for (int k = 0; k < 65; ++k)
            s.back.push_back({0.14 * k / 64.0, 0.01});
    });
    CHECK(many.code == ProblemCode::too_large);
    CHECK(many.path == "/shape/back_mm");

    const auto high = drawing_problem([](auto& s) { s.back[2].value = 0.151; });
    CHECK(high.path == "/shape/back_mm/2");
    CHECK(high.limit.text(evenfall::units::metric) == "-150 to 150 mm");
    const auto wide = drawing_problem([](auto& s) { s.half_width[2].value = 0.1201; });
    CHECK(wide.limit.text(evenfall::units::metric) == "0 to 120 mm");
    CHECK(wide.sentence.text(evenfall::units::metric) == "Point 3 of the half width must be 0 to 120 mm.");
    CHECK(drawing_problem([](auto& s) { s.half_width[2].value = -0.001; }).path == "/shape/half_width_mm/2");

    CHECK(drawing_problem([](auto& s) { s.back[0].x_m = 0.001; }).sentence.text(evenfall::units::metric) ==
          "The back line must start at the nose, x = 0 mm.");
    const auto length = drawing_problem([](auto& s) { s.half_width.back().x_m = 0.139; });
    CHECK(length.path == "/shape/half_width_mm/6");
    CHECK(length.sentence.text(evenfall::units::metric) ==
          "The half width must end at the tail like the back line, x = 140 mm.");

    const auto small = drawing_problem([](auto& s) {
        for (auto* curve : {&s.back, &s.belly, &s.half_width}) {
            for (auto& p : *curve)
                p.x_m *= 0.1;
        }
    });
    CHECK(small.sentence.text(evenfall::units::metric) == "The body is 14 mm long and must be 20 to 600 mm.");
}

TEST_CASE("a body without height or width somewhere between nose and tail is refused", "[shape]") {
    const auto crossed = drawing_problem([](auto& s) { s.belly[3].value = 0.017; });
    CHECK(crossed.code == ProblemCode::crossed_profile);
    CHECK(crossed.path.starts_with("/shape/back_mm/"));
    CHECK(crossed.limit.text(evenfall::units::metric) == "above the belly line");

    // Above each other at every station, crossed between them: the back line sags through a belly line drawn
    // by two points.
    const auto between = drawing_problem([](auto& s) {
        s.back = {{0.0, 0.010}, {0.04, 0.0005}, {0.09, 0.0005}, {0.14, 0.010}};
        s.belly = {{0.0, -0.004}, {0.05, -0.001}, {0.065, 0.0006}, {0.08, -0.001}, {0.14, -0.004}};
    });
    CHECK(between.code == ProblemCode::crossed_profile);

    CHECK(drawing_problem([](auto& s) {
              for (auto& p : s.half_width)
                  p.value = 0.0;
          }).sentence.text(evenfall::units::metric) ==
          "The half width is 0 mm everywhere: the body has no width.");
    CHECK(drawing_problem([](auto& s) { s.half_width[3].value = 0.0; }).path == "/shape/half_width_mm/3");

    // A point at nose and tail is a shape like any other.
    document::Shape pointed = support::drawn_minnow();
    for (auto* curve : {&pointed.back, &pointed.belly, &pointed.half_width}) {
        curve->front().value = 0.0;
        curve->back().value = 0.0;
    }
    const auto lines = drawn_lines(pointed);
    REQUIRE(lines.ok());
    const auto body = cut(*lines, {});
    REQUIRE(body.ok());
    CHECK(std::isfinite(body->segments[0].curvature_m));
    CHECK(body->segments[0].skin_m2 > 0.0);
}

TEST_CASE("sections are refused by their own limits", "[shape]") {
    const auto thin = drawing_problem([](auto& s) { s.section.curve() = {{0.0, 2.0}, {0.1, 1.1}}; });
    CHECK(thin.path == "/shape/section/exponent/1");
    CHECK(thin.limit.text(evenfall::units::metric) == "1.2 to 12");
    CHECK(drawing_problem([](auto& s) {
              s.section.curve() = {{0.0, 12.1}};
          }).code == ProblemCode::out_of_range);
    CHECK(drawing_problem([](auto& s) {
              s.section.curve() = {{0.0, not_a_number}};
          }).code == ProblemCode::not_a_number);
    CHECK(drawing_problem([](auto& s) {
              s.section.curve() = {{0.15, 2.0}};
          }).limit.text(evenfall::units::metric) == "0 to 140 mm");
    CHECK(drawing_problem([](auto& s) { s.section.curve().clear(); }).path == "/shape/section/exponent");
    CHECK(drawing_problem([](auto& s) {
              s.section = {document::SectionKind::chamfered, {}, {{0.0, 1.01}}, {}};
          }).limit.text(evenfall::units::metric) == "0 to 1");

    const auto outline = [](std::vector<document::OutlinePoint> points) {
        return drawing_problem([&](auto& s) { s.section = drawn_section(points); });
    };
    CHECK(outline({{0, -1}, {0, 1}}).path == "/shape/section/half_outline");
    CHECK(outline({{0.1, -1}, {1, 0}, {0, 1}}).path == "/shape/section/half_outline/0");
    CHECK(outline({{0, -1}, {1, 0}, {0, 0.9}}).path == "/shape/section/half_outline/2");
    CHECK(outline({{0, -1}, {not_a_number, 0}, {0, 1}}).code == ProblemCode::not_a_number);
    CHECK(outline({{0, -1}, {1.2, 0}, {0, 1}}).limit.text(evenfall::units::metric) == "y 0 to 1, z -1 to 1");
    CHECK(outline({{0, -1}, {0.9, 0}, {0, 1}}).limit.text(evenfall::units::metric) == "widest y = 1");
    CHECK(outline({{0, -1}, {1, 0.5}, {0.5, 0.2}, {0, 1}}).code == ProblemCode::out_of_order);
    CHECK(outline({{0, -1}, {0.8, -0.5}, {0.5, 0}, {1, 0.5}, {0, 1}}).limit.text(evenfall::units::metric) ==
          "out once, in once");
    // A fin without thickness at the widest: its tip has no outward side, and skin over it no curvature.
    CHECK(outline({{0, -1}, {0.2, 1}, {1, 1}, {0, 1}}).path == "/shape/section/half_outline/2");
    CHECK(outline({{0, -1}, {0.2, 0}, {1, 0}, {0.4, 0}, {0, 1}}).limit.text(evenfall::units::metric) ==
          "a side with some height");
    // The same upright, below and above.
    CHECK(outline({{0, -1}, {0, -0.4}, {1, -0.2}, {1, 0.6}, {0, 1}}).path == "/shape/section/half_outline/1");
    CHECK(outline({{0, -1}, {1, -0.2}, {1, 0.6}, {0, 0.8}, {0, 1}}).path == "/shape/section/half_outline/3");
    document::Shape shape = support::drawn_minnow();
    shape.section = drawn_section({{0, -1}, {1, 0}, {0, 1}});
    CHECK(drawn_lines(shape).ok());
    // A fin of some height is a shape like any other.
    shape.section = drawn_section({{0, -1}, {0.2, 0}, {1, 0}, {1, 0.2}, {0.4, 0.2}, {0, 1}});
    CHECK(drawn_lines(shape).ok());
    // So is a widest corner with a level side on one hand and a slanting one on the other.
    for (const auto& points : {std::vector<document::OutlinePoint>{{0, -1}, {1, -1}, {0, 1}},
                               {{0, -1}, {1, 1}, {0, 1}},
                               {{0, -1}, {0.3, 0}, {1, 0}, {0, 1}},
                               {{0, -1}, {1, 0}, {0.3, 0}, {0, 1}}}) {
        shape.section = drawn_section(points);
        CHECK(drawn_lines(shape).ok());
    }
}

TEST_CASE("joints are refused by the number that is wrong", "[shape]") {
    CHECK(cut_problem({{not_a_number, 0.002, 0, 0}}).path == "/joints/0/at_mm");
    const auto off = cut_problem({{0.06, 0.002, 0, 0}, {0.15, 0.002, 0, 0}});
    CHECK(off.path == "/joints/1/at_mm");
    CHECK(off.sentence.text(evenfall::units::metric) == "The place of joint 2 must be 0 to 140 mm.");
    // The limit that is told is one that is kept.
    document::Shape odd = support::drawn_minnow();
    for (auto* curve : {&odd.back, &odd.belly, &odd.half_width})
        curve->back().x_m = 0.1396;
    const auto lines = drawn_lines(odd);
    REQUIRE(lines.ok());
    const auto beyond = cut(*lines, {{0.1398, 0.002, 0, 0}});
    REQUIRE_FALSE(beyond.ok());
    CHECK(beyond.problems().front().sentence.text(evenfall::units::metric) ==
          "The place of joint 1 must be 0 to 139.6 mm.");
    const auto gap = cut_problem({{0.06, 0.021, 0, 0}});
    CHECK(gap.path == "/joints/0/gap_mm");
    CHECK(gap.sentence.text(evenfall::units::metric) == "The gap of joint 1 must be 0.2 to 20 mm.");
    CHECK(cut_problem({{0.06, 0.0001, 0, 0}}).path == "/joints/0/gap_mm");
    CHECK(cut_problem({{0.06, 0.002, -0.1, 0}}).path == "/joints/0/relief_fore_deg");
    const auto relief = cut_problem({{0.06, 0.002, 0, 61.0 * degree}});
    CHECK(relief.path == "/joints/0/relief_aft_deg");
    CHECK(relief.sentence.text(evenfall::units::metric) == "The aft relief of joint 1 must be 0 to 60°.");
    const auto order = cut_problem({{0.06, 0.002, 0, 0}, {0.05, 0.002, 0, 0}});
    CHECK(order.code == ProblemCode::out_of_order);
    CHECK(order.sentence.text(evenfall::units::metric) ==
          "Joint 2 must lie behind joint 1: joints go from nose to tail.");
    CHECK(cut_problem(std::vector<document::Joint>(12)).code == ProblemCode::too_large);
}

TEST_CASE("a cut that leaves no wood is refused", "[shape]") {
    const auto none = cut_problem({{0.06, 0.004, 0, 0}, {0.063, 0.004, 0, 0}});
    CHECK(none.path == "/joints/1/at_mm");
    CHECK(none.sentence.text(evenfall::units::metric) ==
          "Joint 2 leaves no wood for segment 2: at least 1 mm must stay between its ends, gaps taken off.");
    CHECK(cut_problem({{0.0005, 0.002, 0, 0}}).path == "/joints/0/at_mm");

    const auto meet = cut_problem({{0.055, 0.002, 0, 45.0 * degree}, {0.070, 0.002, 45.0 * degree, 0}});
    CHECK(meet.code == ProblemCode::overlap);
    CHECK(meet.path == "/joints/1/relief_fore_deg");
    CHECK(meet.sentence.text(evenfall::units::metric) ==
          "The two reliefs of segment 2 meet in its wood: at least 1 mm of skin must stay "
          "between them. Use smaller angles or move a joint.");

    const auto tail = cut_problem({{0.135, 0.002, 0, 60.0 * degree}});
    CHECK(tail.path == "/joints/0/relief_aft_deg");

    // A waist at the joint and a bulge before it: the flank would cut the bulge as well.
    document::Shape waist = support::drawn_minnow();
    waist.half_width = {{0.0, 0.004}, {0.030, 0.025}, {0.050, 0.003}, {0.140, 0.003}};
    const auto waisted = drawn_lines(waist);
    REQUIRE(waisted.ok());
    CHECK(cut(*waisted, {{0.052, 0.002, 30.0 * degree, 0}}).ok());
    const auto twice = cut(*waisted, {{0.052, 0.002, 50.0 * degree, 0}});
    REQUIRE_FALSE(twice.ok());
    CHECK(twice.problems().front().path == "/joints/0/relief_fore_deg");

    // A flank that leans like the taper never leaves the wood cleanly.
    const auto cone = std::make_shared<support::Paraboloid>(0.05, 0.06, 0.06, 6);
    const auto along = cut(cone, {{0.025, 0.002, 0, 60.0 * degree}});
    REQUIRE_FALSE(along.ok());
    CHECK(along.problems().front().limit.text(evenfall::units::metric) ==
          "one clear edge between flank and skin");
}
