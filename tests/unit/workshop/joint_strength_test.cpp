#include "unit/workshop/answered_joint.hpp"
#include "unit/workshop/hinged_block.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <numbers>

using namespace evenfall;
using namespace evenfall::joints;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using support::answered;
using support::hinged_block;
using support::warns_of;

namespace {

// 0.43 of basswood's 990 psi, by the block's 500 kg/m³ over 414.4 of the species at 12 %.
constexpr double basswood_counted_pa = 0.43 * 990.0 * 6894.757293168 * 500.0 / (0.37 * 1120.0);

} // namespace

TEST_CASE("every pocket round the pin has its eye; three share the load no better than two", "[joints]") {
    document::Document d = hinged_block();
    document::Pocket third = d.pockets[0];
    third.z_from_m = -0.0015;
    third.z_to_m = 0.0015;
    const double two_n = answered(d).joints[0].strength.eye_n;
    d.pockets.push_back(third);
    const JointAnswer j = answered(d).joints[0];
    REQUIRE(j.eyes.size() == 3);
    CHECK(j.eyes[1].place.z_m == 0.0);
    CHECK_THAT(j.place.eye_spacing_m, WithinAbs(0.016, 1e-12));
    CHECK(j.strength.eye_n == two_n);
}

TEST_CASE("a twist holds by as much of its glued depth as its wire reaches, and a shorter wire is warned of",
          "[joints]") {
    document::Document d = hinged_block();
    document::Hinge& h = *d.joints[0].hinge;
    const double bit_m = 0.0020; // for a twist of 1.8 mm
    const auto pull_out_n = [&](double deep_m) {
        return 1.5 * std::numbers::pi * bit_m * deep_m * basswood_counted_pa;
    }; // two eyes
    CHECK_THAT(answered(d).joints[0].strength.pull_out_n, WithinRel(pull_out_n(0.020), 1e-9));
    CHECK_FALSE(warns_of(answered(d), "the twist reaches"));
    // Eye 2 mm inside, wire 0.9 mm, two turns of 4.05 mm, legs of 2 mm; pin 5 mm behind the fore face: 12 mm
    // less those.
    h.turns = 2.0;
    h.glued_m = 0.090;
    const JointsAnswer shallow = answered(d);
    CHECK_THAT(shallow.joints[0].twist_reach_m, WithinAbs(0.0070, 1e-12));
    CHECK_THAT(shallow.joints[0].strength.pull_out_n, WithinRel(pull_out_n(0.0070), 1e-9));
    CHECK(warns_of(shallow, "the twist reaches 7.0 mm into the wood, not the 90.0 mm that it is glued deep"));
    // Linked eyes 2.9 mm across their middles hang midway 0.725 mm to either side of the pin, and the farther
    // face counts.
    h.kind = document::HingeKind::linked;
    h.pin_aft_m = 0.0005;
    d.pockets.clear();
    CHECK_THAT(answered(d).joints[0].twist_reach_m, WithinAbs(0.0120 - 0.0015 + 0.000725, 1e-12));
    h.turns = 0.0;
    h.pin_aft_m = 0.030;
    CHECK(answered(d).joints[0].strength.pull_out_n == 0.0);
}

TEST_CASE(
    "what is glued into balsa holds a third of what basswood holds, and a light board less than a heavy one",
    "[joints]") {
    document::Document d = hinged_block();
    d.wood.density_kg_m3.reset();
    const auto held = [&] { return answered(d).joints[0].strength; };
    const auto bass = held();
    d.wood.species = "balsa";
    const auto balsa = held();
    CHECK_THAT(balsa.pull_out_n / bass.pull_out_n, WithinRel(300.0 / 990.0, 1e-9));
    CHECK_THAT(balsa.wall_n / bass.wall_n, WithinRel(300.0 / 990.0, 1e-9));
    CHECK(balsa.wood_n < 0.35 * bass.wood_n);
    CHECK(balsa.eye_n == bass.eye_n);
    // A board that the builder weighed: its own density counts.
    d.wood.species = "basswood";
    d.wood.density_kg_m3 = 0.8 * 0.37 * 1.12 * 1000.0; // the handbook's gravity at 12 %, a fifth lighter
    const auto light = held();
    CHECK_THAT(light.pull_out_n / bass.pull_out_n, WithinRel(0.8, 1e-9));
    CHECK_THAT(light.wood_n / bass.wood_n, WithinRel(std::pow(0.8, 1.84), 1e-9));
}

TEST_CASE("a stronger line lowers the safety in proportion; only a joint before a hook is warned of once "
          "hooks are known",
          "[joints]") {
    document::Document d = hinged_block();
    d.targets.line_n = 50.0;
    const double light = answered(d).joints[0].strength.safety;
    d.targets.line_n = 500.0;
    CHECK_THAT(answered(d).joints[0].strength.safety, WithinRel(light / 10.0, 1e-12));
    CHECK_FALSE(warns_of(answered(d), "less than twice")); // there is no hook yet
    document::Part hook;
    hook.stage = Stage::rigged;
    hook.mass_kg = 0.001;
    hook.at_m = {0.030, 0.0, -0.02};
    d.parts = {hook}; // perhaps a hook: without its reach nobody knows
    CHECK(warns_of(answered(d), "if a hook hangs behind it"));
    hook.reach_m = 0.010;
    hook.at_m = {0.030, 0.0, -0.02};
    d.parts = {hook};
    CHECK_FALSE(warns_of(answered(d), "less than twice"));
    d.parts[0].at_m.x = 0.100;
    CHECK(warns_of(answered(d), "less than twice"));
    // What carries the hook decides, not where it stands: one of the aft half, leaning forward, hangs behind
    // the joint.
    d.parts[0].at_m.x = 0.058;
    CHECK_FALSE(warns_of(answered(d), "less than twice"));
    d.parts[0].segment = 1;
    CHECK(warns_of(answered(d), "less than twice"));
    d.parts[0].at_m.x = 0.062;
    d.parts[0].segment = 0;
    CHECK_FALSE(warns_of(answered(d), "less than twice"));
}
