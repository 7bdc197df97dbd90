#include "document/fields.hpp"
#include "evenfall.hpp"
#include "support/small_lures.hpp"

#include <catch2/catch_test_macros.hpp>

using namespace evenfall;

TEST_CASE("however much overlaps in a lure, evaluate refuses it with twenty problems at most") {
    document::Document d = support::block();
    d.pockets.resize(document::max_pockets);
    d.holes.assign(document::max_holes, support::belly_hole(60.0, 6.0, 20.0));
    for (document::Pocket& p : d.pockets) {
        p.x_from_m = 0.05;
        p.x_to_m = 0.07;
    }
    const auto refused = evaluate(d);
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.problems().size() == document::max_problems);
    CHECK(refused.problems().front().code == ProblemCode::overlap);
}
