// Holes full of lead, and the trade's rules about them.

#include "base/trade.hpp"
#include "evenfall.hpp"
#include "support/small_lures.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using units::m_from_inch;

namespace {

double in_water(const document::Document& d) {
    const auto e = evaluate(d);
    REQUIRE(e.ok());
    return e->answers.in_water.kg;
}

double lead_kg(double diameter_m, double length_m) {
    document::Document d = support::block();
    document::Hole hole = support::belly_hole(60, 1, 25);
    hole.use = document::HoleUse::fixed;
    hole.diameter_m = diameter_m;
    hole.depth_m = length_m + 0.002;
    d.holes = {hole};
    d.holes[0].fill = document::Fill{"lead", std::nullopt, length_m, std::nullopt};
    const auto e = evaluate(d);
    REQUIRE(e.ok());
    for (const ledger::Line& line : e->ledger) {
        if (line.kind == ledger::Kind::fill) return line.mass_kg;
    }
    return 0.0;
}

} // namespace

TEST_CASE("ten millimetres of lead weigh 3.591, 5.611 and 8.080 g in 1/4, 5/16 and 3/8 in holes "
          "(π/4·d²·h·11.34 g/cm³, density CRC Handbook, from memory)") {
    CHECK_THAT(lead_kg(m_from_inch(0.25), 0.010), WithinAbs(3.591e-3, 0.0006e-3));
    CHECK_THAT(lead_kg(m_from_inch(0.3125), 0.010), WithinAbs(5.611e-3, 0.0006e-3));
    CHECK_THAT(lead_kg(m_from_inch(0.375), 0.010), WithinAbs(8.080e-3, 0.0006e-3));
}

TEST_CASE("an 8 mm hole of lead in wood of 560 kg/m³ brings 0.542 g in water per millimetre, a 6 mm one "
          "0.305 g (closed form (ρl − ρs)·A)") {
    for (const auto& [diameter_mm, per_mm_kg] : {std::pair{8.0, 0.542e-3}, std::pair{6.0, 0.305e-3}}) {
        document::Document d = support::block();
        d.wood.density_kg_m3 = 560.0;
        document::Hole hole = support::belly_hole(60, diameter_mm, 25);
        hole.use = document::HoleUse::fixed;
        hole.fill = document::Fill{"lead", std::nullopt, 0.005, std::nullopt};
        hole.depth_m = 0.007;
        d.holes = {hole};
        const double shallow = in_water(d);
        d.holes[0].fill->length_m = 0.006;
        d.holes[0].depth_m = 0.008;
        CHECK_THAT(in_water(d) - shallow, WithinAbs(per_mm_kg, 0.0005e-3));
    }
}

TEST_CASE("lead that is right in the tub is too much once paint and clear coat are on (common practice, no "
          "source)") {
    document::Document d = support::fish();
    const auto plan = plan_lead(d);
    REQUIRE(plan.ok());
    REQUIRE(plan->met);
    const auto& stages = plan->after.stages;
    const auto in_tub = [&](Stage s) { return stages[static_cast<std::size_t>(s)].in_tub.kg; };
    CHECK(in_tub(Stage::clear_coated) > in_tub(Stage::painted));
    CHECK(in_tub(Stage::painted) > in_tub(Stage::sealed));
}

TEST_CASE("stainless hardware takes over part of the lead's work (common practice, no source)") {
    document::Document with = support::fish();
    document::Document without = with;
    std::erase_if(without.parts, [](const document::Part& p) { return p.material == "stainless"; });
    const auto lead = [](const document::Document& d) {
        const auto plan = plan_lead(d);
        REQUIRE(plan.ok());
        REQUIRE(plan->met);
        double sum = 0.0;
        for (const HolePlan& h : plan->holes)
            sum += h.mass_kg;
        return sum;
    };
    CHECK(lead(with) < lead(without) - 0.001);
}

TEST_CASE("most lead lies in the first two of four segments (common practice, no source)") {
    const auto plan = plan_lead(support::four_piece());
    REQUIRE(plan.ok());
    INFO((plan->shortfalls.empty() ? "" : plan->shortfalls[0].sentence.text(evenfall::units::metric)));
    REQUIRE(plan->met);
    double fore = 0.0;
    double aft = 0.0;
    for (const HolePlan& h : plan->holes) {
        (plan->document.holes[static_cast<std::size_t>(h.hole)].x_m < 0.078 ? fore : aft) += h.mass_kg;
    }
    CHECK(fore > aft);
}
