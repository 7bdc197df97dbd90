#include "unit/shell/bench_of_tests.hpp"

#include "evenfall.hpp"

#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <string>

using namespace evenfall;
using namespace evenfall::shell::bench_of_tests;
using Catch::Matchers::WithinRel;

namespace {

double mass_kg(const Bench& bench) {
    const auto evaluation = evaluate(bench.app.document());
    REQUIRE(evaluation.ok());
    return evaluation->answers.mass.kg;
}

} // namespace

TEST_CASE("a tail is drawn, given a thinner tenon, refused one too thick for its slot, lengthened, and taken "
          "away by touch",
          "[shell][tail]") {
    Bench bench;
    const std::string before = write_document(bench.app.document());
    bench.tap("step.hardware");
    bench.reach("tail.add");
    REQUIRE(bench.app.document().tail.has_value());
    CHECK(bench.there("draw.tail"));
    CHECK(bench.there("draw.above.tail"));
    const double mass = mass_kg(bench);

    bench.reach("tail.tenon.thickness");
    bench.tap_all({"keypad.5", "keypad.ok"}); // the slot is 2 mm wide
    CHECK(bench.there("keypad.ok"));
    CHECK(bench.app.document().tail->tenon->thickness_m == 0.002);
    bench.tap("keypad.cancel");
    bench.reach("tail.tenon.thickness");
    bench.tap_all({"keypad.1", "keypad.ok"});
    CHECK_THAT(bench.app.document().tail->tenon->thickness_m, WithinRel(0.001, 1e-12));
    CHECK(mass_kg(bench) < mass);

    bench.reach("tail.length");
    bench.tap_all({"keypad.5", "keypad.0", "keypad.ok"});
    for (const auto* line : {&bench.app.document().tail->back, &bench.app.document().tail->belly,
                             &bench.app.document().tail->half_thickness})
        CHECK_THAT(line->back().x_m, WithinRel(0.050, 1e-12));

    bench.reach("tail.point.1");
    bench.reach("tail.point.value");
    bench.tap_all({"keypad.9", "keypad.ok"});
    CHECK_THAT(bench.app.document().tail->back[1].value, WithinRel(0.009, 1e-12));

    bench.reach("tail.remove");
    CHECK(write_document(bench.app.document()) == before);
    CHECK_FALSE(bench.there("draw.tail"));
}
