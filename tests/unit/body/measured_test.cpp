#include "body/board.hpp"
#include "body/body.hpp"
#include "body/measured.hpp"
#include "evenfall.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using namespace evenfall;

namespace {

/// An elliptic cylinder 100 mm long, 20 mm high and 10 mm wide.
document::Document cylinder() {
    document::Document d;
    d.name = "Cylinder";
    d.segment_names = {"Body"};
    d.shape.back = {{0.0, 0.010}, {0.100, 0.010}};
    d.shape.belly = {{0.0, -0.010}, {0.100, -0.010}};
    d.shape.half_width = {{0.0, 0.005}, {0.100, 0.005}};
    d.shape.section.curve() = {{0.0, 2.0}};
    return d;
}

double wood_m3(const document::Document& d) {
    const auto outcome = evaluate(d);
    REQUIRE(outcome.ok());
    return outcome->body.segments.front().volume_m3;
}

} // namespace

TEST_CASE("a body is exactly as thick as the caliper reads where it was read", "[shape][measured]") {
    document::Document d = cylinder();
    d.shape.measured = {
        {0.020, 0.0112, std::nullopt}, {0.050, 0.0097, 0.0213}, {0.080, std::nullopt, 0.0191}};
    const auto lines = shape::drawn_lines(d.shape);
    REQUIRE(lines.ok());
    CHECK_THAT((*lines)->at(0.020).half_width_m, WithinAbs(0.0056, 1e-12));
    CHECK_THAT((*lines)->at(0.050).half_width_m, WithinAbs(0.00485, 1e-12));
    CHECK_THAT((*lines)->at(0.050).half_height_m, WithinAbs(0.01065, 1e-12));
    CHECK_THAT((*lines)->at(0.080).half_height_m, WithinAbs(0.00955, 1e-12));
    // Nose and tail, where nothing was read, stay as drawn; so does the middle of the height.
    CHECK_THAT((*lines)->at(0.0).half_width_m, WithinAbs(0.005, 1e-12));
    CHECK_THAT((*lines)->at(0.100).half_height_m, WithinAbs(0.010, 1e-12));
    CHECK_THAT((*lines)->at(0.050).centre_z_m, WithinAbs(0.0, 1e-12));
}

TEST_CASE("between readings the correction is smooth", "[shape][measured]") {
    document::Document d = cylinder();
    d.shape.measured = {{0.030, 0.012, 0.022}, {0.060, 0.009, 0.018}};
    const auto lines = shape::drawn_lines(d.shape);
    REQUIRE(lines.ok());
    constexpr double step = 1e-7;
    for (const double x : {0.030, 0.060}) {
        const auto before = (*lines)->at(x - step);
        const auto after = (*lines)->at(x + step);
        CHECK_THAT(after.half_width_m - before.half_width_m, WithinAbs(0.0, 1e-7));
        CHECK_THAT(after.half_width_slope - before.half_width_slope, WithinAbs(0.0, 1e-3));
        CHECK_THAT(after.half_height_slope - before.half_height_slope, WithinAbs(0.0, 1e-3));
    }
}

TEST_CASE("readings at both ends of a cylinder make the cylinder that was read", "[shape][measured]") {
    // An ellipse's area is π·a·b: the volume follows width and height by the closed form.
    document::Document d = cylinder();
    const double drawn = wood_m3(d);
    d.shape.measured = {{0.0, 0.0104, 0.0190}, {0.100, 0.0104, 0.0190}};
    CHECK_THAT(wood_m3(d) / drawn, WithinRel(1.04 * 0.95, 1e-9));
}

TEST_CASE("readings that say what was drawn change nothing", "[shape][measured]") {
    document::Document d = cylinder();
    const double drawn = wood_m3(d);
    d.shape.measured = {{0.033, 0.010, 0.020}, {0.071, 0.010, std::nullopt}};
    CHECK_THAT(wood_m3(d) / drawn, WithinRel(1.0, 1e-12));
}

TEST_CASE("readings out of order, off the body or of nothing are refused by name", "[shape][measured]") {
    const auto path = [](std::vector<document::Measured> readings) {
        document::Document d = cylinder();
        d.shape.measured = std::move(readings);
        const auto outcome = evaluate(d);
        REQUIRE_FALSE(outcome.ok());
        return outcome.problems().front().path;
    };
    CHECK(path({{0.050, 0.010, std::nullopt}, {0.040, 0.010, std::nullopt}}) == "/shape/measured/1/x_mm");
    CHECK(path({{0.120, 0.010, std::nullopt}}) == "/shape/measured/0/x_mm");
    CHECK(path({{0.050, std::nullopt, std::nullopt}}) == "/shape/measured/0");
    // No wider than may be drawn.
    CHECK(path({{0.050, 0.241, std::nullopt}}) == "/shape/measured/0/width_mm");
}

TEST_CASE("readings that would leave no wood between them are refused", "[shape][measured]") {
    document::Document d = cylinder();
    // Drawn with a waist of 1 mm at 60 mm, read 5 mm thinner on both sides of it.
    d.shape.half_width = {{0.0, 0.005}, {0.030, 0.005}, {0.060, 0.0005}, {0.090, 0.005}, {0.100, 0.005}};
    d.shape.measured = {{0.030, 0.005, std::nullopt}, {0.090, 0.005, std::nullopt}};
    const auto outcome = evaluate(d);
    REQUIRE_FALSE(outcome.ok());
    CHECK(outcome.problems().front().code == ProblemCode::crossed_profile);
    CHECK(outcome.problems().front().path == "/shape/measured");
}

TEST_CASE("a lure without readings and board is written without a word of them", "[preset][measured]") {
    const std::string text = write_document(cylinder());
    CHECK(text.find("measured") == std::string::npos);
    CHECK(text.find("board") == std::string::npos);
}

TEST_CASE("readings and board come back from text and link as they went in", "[preset][measured]") {
    document::Document d = cylinder();
    d.shape.measured = {{0.030, 0.012, std::nullopt}, {0.060, std::nullopt, 0.018}};
    d.board = document::Board{0.110, 0.025, 0.014, 0.001};
    for (const auto& read : {read_document(write_document(d)), read_link(write_link(d))}) {
        REQUIRE(read.ok());
        REQUIRE(read->shape.measured.size() == 2);
        CHECK_THAT(read->shape.measured[0].width_m.value_or(0.0), WithinAbs(0.012, 1e-12));
        CHECK_FALSE(read->shape.measured[0].height_m.has_value());
        CHECK_THAT(read->shape.measured[1].height_m.value_or(0.0), WithinAbs(0.018, 1e-12));
        REQUIRE(read->board.has_value());
        CHECK_THAT(read->board->thickness_m, WithinAbs(0.014, 1e-12));
        CHECK_THAT(read->board->saw_m, WithinAbs(0.001, 1e-12));
    }
}

TEST_CASE("a board warns exactly where body and saw do not fit into it", "[shape][board]") {
    const auto body = evaluate(cylinder());
    REQUIRE(body.ok());
    const auto paths = [&](document::Board board) {
        std::vector<std::string> out;
        for (const auto& problem : shape::board_warnings(board, *body->body.lines))
            out.push_back(problem.path);
        return out;
    };
    // 100 × 20 × 10 mm and 1 mm for the saw all round.
    CHECK(paths({0.102, 0.022, 0.012, 0.001}).empty());
    CHECK(paths({0.1019, 0.022, 0.012, 0.001}) == std::vector<std::string>{"/board/length_mm"});
    CHECK(paths({0.102, 0.0219, 0.0119, 0.001}) ==
          std::vector<std::string>{"/board/height_mm", "/board/thickness_mm"});
    document::Document d = cylinder();
    d.board = document::Board{0.102, 0.022, 0.0119, 0.001};
    const auto warned = evaluate(d);
    REQUIRE(warned.ok());
    REQUIRE_FALSE(warned->answers.warnings.empty());
    CHECK(warned->answers.warnings.back().path == "/board/thickness_mm");
}
