// The tail's lines in the ledger, and what they do to the lure.

#include "body/drawn_lines.hpp"
#include "body/tail_loft.hpp"
#include "ledger/fold.hpp"
#include "materials/solids.hpp"
#include "support/soft_tails.hpp"
#include "support/worked.hpp"
#include "water/afloat/float_answers.hpp"
#include "water/afloat/hull.hpp"
#include "water/fall/drag_items.hpp"
#include "workshop/hook_swing.hpp"
#include "workshop/tail_pull.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using support::worked;

namespace {

double loft_m3(const document::Tail& tail) {
    return tail::shaped(tail)->segments.front().volume_m3;
}

document::Document without_tail(document::Document d) {
    d.tail.reset();
    return d;
}

} // namespace

TEST_CASE("a tail adds exactly its mass and, in a flooded slot, exactly its volume", "[tail][properties]") {
    for (const bool fish : {false, true}) {
        document::Document d = support::block_with_tail();
        if (fish) {
            d = support::fish();
            d.tail = support::paddle(0.150);
        }
        const Answers with = worked(d).answers;
        const Answers bare = worked(without_tail(d)).answers;
        const double volume = loft_m3(*d.tail) + tail::tenon_m3(*d.tail);
        CHECK_THAT(with.mass.kg - bare.mass.kg, WithinRel(volume * tail::density_kg_m3(*d.tail), 1e-9));
        CHECK_THAT(with.displaced_m3 - bare.displaced_m3, WithinRel(volume, 1e-9));
        // It is put on last: every stage before it is as it was.
        for (std::size_t s = 0; s + 1 < with.stages.size(); ++s) {
            CHECK(with.stages[s].mass.kg == bare.stages[s].mass.kg);
            CHECK(with.stages[s].in_water.kg == bare.stages[s].in_water.kg);
        }
        CHECK(with.segments.back().mass.kg > bare.segments.back().mass.kg);
    }
}

TEST_CASE(
    "a tail as dense as the water leaves the weight in water as it was, but for what a dry slot holds of it",
    "[tail][properties]") {
    document::Document d = support::block_with_tail();
    const Answers bare = worked(without_tail(d)).answers;
    d.tail->density_kg_m3 = bare.water_density_kg_m3;
    CHECK_THAT(worked(d).answers.in_water.kg, WithinAbs(bare.in_water.kg, 1e-12));
    d.pockets[0].floods = false;
    const Answers dry = worked(without_tail(d)).answers;
    CHECK_THAT(worked(d).answers.in_water.kg - dry.in_water.kg,
               WithinRel(tail::tenon_m3(*d.tail) * bare.water_density_kg_m3, 1e-6));
}

TEST_CASE("a tenon in a slot that stays dry weighs and displaces nothing", "[tail]") {
    document::Document d = support::block_with_tail();
    d.pockets[0].floods = false;
    const Answers with = worked(d).answers;
    const Answers bare = worked(without_tail(d)).answers;
    CHECK_THAT(with.displaced_m3 - bare.displaced_m3, WithinRel(loft_m3(*d.tail), 1e-9));
    CHECK_THAT(with.mass.kg - bare.mass.kg,
               WithinRel((loft_m3(*d.tail) + tail::tenon_m3(*d.tail)) * tail::density_kg_m3(*d.tail), 1e-9));
    // A root that stands 2 mm behind the wood leaves that much of the tenon in the open.
    d.tail->x_m = 0.122;
    CHECK_THAT(worked(d).answers.displaced_m3 - bare.displaced_m3,
               WithinRel(loft_m3(*d.tail) + 0.002 * 0.0025 * 0.010, 1e-9));
}

TEST_CASE(
    "with its tenon the size of the slot, a flooded slot displaces as much as the uncut block and the tail",
    "[tail]") {
    document::Document d = support::block_with_tail();
    d.tail->tenon = document::Tenon{0.014, 0.003, 0.014};
    CHECK_THAT(worked(d).answers.displaced_m3, WithinRel(0.120 * 0.020 * 0.030 + loft_m3(*d.tail), 1e-9));
}

TEST_CASE("a tail's two lines have its centroids and its inertia", "[tail]") {
    const document::Document d = support::block_with_tail();
    std::vector<ledger::Line> lines;
    for (const ledger::Line& line : worked(d).ledger) {
        if (line.kind == ledger::Kind::tail) lines.push_back(line);
    }
    REQUIRE(lines.size() == 2);
    const shape::Segment s = tail::shaped(*d.tail)->segments.front();
    CHECK_THAT(lines[0].at_m.x, WithinRel(0.120 + s.centroid_m.x, 1e-12));
    CHECK_THAT(lines[0].at_m.z, WithinRel(0.001 + s.centroid_m.z, 1e-12));
    CHECK_THAT(lines[0].own_kg_m2.yy, WithinRel(s.inertia_m5.yy * tail::density_kg_m3(*d.tail), 1e-12));
    CHECK_THAT(lines[1].at_m.x, WithinRel(0.114, 1e-12));
    // A brick of 12 × 2.5 × 10 mm.
    CHECK_THAT(lines[1].own_kg_m2.zz,
               WithinRel(lines[1].mass_kg * (0.012 * 0.012 + 0.0025 * 0.0025) / 12.0, 1e-12));
    for (const ledger::Line& line : lines) {
        CHECK(line.stage == Stage::rigged);
        CHECK(line.segment == 0);
    }
}

TEST_CASE("a tail pulls as its moments say: plastic heavier than water behind the wood lifts the nose",
          "[tail]") {
    document::Document d = support::fish();
    d.tail = support::paddle(0.150);
    d.tail->density_kg_m3 = 1250.0;
    const Evaluation with = worked(d);
    const auto tail_effect = tail::tail_effect(d, with);
    REQUIRE(tail_effect.ok());
    CHECK_THAT(tail_effect->own.mass.kg,
               WithinRel(with.answers.mass.kg - tail_effect->without.mass.kg, 1e-9));
    CHECK_THAT(tail_effect->own.in_water(with.answers.water_density_kg_m3).kg,
               WithinRel(with.answers.in_water.kg - tail_effect->without.in_water.kg, 1e-9));
    REQUIRE((with.answers.pitch_rad && tail_effect->without.pitch_rad));
    CHECK(*with.answers.pitch_rad > *tail_effect->without.pitch_rad);
    // Statics by hand: G and B each move by the tail's share of their moments.
    const double g =
        (tail_effect->without.g_m.x * tail_effect->without.mass.kg + tail_effect->own.mass_moment_kg_m.x) /
        with.answers.mass.kg;
    CHECK_THAT(with.answers.g_m.x, WithinRel(g, 1e-12));
}

TEST_CASE("a document's own density and its doubt replace the table's", "[tail]") {
    document::Document d = support::block_with_tail();
    CHECK(tail::density_kg_m3(*d.tail) == materials::find_solid("plastisol")->density_kg_m3.value);
    const double table = worked(d).answers.in_water_sigma.kg;
    d.tail->density_kg_m3 = materials::find_solid("plastisol")->density_kg_m3.value;
    const double weighed = worked(d).answers.in_water_sigma.kg;
    d.tail->density_spread = 0.0;
    const double sure = worked(d).answers.in_water_sigma.kg;
    CHECK(table > weighed);
    CHECK(weighed > sure);
}

TEST_CASE("a correction of the tail's plastic moves its mass alone, one of its size both", "[tail]") {
    document::Document d = support::block_with_tail();
    const Answers plain = worked(d).answers;
    const double mass = worked(d).answers.mass.kg - worked(without_tail(d)).answers.mass.kg;
    d.corrections = {{document::Cause::tail, 0, 1.1, {}}};
    CHECK_THAT(worked(d).answers.mass.kg - plain.mass.kg, WithinRel(0.1 * mass, 1e-9));
    CHECK(worked(d).answers.displaced_m3 == plain.displaced_m3);
    d.corrections = {{document::Cause::tail, 1, 1.1, {}}};
    CHECK_THAT(worked(d).answers.mass.kg - plain.mass.kg, WithinRel(0.1 * mass, 1e-9));
    CHECK(worked(d).answers.displaced_m3 > plain.displaced_m3);
}

TEST_CASE("the water drags at a tail by its own areas, and only once it is on", "[tail]") {
    const document::Document d = support::block_with_tail();
    const Evaluation e = worked(d);
    const auto items = fall::drag_items(*e.body.lines, d, e.ledger);
    REQUIRE(items.size() == 1);
    const tail::ProjectedAreas s = tail::shadow(*d.tail);
    CHECK_THAT(items[0].cd_area_m2, WithinRel(1.2 * s.above_m2 + 0.04 * s.side_m2, 1e-12));
    CHECK(items[0].cd_area_low_m2 < items[0].cd_area_m2);
    CHECK(items[0].cd_area_high_m2 > items[0].cd_area_m2);
    CHECK(fall::drag_items(*e.body.lines, d, e.ledger, Stage::clear_coated).empty());
}

TEST_CASE("afloat, tail and tenon go under as boxes of their own volume", "[tail]") {
    const document::Document d = support::block_with_tail();
    const Evaluation e = worked(d);
    const afloat::FloatingHull hull(e.body, e.ledger, d);
    CHECK_THAT(hull.immersed({0.0, 0.0, 1.0}, 1.0).volume_m3, WithinRel(e.answers.displaced_m3, 1e-9));
    CHECK(afloat::float_answers(e.body, e.ledger, d, e.answers.water_density_kg_m3).ok());
}

TEST_CASE("a hook whose reach passes the root of the tail fouls it", "[tail]") {
    document::Document d = support::fish();
    d.tail = support::paddle(0.150);
    const auto lines = shape::drawn_lines(d.shape);
    REQUIRE(lines.ok());
    const auto body = shape::cut(*lines, d.joints);
    REQUIRE(body.ok());
    std::vector<joints::Pin> pins;
    joints::Swings swings;
    for (const document::Joint& j : d.joints) {
        pins.push_back({j.at_m, 0.0});
        for (auto& way : swings)
            way.push_back(0.0);
    }
    // Hung 18 mm before the root, at its height.
    const auto tail_foul = [&](double reach_m) {
        document::Part hook;
        hook.material = "steel";
        hook.at_m = {0.132, 0.0, d.tail->z_m - joints::hanger_share * reach_m};
        hook.reach_m = reach_m;
        d.parts = {hook};
        const auto fouls = joints::hook_fouls(d, *body, pins, swings);
        const auto found = std::find_if(fouls.begin(), fouls.end(), [](const joints::HookFoul& f) {
            return f.what == joints::FoulKind::tail;
        });
        return found == fouls.end() ? std::optional<joints::HookFoul>() : *found;
    };
    const auto long_one = tail_foul(0.020);
    REQUIRE(long_one);
    CHECK(long_one->other == -1);
    CHECK_THAT(long_one->over_m, WithinAbs(0.002, 1e-12));
    CHECK_FALSE(tail_foul(0.017));
}

TEST_CASE("a weighed soft tail behind a drawn one is warned of, a weighed one alone or before it is not",
          "[tail]") {
    const auto told = [](const document::Document& d) {
        const auto warnings = worked(d).answers.warnings;
        return std::count_if(warnings.begin(), warnings.end(),
                             [](const Problem& p) { return p.path == "/parts/0"; });
    };
    document::Document d = support::fish();
    document::Part fin;
    fin.stage = Stage::rigged;
    fin.material = "plastisol";
    fin.mass_kg = 0.001;
    fin.at_m = {0.170, 0.0, 0.0};
    d.parts = {fin};
    CHECK(told(d) == 0);
    d.tail = support::paddle(0.150);
    CHECK(told(d) == 1);
    d.parts[0].at_m.x = 0.100;
    CHECK(told(d) == 0);
    d.parts[0].at_m.x = 0.170;
    d.parts[0].material = "stainless";
    CHECK(told(d) == 0);
}
