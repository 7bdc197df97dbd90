#include "app/variant_rows.hpp"
#include "body.hpp"
#include "support/presets.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <string>

using namespace evenfall;
using namespace evenfall::shell;

namespace {

state::Variant variant(const document::Document& document) {
    auto made = state::variant_of(document);
    REQUIRE(made.ok());
    return *made;
}

/// A figure as it is shown, back as a number; the page's minus is not the keyboard's.
double number(std::string text) {
    if (const auto minus = text.find("−"); minus != std::string::npos) text.replace(minus, 3, "-");
    return std::stod(text);
}

} // namespace

TEST_CASE(
    "side by side the six figures stand in the strip's order, and each difference is the other less this",
    "[shell][variants]") {
    const state::Variant here = variant(support::preset_named("millrace-170"));
    document::Document heavier = here.document;
    for (document::Hole& hole : heavier.holes) {
        if (hole.fill && hole.fill->mass_kg) *hole.fill->mass_kg *= 0.9;
        if (hole.fill && hole.fill->length_m) *hole.fill->length_m *= 0.9;
    }
    const state::Variant other = variant(heavier);
    widgets::Units units;
    for (const auto unit : {widgets::Unit::s_per_ft, widgets::Unit::mm_per_s, widgets::Unit::s_per_m}) {
        units.fall = unit;
        const auto rows = figure_rows(here, other, units);
        REQUIRE(rows.size() == 6);
        const char* titles[] = {"Finished", "In water", "Fall", "Hang", "Righting", "Chance"};
        for (std::size_t i = 0; i < rows.size(); ++i) {
            CAPTURE(rows[i].title, rows[i].here, rows[i].other, rows[i].difference);
            CHECK(rows[i].title == titles[i]);
            // Two roundings of a half of the last figure each, and the difference's own.
            const double last = rows[i].unit == "mm/s" || rows[i].unit == "%" ? 1.0 : 0.1;
            CHECK(std::abs(number(rows[i].difference) - (number(rows[i].other) - number(rows[i].here))) <=
                  1.5 * last);
        }
        // Less lead: lighter, and slower down.
        CHECK(number(rows[0].difference) < 0.0);
        CHECK(number(rows[1].difference) < 0.0);
    }
    CHECK(figure_rows(here, here, units)[0].difference == "0");
}

TEST_CASE("a lure that floats has no fall to compare, and says so", "[shell][variants]") {
    const state::Variant sinks = variant(support::preset_named("millrace-170"));
    const state::Variant floats = variant(support::preset_named("reedline-120"));
    REQUIRE(floats.evaluation.answers.behaviour == Behaviour::floats);
    const auto fall = figure_rows(sinks, floats, {})[2];
    CHECK(fall.other == "floats");
    CHECK(fall.difference == "–");
}

TEST_CASE("the lead stands hole by hole, and a hole that one lacks has a dash", "[shell][variants]") {
    const state::Variant here = variant(support::preset_named("millrace-170"));
    document::Document fewer = here.document;
    REQUIRE(fewer.holes.size() > 1);
    fewer.holes.pop_back();
    const state::Variant other = variant(fewer);
    const auto rows = lead_rows(here, other, {});
    REQUIRE(rows.size() == here.document.holes.size());
    CHECK(rows.back().other == "–");
    CHECK(rows.back().difference == "–");
    CHECK(rows.front().difference == "0");
    for (std::size_t i = 0; i < here.fill_kg.size(); ++i) {
        const document::Hole& hole = here.document.holes[i];
        const auto inside = holes::contents(hole, holes::place(hole, here.evaluation.body));
        CHECK(inside.fill_kg > 0.0);
        CHECK_THAT(here.fill_kg[i], Catch::Matchers::WithinRel(inside.fill_kg, 1e-12));
    }
}
