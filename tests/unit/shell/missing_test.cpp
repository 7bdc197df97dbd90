#include "state/missing.hpp"

#include "state/session.hpp"

#include <catch2/catch_test_macros.hpp>

using namespace evenfall;
using namespace evenfall::shell::state;

TEST_CASE("a lure says what is still missing, thing by thing, and nothing once all is there",
          "[shell][missing]") {
    document::Document d = new_lure();
    CHECK(missing_words(d) == "Still missing: lead, hooks, coats.");
    d.holes.emplace_back();
    CHECK(missing_words(d) == "Still missing: hooks, coats.");
    d.parts.emplace_back();
    CHECK(missing_words(d) == "Still missing: hooks, coats.");
    d.parts.back().stage = Stage::rigged;
    d.coats.emplace_back();
    CHECK(missing_words(d).empty());
}

TEST_CASE("that it rolls over is no warning before there is a hole for lead, and is one from then on",
          "[shell][missing]") {
    const Problems both{{ProblemCode::capsizes, "", "", "rolls over"},
                        {ProblemCode::does_not_fit, "/board", "", "too short a board"}};
    document::Document d = new_lure();
    const Problems calm = warnings_shown(d, both);
    REQUIRE(calm.size() == 1);
    CHECK(calm.front().code == ProblemCode::does_not_fit);
    d.holes.emplace_back();
    CHECK(warnings_shown(d, both).size() == 2);
}
