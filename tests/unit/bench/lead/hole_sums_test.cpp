#include "bench/lead/candidates.hpp"

#include "support/random_lures.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>

using namespace evenfall;
using Catch::Matchers::WithinAbs;

TEST_CASE("a hole's lines add up to its parabola at any length of fill", "[lead]") {
    int compared = 0;
    support::each_random_lure(611, 120, [&](const support::RandomLure& lure, int) {
        const auto inputs = ledger::ledger_inputs(lure.document, lure.evaluation.body);
        REQUIRE(inputs.ok());
        for (const lead::Candidate& c : lead::candidates(*inputs, lead::Which::leaded_too)) {
            const lead::HoleSums sums = lead::HoleSums::of(*inputs, c);
            const auto same = [&](const ledger::Sum& a, const ledger::Sum& b) {
                CHECK_THAT(a.mass.kg, WithinAbs(b.mass.kg, 1e-14));
                CHECK_THAT(a.displaced_m3, WithinAbs(b.displaced_m3, 1e-17));
                CHECK_THAT(a.mass_moment_kg_m.x, WithinAbs(b.mass_moment_kg_m.x, 1e-15));
                CHECK_THAT(a.mass_moment_kg_m.z, WithinAbs(b.mass_moment_kg_m.z, 1e-15));
                CHECK_THAT(a.displaced_moment_m4.z, WithinAbs(b.displaced_moment_m4.z, 1e-18));
            };
            same(sums.at(0.0, false), lead::contribution(*inputs, c, 0.0, false));
            if (!(c.upper_m > 0.0)) continue;
            for (const double share : {0.1, 0.37, 0.5, 0.83, 1.0}) {
                INFO("hole " << c.hole + 1 << ", " << share << " of its room");
                same(sums.at(share * c.upper_m, true),
                     lead::contribution(*inputs, c, share * c.upper_m, true));
                ++compared;
            }
        }
    });
    CHECK(compared > 500);
}
