// Coats by surface: what a film or a soak weighs and pushes aside on skin, joint faces and in pockets.

#include "evenfall.hpp"
#include "ledger/fold.hpp"
#include "support/small_lures.hpp"
#include "support/worked.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <numbers>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using support::worked;

namespace {

constexpr double epoxy_kg_m3 = 1150.0;

/// The block of 120 × 20 × 30 mm with a slot of 20 × 4 × 20 mm up from the belly.
document::Document slotted(bool floods) {
    document::Document d = support::block();
    document::Pocket p;
    p.x_from_m = 0.040;
    p.x_to_m = 0.060;
    p.width_m = 0.004;
    p.z_to_m = 0.005;
    p.floods = floods;
    d.pockets = {p};
    return d;
}

document::Coat film(double thickness_m) {
    document::Coat c;
    c.material = "epoxy";
    c.thickness_m = thickness_m;
    c.on_pockets = true;
    return c;
}

ledger::Sum inside(const Evaluation& e) {
    ledger::Sum sum;
    for (const ledger::Line& line : e.ledger) {
        if (line.kind == ledger::Kind::coat && line.pocket >= 0) sum += line;
    }
    return sum;
}

} // namespace

TEST_CASE("a film in a flooding slot lies on its four walls and roof, shares its inner edges, and takes the "
          "place of water",
          "[ledger]") {
    document::Document d = slotted(true);
    const double t = 0.0002;
    d.coats = {film(t)};
    const Evaluation e = worked(d);
    const double walls = 2.0 * (0.020 + 0.004) * 0.020 + 0.020 * 0.004;
    const double edges = 4.0 * 0.020 + 2.0 * (0.020 + 0.004);
    const ledger::Sum sum = inside(e);
    CHECK_THAT(sum.displaced_m3, WithinRel(walls * t - edges * t * t, 1e-9));
    CHECK_THAT(sum.mass.kg, WithinRel(sum.displaced_m3 * epoxy_kg_m3, 1e-9));
    // Bare, and with the same coat left out of the slot, the block pushes aside that much less and the
    // mouth's film more.
    document::Document without = d;
    without.coats[0].on_pockets = false;
    const double mouth = 0.020 * 0.004;
    const double skin = 2.0 * (0.120 * 0.020 + 0.120 * 0.030 + 0.020 * 0.030);
    // A box's edges add π·(a + b + c)·t² (Steiner 1840); the mouth takes its share of that by area.
    const double bend = std::numbers::pi * (0.120 + 0.020 + 0.030) * t * t * mouth / skin;
    CHECK_THAT(e.answers.displaced_m3 - worked(without).answers.displaced_m3,
               WithinAbs(walls * t - edges * t * t - mouth * t - bend, 1e-12));
}

TEST_CASE("a film in a slot that stays dry weighs and pushes nothing aside", "[ledger]") {
    document::Document d = slotted(false);
    d.coats = {film(0.0002)};
    const ledger::Sum sum = inside(worked(d));
    CHECK(sum.mass.kg > 0.0);
    CHECK(sum.displaced_m3 == 0.0);
}

TEST_CASE("a film thicker than the slot is wide fills the slot and no more", "[ledger]") {
    document::Document d = slotted(true);
    d.coats = {film(0.004)};
    const ledger::Sum sum = inside(worked(d));
    CHECK(sum.displaced_m3 <= 0.020 * 0.004 * 0.020 * (1.0 + 1e-9));
}

TEST_CASE("films one over the other never take more than the slot, the last has what the others left, and "
          "what soaks in takes no room",
          "[ledger]") {
    document::Document d = slotted(true);
    document::Coat soak = film(0.0);
    soak.kind = document::CoatKind::soaks;
    soak.thickness_m.reset();
    soak.mass_kg = 0.100;
    document::Coat weighed = film(0.0);
    weighed.thickness_m.reset();
    weighed.mass_kg = 0.200;
    d.coats = {soak, film(0.0009), film(0.0009), film(0.0009)};
    const double room_m3 = 0.020 * 0.004 * 0.020;
    const Evaluation three = worked(d);
    CHECK_THAT(inside(three).displaced_m3, WithinAbs(room_m3, 1e-12));
    d.coats = {film(0.0009)};
    const double first_m3 = inside(worked(d)).displaced_m3;
    REQUIRE(first_m3 < room_m3);
    d.coats = {film(0.0009), weighed};
    CHECK_THAT(inside(worked(d)).displaced_m3, WithinAbs(room_m3, 1e-12));
    d.coats = {weighed, film(0.0009)};
    const Evaluation last = worked(d);
    CHECK_THAT(inside(last).displaced_m3, WithinAbs(room_m3, 1e-12));
}

TEST_CASE("a coat by its mass on joint faces alone is refused where there is no joint", "[ledger]") {
    document::Document d = support::block();
    document::Coat c = film(0.0002);
    c.on_skin = c.on_pockets = false;
    c.on_joint_faces = true;
    d.coats = {c};
    CHECK(evaluate(d).ok()); // a thickness on nothing
    d.coats[0].thickness_m.reset();
    d.coats[0].mass_kg = 0.003;
    const auto refused = evaluate(d);
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.problems().front().path == "/coats/0/surfaces");
    CHECK(refused.problems().front().sentence.text(evenfall::units::metric) ==
          "Coat 1 goes onto the joint faces alone, and the lure has no joint.");
    d.coats[0].on_pockets = true;
    CHECK(evaluate(d).problems().front().sentence.text(evenfall::units::metric) ==
          "Coat 1 goes onto joint faces and into pockets alone, and the lure has neither.");
    d.segment_names = {"Fore", "Aft"};
    d.joints = {document::Joint{}};
    d.joints[0].at_m = 0.060;
    CHECK(worked(d).answers.coats[0].mass.kg == 0.003);
}

TEST_CASE("a coat given by its mass leaves that mass on the lure, in the pockets their share by area",
          "[ledger]") {
    for (const bool pockets : {false, true}) {
        document::Document d = slotted(true);
        document::Coat c = film(0.0);
        c.thickness_m.reset();
        c.mass_kg = 0.003;
        c.on_pockets = pockets;
        d.coats = {c};
        const Evaluation e = worked(d);
        CHECK_THAT(e.answers.coats[0].mass.kg, WithinRel(0.003, 1e-12));
        if (!pockets) continue;
        const double walls = 2.0 * (0.020 + 0.004) * 0.020 + 0.020 * 0.004;
        const double skin = 2.0 * (0.120 * 0.020 + 0.120 * 0.030 + 0.020 * 0.030) - 0.020 * 0.004;
        CHECK_THAT(inside(e).mass.kg, WithinRel(0.003 * walls / (walls + skin), 1e-3));
    }
}

TEST_CASE("a document without the word pockets keeps its coats as they were", "[ledger]") {
    document::Document d = slotted(true);
    d.coats = {film(0.0002)};
    d.coats[0].on_pockets = false;
    const Evaluation e = worked(d);
    CHECK(inside(e).mass.kg == 0.0);
    CHECK(write_document(d).find("\"pockets\"]") == std::string::npos);
}

TEST_CASE("what the water lets one feel of a coat is 1 − ρw/ρ of a film and all of what soaks in",
          "[ledger]") {
    document::Document d = support::block();
    document::Coat clear = film(0.00035);
    clear.on_pockets = false;
    document::Coat sealer = clear;
    sealer.kind = document::CoatKind::soaks;
    sealer.stage = Stage::sealed;
    sealer.thickness_m.reset();
    sealer.mass_kg = 0.00412;
    d.coats = {sealer, clear};
    const Answers a = worked(d).answers;
    REQUIRE(a.coats.size() == 2);
    CHECK_THAT(a.coats[0].in_water_share, WithinAbs(1.0, 1e-15));
    CHECK_THAT(a.coats[0].in_water.kg, WithinRel(0.00412, 1e-12));
    CHECK(a.coats[0].displaced_m3 == 0.0);
    CHECK_THAT(a.coats[1].in_water_share, WithinRel(1.0 - a.water_density_kg_m3 / epoxy_kg_m3, 1e-12));
    CHECK_THAT(a.coats[1].mass.kg, WithinRel(a.coats[1].displaced_m3 * epoxy_kg_m3, 1e-12));
    // The lure is heavier in water by exactly what its coats make it.
    document::Document bare = d;
    bare.coats.clear();
    CHECK_THAT(a.in_water.kg - worked(bare).answers.in_water.kg,
               WithinAbs(a.coats[0].in_water.kg + a.coats[1].in_water.kg, 1e-12));
}

TEST_CASE("a coat for pockets alone is refused by name where there is no pocket", "[ledger]") {
    document::Document d = support::block();
    d.coats = {film(0.0002)};
    d.coats[0].on_skin = d.coats[0].on_joint_faces = false;
    const auto refused = evaluate(d);
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.problems().front().path == "/coats/0/surfaces");
    CHECK(refused.problems().front().sentence.text(evenfall::units::metric) ==
          "Coat 1 goes into the pockets alone, and there is no pocket in the wood.");
}
