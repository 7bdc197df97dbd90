// Wire that is built in weighs itself: hinges and hangers by their geometry.

#include "base/trade.hpp"
#include "body/fittings.hpp"
#include "ledger/fold.hpp"
#include "support/small_lures.hpp"
#include "support/worked.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using ledger::Kind;
using support::worked;
using units::g_from_kg;
using units::kg_from_g;
using units::m_from_mm;

namespace {

document::Document with_hanger(document::HangerKind kind) {
    document::Document d = support::block();
    document::Hanger hanger;
    hanger.kind = kind;
    hanger.x_m = m_from_mm(40);
    hanger.wire_m = m_from_mm(1);
    hanger.eye_inside_m = m_from_mm(3);
    hanger.turns = 4;
    hanger.depth_m = m_from_mm(15);
    d.hangers = {hanger};
    return d;
}

document::Document hinged(document::HingeKind kind) {
    document::Document d = support::block();
    document::Joint joint;
    joint.at_m = m_from_mm(60);
    joint.hinge = document::Hinge{};
    joint.hinge->kind = kind;
    joint.hinge->pin_aft_m = m_from_mm(4);
    joint.hinge->weighs = true;
    joint.hinge->glue = document::HingeGlue::epoxy;
    d.joints = {joint};
    d.segment_names = {"Fore", "Aft"};
    return d;
}

double grams_of(const Evaluation& e, Kind kind) {
    double kg = 0.0;
    for (const ledger::Line& line : e.ledger)
        if (line.kind == kind && line.mass_kg > 0.0) kg += line.mass_kg;
    return g_from_kg(kg);
}

} // namespace

TEST_CASE("a twisted hanger weighs the wire that is cut for it, and the glue in its hole") {
    const Evaluation e = worked(with_hanger(document::HangerKind::twisted));
    // By hand: ring 300/360·π·4 mm = 10.472 mm; four turns of √(4.5² + π²) = 5.48804 mm on two legs = 43.904
    // mm; two ends of 2 mm; together 58.376 mm of 0.785398 mm² of stainless at 7.90 g/cm³.
    const double wire_g = 58.376 * 0.785398e-3 * 7.90;
    // 15 mm of its hole of 2.2 mm (57.020 mm³) hold 15/20 of 47.904 mm of wire, 28.218 mm³; epoxy 1.15 g/cm³.
    const double glue_g = (57.020 - 28.218) * 1e-3 * 1.15;
    CHECK_THAT(grams_of(e, Kind::hanger), WithinRel(wire_g + glue_g, 1e-4));
    // The bore took 57.020 mm³ of wood at 0.5 g/cm³ with it.
    const double block_g = g_from_kg(worked(support::block()).answers.mass.kg);
    CHECK_THAT(g_from_kg(e.answers.mass.kg) - block_g, WithinAbs(wire_g + glue_g - 0.028510, 2e-5));
}

TEST_CASE("only what stands out of the wood displaces water") {
    const Answers bare = worked(support::block()).answers;
    const Answers a = worked(with_hanger(document::HangerKind::twisted)).answers;
    // Ring 10.472 mm and the 5 of 20 mm of shank that the hole does not take, 11.976 mm of wire.
    CHECK_THAT((a.displaced_m3 - bare.displaced_m3) * 1e9, WithinRel((10.472 + 11.976) * 0.785398, 1e-4));
}

TEST_CASE("a screw eye is a ring and a shank of one wire") {
    const Evaluation e = worked(with_hanger(document::HangerKind::screw));
    // π·4 mm + 15 mm of wire.
    CHECK_THAT(grams_of(e, Kind::hanger), WithinRel((12.56637 + 15.0) * 0.785398e-3 * 7.90, 1e-5));
}

TEST_CASE("a wire straight through has an eye at either end") {
    const Evaluation e = worked(with_hanger(document::HangerKind::straight));
    const auto all = fittings::fittings(with_hanger(document::HangerKind::straight), e.body);
    REQUIRE(all.size() == 1);
    // Through 30 mm of wood, from 2.5 mm under the belly to 2.5 mm over the back.
    CHECK_THAT(all[0].wire_m3 * 1e9, WithinRel((30.0 + 2.0 * 12.56637) * 0.785398, 1e-6));
    REQUIRE(all[0].eyes_m.size() == 2);
    CHECK_THAT(all[0].eyes_m[0].z, WithinAbs(-0.0175, 1e-12));
    CHECK_THAT(all[0].eyes_m[1].z, WithinAbs(0.0175, 1e-12));
}

TEST_CASE("a weighed hanger weighs what the scale says, wherever it sits") {
    document::Document d = with_hanger(document::HangerKind::screw);
    d.hangers[0].mass_kg = kg_from_g(0.4);
    CHECK_THAT(grams_of(worked(d), Kind::hanger), WithinRel(0.4, 1e-12));
}

TEST_CASE("a hanger holds on to the segment that it sits in") {
    document::Document d = hinged(document::HingeKind::pinned);
    d.hangers = with_hanger(document::HangerKind::twisted).hangers;
    for (const auto& [on, x_mm, segment] : {std::tuple{document::HangerOn::nose, 0.0, 0},
                                            {document::HangerOn::tail, 0.0, 1},
                                            {document::HangerOn::belly, 30.0, 0},
                                            {document::HangerOn::back, 90.0, 1}}) {
        d.hangers[0].on = on;
        d.hangers[0].x_m = m_from_mm(x_mm);
        for (const ledger::Line& line : worked(d).ledger)
            if (line.kind == Kind::hanger) CHECK(line.segment == segment);
    }
}

TEST_CASE("a hinge that weighs itself counts the wire of its eyes and its pin") {
    const Evaluation e = worked(hinged(document::HingeKind::pinned));
    // By hand: an eye of 0.9 mm wire, 2 mm inside, 6 turns: ring 300/360·π·2.9 = 7.5922 mm, 2·6·√(4.05² +
    // (0.9π)²) = 59.2715 mm, ends 4 mm: 70.864 mm of 0.636173 mm², two of them; the pin of 1.2 mm is 26 mm
    // of 1.130973 mm².
    CHECK_THAT(grams_of(e, Kind::hinge),
               WithinRel((2.0 * 70.864 * 0.636173 + 26.0 * 1.130973) * 7.90e-3, 1e-4));
}

TEST_CASE("linked eyes are counted on both sides, without a pin") {
    const Evaluation e = worked(hinged(document::HingeKind::linked));
    CHECK_THAT(grams_of(e, Kind::hinge), WithinRel(4.0 * 70.864 * 0.636173 * 7.90e-3, 1e-4));
    double fore = 0.0, aft = 0.0;
    for (const ledger::Line& line : e.ledger)
        if (line.kind == Kind::hinge && line.mass_kg > 0.0) (line.segment == 0 ? fore : aft) += line.mass_kg;
    CHECK_THAT(fore, WithinRel(aft, 1e-12));
}

TEST_CASE("a weighed hinge replaces the computed mass of eyes and pin together") {
    document::Document d = hinged(document::HingeKind::pinned);
    d.joints[0].hinge->mass_kg = kg_from_g(1.1);
    CHECK_THAT(grams_of(worked(d), Kind::hinge), WithinRel(1.1, 1e-12));
}

TEST_CASE("a hinge of an older document weighs nothing beside its parts") {
    document::Document d = hinged(document::HingeKind::pinned);
    d.joints[0].hinge->weighs = false;
    CHECK(grams_of(worked(d), Kind::hinge) == 0.0);
}

TEST_CASE("a twist set in dry lets water into its hole") {
    document::Document d = hinged(document::HingeKind::pinned);
    const Answers glued = worked(d).answers;
    d.joints[0].hinge->glue = document::HingeGlue::none;
    const Answers dry = worked(d).answers;
    CHECK(dry.mass < glued.mass);
    CHECK(dry.displaced_m3 < glued.displaced_m3);
}

TEST_CASE("wire that takes the place of all wood is refused by name") {
    document::Document d = with_hanger(document::HangerKind::screw);
    d.shape.half_width = {{0.0, m_from_mm(0.5)}, {m_from_mm(120), m_from_mm(0.5)}};
    d.shape.back = {{0.0, m_from_mm(0.5)}, {m_from_mm(120), m_from_mm(0.5)}};
    d.shape.belly = {{0.0, m_from_mm(-0.5)}, {m_from_mm(120), m_from_mm(-0.5)}};
    d.hangers[0].wire_m = m_from_mm(3);
    d.hangers[0].depth_m = m_from_mm(100);
    const auto outcome = evaluate(d);
    REQUIRE_FALSE(outcome.ok());
    CHECK(outcome.problems().front().path == "/hangers/0/depth_mm");
}
