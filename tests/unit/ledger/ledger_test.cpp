#include "base/trade.hpp"
#include "evenfall.hpp"
#include "ledger/fold.hpp"
#include "materials/solids.hpp"
#include "materials/woods.hpp"
#include "support/small_lures.hpp"
#include "support/worked.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <numbers>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using support::worked;
using units::kg_from_g;
using units::m_from_mm;

namespace {

double circle_m2(double diameter_mm) {
    return std::numbers::pi / 4.0 * m_from_mm(diameter_mm) * m_from_mm(diameter_mm);
}

document::Hole block_hole(double depth_mm) {
    document::Hole hole = support::belly_hole(60, 8, 25);
    hole.use = document::HoleUse::fixed;
    hole.depth_m = m_from_mm(depth_mm);
    hole.cap.reset();
    hole.fill.reset();
    return hole;
}

constexpr double block_m3 = 0.120 * 0.020 * 0.030;

} // namespace

TEST_CASE("a bare block weighs its volume times its density and displaces its volume") {
    const Answers a = worked(support::block()).answers;
    CHECK_THAT(a.mass.kg, WithinRel(block_m3 * 500.0, 1e-12));
    CHECK_THAT(a.displaced_m3, WithinRel(block_m3, 1e-12));
    CHECK_THAT(a.in_water.kg, WithinAbs(block_m3 * (500.0 - a.water_density_kg_m3), 1e-12));
    CHECK_THAT(a.g_m.x, WithinAbs(0.060, 1e-12));
    CHECK_THAT(a.g_m.z, WithinAbs(0.0, 1e-12));
    CHECK(a.behaviour == Behaviour::floats);
    CHECK_FALSE(a.fall.has_value());
}

TEST_CASE("an open hole takes out wood and floods") {
    document::Document d = support::block();
    d.holes = {block_hole(20)};
    const Answers a = worked(d).answers;
    const double hole_m3 = circle_m2(8) * 0.020;
    CHECK_THAT(a.mass.kg, WithinRel((block_m3 - hole_m3) * 500.0, 1e-12));
    CHECK_THAT(a.displaced_m3, WithinRel(block_m3 - hole_m3, 1e-12));
}

TEST_CASE("a capped empty hole takes out wood, adds its cap and still displaces the whole") {
    document::Document d = support::block();
    d.holes = {block_hole(20)};
    d.holes[0].cap = document::Cap{"ca_soda", 0.002};
    const Answers a = worked(d).answers;
    const double cap_kg = circle_m2(8) * 0.002 * materials::find_solid("ca_soda")->density_kg_m3.value;
    CHECK_THAT(a.mass.kg, WithinRel((block_m3 - circle_m2(8) * 0.020) * 500.0 + cap_kg, 1e-12));
    CHECK_THAT(a.displaced_m3, WithinRel(block_m3, 1e-12));
}

TEST_CASE("lead under a cap is mass without displacement, and lies at the deep end") {
    document::Document d = support::block();
    d.holes = {block_hole(20)};
    d.holes[0].cap = document::Cap{"ca_soda", 0.002};
    const Evaluation empty = worked(d);
    d.holes[0].fill = document::Fill{"lead", kg_from_g(4.0), std::nullopt, std::nullopt};
    const Evaluation full = worked(d);
    CHECK_THAT(full.answers.mass.kg - empty.answers.mass.kg, WithinRel(0.004, 1e-12));
    CHECK_THAT(full.answers.displaced_m3, WithinRel(empty.answers.displaced_m3, 1e-15));
    CHECK_THAT(full.answers.in_water.kg - empty.answers.in_water.kg, WithinRel(0.004, 1e-10));
    const double column_m = 0.004 / 11340.0 / circle_m2(8);
    int fills = 0;
    for (const ledger::Line& line : full.ledger) {
        if (line.kind != ledger::Kind::fill) continue;
        CHECK_THAT(line.at_m.z, WithinAbs(-0.015 + 0.020 - 0.5 * column_m, 1e-9));
        ++fills;
    }
    CHECK(fills == 1);
}

TEST_CASE("lead in an open hole pushes back out the water that it takes the place of") {
    document::Document d = support::block();
    d.holes = {block_hole(20)};
    const Answers open = worked(d).answers;
    d.holes[0].fill = document::Fill{"lead", kg_from_g(4.0), std::nullopt, std::nullopt};
    const Answers full = worked(d).answers;
    CHECK_THAT(full.displaced_m3 - open.displaced_m3, WithinRel(0.004 / 11340.0, 1e-9));
}

TEST_CASE("a hole bored by mistake and plugged to the skin with the same wood changes next to nothing") {
    document::Document d = support::block();
    const Answers before = worked(d).answers;
    d.holes = {block_hole(20)};
    d.holes[0].cap = document::Cap{"dowel", 0.020};
    const Answers after = worked(d).answers;
    const double plug = materials::find_solid("dowel")->density_kg_m3.value;
    CHECK_THAT(after.mass.kg - before.mass.kg, WithinRel(circle_m2(8) * 0.020 * (plug - 500.0), 1e-9));
    CHECK_THAT(after.displaced_m3, WithinRel(before.displaced_m3, 1e-15));
}

TEST_CASE("stock by length weighs its own round, not the hole's") {
    document::Document d = support::block();
    d.holes = {block_hole(20)};
    d.holes[0].cap = document::Cap{};
    const Answers empty = worked(d).answers;
    d.holes[0].fill = document::Fill{"lead", std::nullopt, 0.010, 0.006};
    CHECK_THAT(worked(d).answers.mass.kg - empty.mass.kg, WithinRel(circle_m2(6) * 0.010 * 11340.0, 1e-9));
}

TEST_CASE("a drill point goes on beyond the depth: 118° adds πd³·0.3004/12 (geometry)") {
    document::Document d = support::block();
    d.holes = {block_hole(15)};
    const double flat = worked(d).answers.displaced_m3;
    d.holes[0].end = document::HoleEnd::point_118;
    const double pointed = worked(d).answers.displaced_m3;
    CHECK_THAT(flat - pointed, WithinRel(std::numbers::pi * 0.008 * 0.008 * 0.008 * 0.30043 / 12.0, 1e-5));
}

TEST_CASE("a film of m grams is felt in water as m(1 − ρw/ρ), soaked sealer as all of m") {
    document::Document d = support::block();
    const Answers bare = worked(d).answers;
    document::Coat coat;
    coat.mass_kg = kg_from_g(4.0);
    coat.material = "epoxy";
    d.coats = {coat};
    const double epoxy = materials::find_solid("epoxy")->density_kg_m3.value;
    const Answers filmed = worked(d).answers;
    CHECK_THAT(filmed.in_water.kg - bare.in_water.kg,
               WithinRel(0.004 * (1.0 - bare.water_density_kg_m3 / epoxy), 1e-9));
    d.coats[0].kind = document::CoatKind::soaks;
    d.coats[0].stage = Stage::sealed;
    CHECK_THAT(worked(d).answers.in_water.kg - bare.in_water.kg, WithinRel(0.004, 1e-9));
}

TEST_CASE("one gram of lead stuck outside is 0.912 g in fresh water (hand sum, 1 − 998.2/11340)") {
    document::Document d = support::block();
    const Answers bare = worked(d).answers;
    document::Part lump;
    lump.material = "lead";
    lump.mass_kg = kg_from_g(1.0);
    lump.at_m = {0.06, 0.0, -0.016};
    d.parts = {lump};
    CHECK_THAT(worked(d).answers.in_water.kg - bare.in_water.kg, WithinAbs(0.912e-3, 0.0005e-3));
}

TEST_CASE("a part let into the wood makes room for itself and displaces only what stands out") {
    document::Document d = support::block();
    const Answers bare = worked(d).answers;
    document::Part eye;
    eye.material = "stainless";
    eye.mass_kg = kg_from_g(0.79);
    eye.at_m = {0.0, 0.0, 0.0};
    eye.embedded = 0.75;
    d.parts = {eye};
    const double volume = 0.00079 / materials::find_solid("stainless")->density_kg_m3.value;
    const Answers with = worked(d).answers;
    CHECK_THAT(with.mass.kg - bare.mass.kg, WithinRel(0.00079 - 0.75 * volume * 500.0, 1e-9));
    CHECK_THAT(with.displaced_m3 - bare.displaced_m3, WithinRel(0.25 * volume, 1e-6));
}

TEST_CASE("parts let into the wood leave some of it, alone and together with pockets") {
    document::Document d = support::block(); // 72 cm³
    document::Part part;
    part.name = "keel";
    part.material = "lead";
    part.embedded = 1.0;
    part.at_m = {0.060, 0.0, 0.0};
    part.mass_kg = 11340.0 * 71e-6;
    d.parts = {part};
    CHECK(evaluate(d).ok());
    d.parts[0].mass_kg = 11340.0 * 73e-6;
    auto refused = evaluate(d);
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.problems().front().path == "/parts/0/embedded_percent");
    CHECK(refused.problems().front().sentence.text(evenfall::units::metric) ==
          "Part 1 (keel) takes the place of all the wood that is left of segment 1.");
    d.parts[0].embedded = 0.9;
    CHECK(evaluate(d).ok());
    document::Pocket pocket;
    pocket.x_from_m = 0.0;
    pocket.x_to_m = 0.012; // a tenth of the block
    pocket.width_m = 0.030;
    d.pockets = {pocket};
    CHECK_FALSE(evaluate(d).ok());
}

TEST_CASE("a flooded pocket takes its wood and its water away, a filled one only its wood") {
    document::Document d = support::block();
    document::Pocket pocket;
    pocket.x_from_m = 0.110;
    pocket.x_to_m = 0.125; // runs out of the tail: only 10 mm of it are wood
    pocket.width_m = 0.004;
    d.pockets = {pocket};
    const double cut = 0.010 * 0.004 * 0.030;
    const Answers flooded = worked(d).answers;
    CHECK_THAT(flooded.mass.kg, WithinRel((block_m3 - cut) * 500.0, 1e-9));
    CHECK_THAT(flooded.displaced_m3, WithinRel(block_m3 - cut, 1e-9));
    d.pockets[0].floods = false;
    CHECK_THAT(worked(d).answers.displaced_m3, WithinRel(block_m3, 1e-12));
}

TEST_CASE("stages only ever hold their own lines: each stage is the one before plus what was done") {
    const Evaluation e = worked(support::fish());
    const auto stage_sums = ledger::stage_sums(e.ledger, e.body.segments.size());
    for (std::size_t s = 1; s < stage_sums.through.size(); ++s) {
        double brought = 0.0;
        for (const ledger::Line& line : e.ledger) {
            if (static_cast<std::size_t>(line.stage) == s) brought += line.mass_kg;
        }
        CHECK_THAT(stage_sums.through[s].mass.kg - stage_sums.through[s - 1].mass.kg,
                   WithinAbs(brought, 1e-15));
    }
}

TEST_CASE("segments sum to the whole") {
    const Answers a = worked(support::fish()).answers;
    double mass = 0.0;
    double displaced = 0.0;
    double in_water = 0.0;
    for (const SegmentAnswer& s : a.segments) {
        mass += s.mass.kg;
        displaced += s.displaced_m3;
        in_water += s.in_water.kg;
    }
    CHECK_THAT(mass, WithinRel(a.mass.kg, 1e-12));
    CHECK_THAT(displaced, WithinRel(a.displaced_m3, 1e-12));
    CHECK_THAT(in_water, WithinAbs(a.in_water.kg, 1e-12));
}

TEST_CASE("spread of a bare block's mass is its wood's spread and its size's, added in squares") {
    const Answers a = worked(support::block()).answers;
    const double wood = 0.10 * block_m3 * 500.0;
    // 0.2 mm of the skin, both ends included.
    constexpr double size_m3 = 0.0002 * 2.0 * (0.120 * 0.020 + 0.020 * 0.030 + 0.030 * 0.120);
    const double size = size_m3 * 500.0;
    CHECK_THAT(a.mass_sigma.kg, WithinRel(std::hypot(wood, size), 1e-12));
    const double size_in_water = size_m3 * (500.0 - a.water_density_kg_m3);
    CHECK_THAT(a.in_water_sigma.kg, WithinRel(std::hypot(wood, size_in_water), 1e-12));
}

TEST_CASE("inertia of the bare block about its middle is the textbook's m(b² + c²)/12") {
    const Evaluation e = worked(support::block());
    const Inertia i = ledger::inertia_about(e.ledger, Stage::carved, {0.06, 0.0, 0.0});
    const double m = e.answers.mass.kg;
    CHECK_THAT(i.xx, WithinRel(m * (0.020 * 0.020 + 0.030 * 0.030) / 12.0, 1e-9));
    CHECK_THAT(i.yy, WithinRel(m * (0.120 * 0.120 + 0.030 * 0.030) / 12.0, 1e-9));
    CHECK_THAT(i.zz, WithinRel(m * (0.120 * 0.120 + 0.020 * 0.020) / 12.0, 1e-9));
}
