#include "body/glue_gap.hpp"

#include "base/trade.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("glue round straight legs is the hole less two wires", "[glue]") {
    // By hand: 20 mm deep, 2 mm bit, 0.9 mm wire: π/4·20·(4 − 1.62) = 37.385 mm³.
    const auto gap = glue::gap_m3({});
    REQUIRE(gap.ok());
    CHECK_THAT(units::cm3_from_m3(*gap), WithinAbs(0.037385, 1e-6));
}

TEST_CASE("a tighter twist leaves less room for glue, and twice the depth takes twice the glue",
          "[glue][properties]") {
    glue::EyeHole h;
    double before = *glue::gap_m3(h);
    for (const double diameters : {9.0, 4.5, 3.0}) {
        h.pitch_m = diameters * h.wire_m;
        const double now = *glue::gap_m3(h);
        CHECK(now < before);
        CHECK(now > 0.0);
        before = now;
    }
    h.glued_m *= 2.0;
    CHECK_THAT(*glue::gap_m3(h), WithinRel(2.0 * before, 1e-14));
}

TEST_CASE("a hole narrower than the twist is refused by name", "[glue]") {
    glue::EyeHole h;
    h.bit_m = 1.7e-3;
    const auto gap = glue::gap_m3(h);
    REQUIRE_FALSE(gap.ok());
    CHECK(gap.problems().front().path == "/bit_mm");
}
