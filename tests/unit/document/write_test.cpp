#include "document/check.hpp"
#include "document/fields.hpp"
#include "document/write.hpp"
#include "unit/document/documents.hpp"

#include <catch2/generators/catch_generators.hpp>
#include <catch2/generators/catch_generators_range.hpp>

#include <cmath>
#include <limits>
#include <random>

using namespace evenfall;
using namespace evenfall::testing;

namespace {

/// A document whose every number is drawn afresh, with more digits than a text keeps.
document::Document drawn_document(unsigned seed) {
    std::mt19937 draw(seed);
    const auto between = [&](double from, double to) {
        return std::uniform_real_distribution<double>(from, to)(draw);
    };
    document::Document d = document_of(worked_text());
    d.wood.moisture_percent = between(0.0, 30.0);
    d.wood.density_spread = between(0.0, 0.5);
    d.water = {between(0.0, 40.0), between(0.0, 40.0)};
    for (auto* curve : {&d.shape.back, &d.shape.belly, &d.shape.half_width}) {
        for (auto& point : *curve)
            point = {between(0.0, 1.0), between(0.0, 0.3)};
    }
    d.joints[0] = {between(0.0, 1.0), between(0.0002, 0.02), between(0.0, 1.0), between(0.0, 1.0)};
    for (auto& hole : d.holes) {
        hole.x_m = between(0.0, 1.0);
        hole.y_m = between(-0.3, 0.3);
        hole.depth_m = between(0.0, 0.1);
        hole.diameter_m = between(0.0005, 0.04);
    }
    d.holes[1].fill->mass_kg = between(0.0, 1.0);
    d.parts[0].at_m = {between(-1.0, 2.0), between(-0.6, 0.6), between(-0.6, 0.6)};
    d.parts[0].embedded = between(0.0, 1.0);
    d.tail->x_m = between(0.0, 1.0);
    d.tail->back[1] = {between(0.0, 0.3), between(-0.3, 0.3)};
    d.tail->exponent = between(1.2, 12.0);
    d.tail->tenon = document::Tenon{between(0.001, 0.1), between(0.001, 0.04), between(0.001, 0.3)};
    d.coats[1].thickness_m = between(0.0, 0.005);
    d.targets = {.fall_m_s = between(0.001, 5.0),
                 .pitch_rad = between(-1.3, 1.3),
                 .fall_band = between(0.001, 1.0),
                 .pitch_band_rad = between(0.002, 0.7)};
    return d;
}

} // namespace

TEST_CASE("a document that was written reads back the same, and writes the same text again") {
    const auto* file = GENERATE(from_range(std::begin(demo_presets), std::end(demo_presets)));
    INFO(file);
    const document::Document first = document_of(preset_text(file));
    const std::string text = write_document(first);
    const document::Document second = document_of(text);
    CHECK(document::same(first, second));
    CHECK(write_document(second) == text);
    CHECK(document::same(document_of(document::write_compact(first)), first));
}

TEST_CASE("every key of the form survives writing and reading") {
    const document::Document first = document_of(full_text);
    for (const std::string& text : {write_document(first), document::write_compact(first)}) {
        const document::Document second = document_of(text);
        CHECK(document::same(first, second));
        CHECK(second.holes[0].fill->stock_diameter_m == first.holes[0].fill->stock_diameter_m);
        CHECK(second.parts[0].segment == first.parts[0].segment);
        CHECK(second.coats[0].on_joint_faces == first.coats[0].on_joint_faces);
        CHECK(second.shape.section.half_outline.size() == first.shape.section.half_outline.size());
    }
}

TEST_CASE("any document within its limits keeps its text through reading and writing") {
    for (unsigned seed = 1; seed <= 300; ++seed) {
        const document::Document first = drawn_document(seed);
        REQUIRE(document::check(first).empty());
        const std::string text = write_document(first);
        const document::Document second = document_of(text);
        REQUIRE(write_document(second) == text);
        // Rounding to a millionth of the trade unit is all that is lost, and it is lost only once.
        REQUIRE(std::abs(second.holes[0].x_m - first.holes[0].x_m) <= 0.5001e-9);
        REQUIRE(std::abs(second.targets.pitch_rad - first.targets.pitch_rad) <=
                0.5001e-6 * 3.1415926535897931 / 180.0);
        const document::Document third = document_of(write_document(second));
        REQUIRE(third.holes[0].x_m == second.holes[0].x_m);
        REQUIRE(third.holes[1].fill->mass_kg == second.holes[1].fill->mass_kg);
        REQUIRE(third.targets.pitch_rad == second.targets.pitch_rad);
        REQUIRE(third.parts[0].at_m.z == second.parts[0].at_m.z);
    }
}

TEST_CASE("a document that leaves a default out equals one that states it") {
    const document::Document least = document_of(least_text);
    const document::Document stated = document_of(write_document(least));
    CHECK(document::same(least, stated));
    CHECK(least.targets.pitch_band_rad == stated.targets.pitch_band_rad);
    CHECK(
        document::write_compact(least) ==
        R"({"evenfall":2,"shape":{"back_mm":[[0,10],[100,10]],"belly_mm":[[0,-10],[100,-10]],"half_width_mm":[[0,8],[100,8]]},)"
        R"("segments":["Body"],"targets":{"fall_mm_s":150}})");
}

TEST_CASE("a hole without a cap stays without one") {
    const document::Document d =
        document_of(with(least_text, R"("segments")", R"("holes":[{"x_mm":50,"cap":null}],"segments")"));
    CHECK_FALSE(document_of(write_document(d)).holes[0].cap.has_value());
    CHECK_FALSE(document_of(document::write_compact(d)).holes[0].cap.has_value());
}

TEST_CASE(
    "a document without a tail says nothing of one, and one with a tail keeps it through text and link") {
    CHECK(write_document(document_of(least_text)).find("tail") == std::string::npos);
    CHECK(document::write_compact(document_of(least_text)).find("tail") == std::string::npos);
    const document::Document first = document_of(worked_text());
    const auto linked = read_link(write_link(first));
    REQUIRE(linked.ok());
    REQUIRE(linked->tail.has_value());
    CHECK(document::same(*linked, first));
    CHECK(document::same(document_of(write_document(first)), first));
    CHECK(linked->tail->half_thickness[1].value == first.tail->half_thickness[1].value);
    REQUIRE(linked->tail->tenon.has_value());
    CHECK(linked->tail->tenon->height_m == first.tail->tenon->height_m);
    document::Document bare = first;
    bare.tail->tenon.reset();
    CHECK_FALSE(document_of(write_document(bare)).tail->tenon.has_value());
}

TEST_CASE("numbers are written as a hand would write them") {
    CHECK(document::plain_number(12.0) == "12");
    CHECK(document::plain_number(6.35) == "6.35");
    CHECK(document::plain_number(-0.5) == "-0.5");
    CHECK(document::plain_number(0.000001) == "0.000001");
    CHECK(document::plain_number(document::round_trade(0.1 + 0.2)) == "0.3");
    CHECK(document::plain_number(document::round_trade(-1e-9)) == "0");
    CHECK(document::plain_number(123456.789012) == "123456.789012");
}

TEST_CASE("a name with quotes, backslashes and letters of any script survives") {
    document::Document d = document_of(least_text);
    d.name = "¼\" \\ Плотва 鯉 /~";
    CHECK(document_of(write_document(d)).name == d.name);
    CHECK(document_of(document::write_compact(d)).name == d.name);
}

TEST_CASE("what cannot be written as a number is not written as one") {
    document::Document d = document_of(full_text);
    d.holes[0].depth_m = std::numeric_limits<double>::quiet_NaN();
    const Problems checked = document::check(d);
    REQUIRE(checked.size() == 1);
    CHECK(checked[0].code == ProblemCode::not_a_number);
    CHECK(checked[0].path == "/holes/0/depth_mm");
    CHECK(checked[0].sentence.text(evenfall::units::metric) ==
          "Hole 1 is drilled no number at all deep; the limit is 0 to 100 mm.");
    CHECK(refusal_of(write_document(d))[0].path == "/holes/0/depth_mm");
    d.holes[0].depth_m = -std::numeric_limits<double>::infinity();
    CHECK(document::check(d).size() == 1);
}

TEST_CASE("the written form lies within a page's width") {
    std::size_t column = 0;
    for (const char c : write_document(document_of(preset_text("quarry-230.json")))) {
        column = c == '\n' ? 0 : column + 1;
        REQUIRE(column <= 250);
    }
}
