// The demo lures, their lead planned, behave as their notes say.

#include "evenfall.hpp"
#include "materials/water_properties.hpp"
#include "support/presets.hpp"
#include "water/fall/descent.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <string>

using namespace evenfall;
using namespace evenfall::fall;
using Catch::Matchers::WithinAbs;

namespace {

FallingLure planned(const std::string& name) {
    const auto plan = plan_lead(support::preset_named(name));
    REQUIRE(plan.ok());
    REQUIRE(plan->met);
    const document::Document& d = plan->document;
    const auto e = evaluate(d);
    REQUIRE(e.ok());
    return {e->body, e->ledger, d,
            materials::water_properties(d.water.temperature_c, d.water.salinity_g_kg).value()};
}

} // namespace

TEST_CASE("Millrace falls slowly, a little nose-down, and glides forward", "[fall]") {
    const SteadyFalls all = planned("millrace-170").steady();
    REQUIRE(all.main);
    const SteadyFall& f = all.falls[*all.main];
    CHECK((f.vertical_m_s > 0.10 && f.vertical_m_s < 0.20));
    CHECK((f.pitch_rad < 0.0 && f.pitch_rad > -0.2));
    CHECK(f.forward_m_s > 0.0);
    // The hooks and tail that a level fall of the bare body leaves out slow it, but within the doubt that is
    // shown with it.
    CHECK(f.vertical_m_s < 0.160);
    CHECK(f.vertical_band_m_s.high > 0.9 * 0.160);
}

TEST_CASE("Reedline, drawn under and let go, comes up", "[fall]") {
    const auto track = planned("reedline-120").track();
    REQUIRE(track.ok());
    CHECK(track->reached_s);
    CHECK(track->vertical_m_s < 0.0);
}

TEST_CASE("Quarry hangs still where it is meant to and has no fall", "[fall]") {
    const FallingLure d = planned("quarry-230");
    CHECK_THAT(d.in_water_kg(), WithinAbs(0.0, 2e-6));
    CHECK(d.steady().falls.empty());
    CHECK(d.in(materials::water_properties(20.0, 0.0).value()).main_fall().value().vertical_m_s > 0.01);
}

TEST_CASE("Estuary falls fast", "[fall]") {
    const auto f = planned("estuary-150").main_fall();
    REQUIRE(f);
    CHECK(f->vertical_m_s > 0.25);
}
