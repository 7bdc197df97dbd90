// Sizes by hand in Shape, and the family of one body in Lead, under a finger.

#include "unit/shell/bench_of_tests.hpp"

#include "reach.hpp"

using namespace evenfall;
using namespace evenfall::shell;
using namespace evenfall::shell::bench_of_tests;

namespace {

void type(Bench& bench, const std::string& field, std::initializer_list<const char*> keys) {
    bench.reach(field);
    REQUIRE(bench.there("keypad.ok"));
    bench.tap_all(keys);
}

} // namespace

TEST_CASE("a weight in water typed in Shape is one change of thickness, as the core has it",
          "[shell][by_hand]") {
    Bench bench;
    const document::Document before = bench.app.document();
    bench.tap("step.shape");
    type(bench, "shape.for_weight", {"keypad.3", "keypad.ok"});
    const auto wanted = reach::thickness_for(before, 0.003);
    REQUIRE(wanted.ok());
    CHECK(bench.app.document_json() == write_document(*wanted));
    bench.tap("undo");
    CHECK(bench.app.document_json() == write_document(before));
}

TEST_CASE("another length typed in Shape has sizes of the shop, and they are told", "[shell][by_hand]") {
    Bench bench;
    const document::Document before = bench.app.document();
    bench.tap("step.shape");
    type(bench, "shape.at_length", {"keypad.1", "keypad.2", "keypad.0", "keypad.ok"});
    const auto wanted = reach::at_length(before, 0.120);
    REQUIRE(wanted.ok());
    CHECK_FALSE(wanted->chosen.empty());
    CHECK(bench.app.document_json() == write_document(wanted->document));
    bench.tap("undo");
    CHECK(bench.app.document_json() == write_document(before));
}

TEST_CASE("a weight that no thickness gives is refused in the keypad, and nothing is changed",
          "[shell][by_hand]") {
    Bench bench;
    const std::string before = bench.app.document_json();
    bench.tap("step.shape");
    type(bench, "shape.for_weight", {"keypad.9", "keypad.0", "keypad.0", "keypad.ok"});
    CHECK(bench.there("keypad.ok"));
    CHECK_FALSE(bench.app.last_problem().empty());
    CHECK(bench.app.document_json() == before);
}

TEST_CASE("each member of the family opens as a recipe of its own, and undo brings the lure back",
          "[shell][by_hand]") {
    Bench bench;
    const document::Document before = bench.app.document();
    const auto family = reach::family(before);
    REQUIRE(family.ok());
    for (std::size_t i = 0; i < family->size(); ++i) {
        bench.tap("step.lead");
        bench.reach("lead.family." + std::to_string(i));
        bench.reach("lead.family.own");
        const document::Document own = bench.app.document();
        CHECK(own.name != before.name);
        CHECK(own.name.starts_with(before.name));
        CHECK(own.log.empty());
        CHECK(own.targets.by == (*family)[i].plan.document.targets.by);
        const auto figures = reach::figures_of(own);
        REQUIRE(figures.ok());
        CHECK(figures->in_water_kg == (*family)[i].figures.in_water_kg);
        bench.tap("undo");
        CHECK(bench.app.document_json() == write_document(before));
    }
}
