// The lead plan and the forward path are two ways through one set of sums. Lures drawn by chance; a failure
// names seed and draw.

#include "document/write.hpp"
#include "support/random_lures.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("what a plan promises is what its document gives, and a plan that is met meets its targets",
          "[properties][random]") {
    int met = 0;
    support::each_random_lure(301, 300, [&](const support::RandomLure& lure, int) {
        const auto plan = plan_lead(lure.document);
        if (!plan.ok()) {
            CHECK_FALSE(plan.problems().empty());
            return;
        }
        const auto forward = evaluate(plan->document);
        REQUIRE(forward.ok());
        const Answers& a = forward->answers;
        CHECK_THAT(plan->after.mass.kg, WithinRel(a.mass.kg, 1e-13));
        CHECK_THAT(plan->after.in_water.kg, WithinAbs(a.in_water.kg, 1e-15));
        CHECK(plan->before.mass.kg == lure.evaluation.answers.mass.kg);
        REQUIRE(plan->after.fall.has_value() == a.fall.has_value());
        const document::Targets& t = lure.document.targets;
        if (!plan->met) {
            CHECK_FALSE(plan->shortfalls.empty());
            return;
        }
        ++met;
        REQUIRE(a.pitch_rad.has_value());
        CHECK_THAT(*a.pitch_rad, WithinAbs(t.pitch_rad, 0.05 * units::degree_rad));
        if (t.by == document::TargetBy::in_water) {
            CHECK_THAT(a.in_water.kg, WithinAbs(t.in_water_kg, 1e-5));
        } else {
            REQUIRE(a.fall.has_value());
            CHECK_THAT(a.fall->speed_m_s, WithinRel(t.fall_m_s, 2e-4));
        }
        // Holes that it may not touch, and everything else, stand as they stood.
        document::Document put_back = plan->document;
        REQUIRE(put_back.holes.size() == lure.document.holes.size());
        for (std::size_t i = 0; i < put_back.holes.size(); ++i) {
            if (lure.document.holes[i].use != document::HoleUse::fixed)
                put_back.holes[i] = lure.document.holes[i];
        }
        CHECK(document::same(put_back, lure.document));
        // No column longer than its hole lets it be.
        for (const HolePlan& h : plan->holes) {
            const document::Hole& hole = plan->document.holes[static_cast<std::size_t>(h.hole)];
            CHECK(h.depth_m <=
                  std::max(hole.max_depth_m, lure.document.holes[static_cast<std::size_t>(h.hole)].depth_m) +
                      1e-12);
            CHECK(h.mass_kg >= 0.0);
        }
    });
    CHECK(met > 30);
}
