#include "bench/lead/lead_plan.hpp"
#include "bench/lead/problem.hpp"
#include "bench/other_material.hpp"
#include "document/work_done.hpp"
#include "materials/tackle.hpp"
#include "reach.hpp"
#include "reach/costs.hpp"
#include "reach/hooks.hpp"
#include "reach/region.hpp"
#include "reach/shop_bits.hpp"
#include "support/presets.hpp"
#include "support/small_lures.hpp"
#include "water/hang.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <functional>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using document::Document;
using reach::Kind;
using reach::Region;

namespace {

/// The lure asked for what it only just can: a share of the way from its least weight to its greatest, and
/// the hang in the middle of what it reaches there; absent where that is steeper than may be asked.
std::optional<Document> asked_for(Document d, double share) {
    const auto lure = evaluate(d);
    REQUIRE(lure.ok());
    const auto inputs = ledger::ledger_inputs(d, lure->body);
    const Region region(lead::problem_of(lure->ledger, *inputs, waters_of(d)->fishing));
    const auto all = region.weights();
    REQUIRE(all.has_value());
    const double kg = all->least_kg + share * (all->most_kg - all->least_kg);
    const auto up = region.border(kg, Region::Side::nose_up);
    const auto down = region.border(kg, Region::Side::nose_down);
    REQUIRE((up && down));
    d.targets.by = document::TargetBy::in_water;
    d.targets.in_water_kg = kg;
    d.targets.pitch_rad = 0.5 * (*water::hang(*up).pitch_rad + *water::hang(*down).pitch_rad);
    if (std::abs(d.targets.pitch_rad) > reach::steepest_hang_rad) return std::nullopt;
    const auto plan = plan_lead(d);
    REQUIRE(plan.ok());
    REQUIRE(plan->met);
    return d;
}

/// A change that makes it harder, and what the way back would cost.
struct Known {
    const char* name;
    double share; ///< of what is asked, see above
    double cost;
    std::function<void(Document&)> harder;
};

std::vector<Known> known_changes() {
    const auto once = [](Kind kind, double steps) { return cost_of(kind).once + cost_of(kind).each * steps; };
    const auto thickness = [](double by_m) {
        return [by_m](Document& d) {
            double half = 0.0;
            for (const auto& p : d.shape.half_width)
                half = std::max(half, p.value);
            for (auto& p : d.shape.half_width)
                p.value *= 1.0 + 0.5 * by_m / half;
        };
    };
    return {
        {"thinner", 0.03, once(Kind::thickness, 1.5), thickness(-1.5e-3)},
        {"thicker", 0.97, once(Kind::thickness, 1.5), thickness(1.5e-3)},
        {"much thicker", 0.85, once(Kind::thickness, 3.0), thickness(3e-3)},
        {"lighter metal", 0.85, once(Kind::other_metal, 0.0),
         [](Document& d) { d = bench::with_metal(d, "tin"); }},
        {"shallower hole", 0.97, once(Kind::deeper_holes, 6.0),
         [](Document& d) {
             d.holes.front().max_depth_m = std::max(d.holes.front().max_depth_m - 6e-3, 0.004);
         }},
        {"thinner bit", 0.97, once(Kind::wider_bits, 2.0),
         [](Document& d) {
             const auto bits = reach::shop_bits_m(d);
             document::Hole& hole = d.holes.front();
             const auto at = std::lower_bound(bits.begin(), bits.end(), hole.diameter_m - 1e-5);
             if (at - bits.begin() >= 2) hole.diameter_m = *(at - 2);
         }},
    };
}

} // namespace

TEST_CASE("a target known to be within reach by a known change is found at no greater cost", "[reach]") {
    int tried = 0;
    for (const Document& d : {support::fish(), support::four_piece(), support::preset_named("millrace-170"),
                              support::preset_named("quarry-230"), support::preset_named("reedline-120"),
                              support::preset_named("estuary-150")}) {
        for (const Known& known : known_changes()) {
            INFO(d.name << ", " << known.name);
            const auto asked = asked_for(d, known.share);
            if (!asked) continue;
            Document harder = *asked;
            known.harder(harder);
            if (!evaluate(harder).ok()) continue;
            const auto ways = reach::ways_out(harder, {harder.targets});
            REQUIRE(ways.ok());
            if (ways->met) continue; // there was more room than thought
            ++tried;
            REQUIRE_FALSE(ways->ways.empty());
            CHECK(ways->ways.front().cost <= known.cost + 1e-9);
        }
    }
    CHECK(tried >= 12);
}

TEST_CASE("a lure whose lead does it needs no way out", "[reach]") {
    const Document d = support::preset_named("millrace-170");
    auto search = reach::Search::start(d, {d.targets});
    REQUIRE(search.ok());
    CHECK(search->done());
    CHECK_FALSE(search->step());
    CHECK(search->found().met);
    CHECK(search->found().ways.empty());
    CHECK(search->progress() == 1.0);
}

TEST_CASE("a search in slices ends where the whole search does, and its progress never falls back far",
          "[reach]") {
    const Document d = support::preset_named("millrace-170");
    reach::Goal goal{d.targets};
    goal.targets.fall_m_s = 0.35;
    const auto whole = reach::ways_out(d, goal);
    auto search = reach::Search::start(d, goal);
    REQUIRE((whole.ok() && search.ok()));
    int slices = 0;
    while (search->step()) {
        CHECK_FALSE(search->progress() > 1.0);
        REQUIRE(++slices < 5000);
    }
    CHECK(search->done());
    CHECK(slices > 50);
    REQUIRE(search->found().ways.size() == whole->ways.size());
    for (std::size_t k = 0; k < whole->ways.size(); ++k) {
        CHECK(search->found().ways[k].change == whole->ways[k].change);
        CHECK(document::same(search->found().ways[k].document, whole->ways[k].document));
    }
}

TEST_CASE("a chance that is too low is told, and every way out is as sure as asked", "[reach]") {
    Document d = support::preset_named("millrace-170");
    d.targets.fall_m_s = 0.3;
    const auto now = reach::ways_out(d, {d.targets});
    REQUIRE((now.ok() && now->met));
    const double chance = std::min(now->before.chance + 0.03, reach::greatest_chance);
    const auto ways = reach::ways_out(d, {d.targets, chance});
    REQUIRE(ways.ok());
    CHECK_FALSE(ways->met);
    REQUIRE(ways->shortfalls.size() == 1);
    CHECK(ways->shortfalls.front().path == "/chance");
    CHECK_FALSE(ways->ways.empty());
    for (const reach::Way& way : ways->ways)
        CHECK(way.after.chance >= chance);
}

TEST_CASE("a lure that would roll over gets ways that keep it upright", "[reach]") {
    Document d = support::preset_named("millrace-170");
    document::Part weight;
    weight.name = "Weight on the back";
    weight.stage = Stage::rigged;
    weight.material = "steel";
    weight.mass_kg = 0.017;
    weight.at_m = {0.06, 0.0, 0.018};
    d.parts.push_back(weight);
    d.targets.fall_m_s = 0.25;
    const auto ways = reach::ways_out(d, {d.targets});
    REQUIRE(ways.ok());
    CHECK_FALSE(ways->met);
    CHECK_FALSE(ways->ways.empty());
    for (const reach::Way& way : ways->ways)
        CHECK(way.after.bg_m >= reach::least_bg_m);
}

TEST_CASE("what is carved and drilled stays: a piece on the bench gets no other wood or shape", "[reach]") {
    Document d = support::preset_named("millrace-170");
    d = plan_lead(d)->document;
    for (document::Hole& hole : d.holes) {
        if (hole.depth_m > 0.0 && hole.use == document::HoleUse::ballast)
            hole.use = document::HoleUse::drilled;
    }
    reach::Goal goal{d.targets};
    goal.targets.fall_m_s = 0.45;
    const auto ways = reach::ways_out(d, goal);
    REQUIRE(ways.ok());
    CHECK_FALSE(ways->met);
    for (const reach::Way& way : ways->ways) {
        for (const Kind kind : way.kinds)
            CHECK((kind != Kind::other_wood && kind != Kind::thickness && kind != Kind::belly &&
                   kind != Kind::back && kind != Kind::joint_moved));
        for (std::size_t i = 0; i < d.holes.size(); ++i)
            CHECK(way.document.holes[i].depth_m >= d.holes[i].depth_m - 1e-12);
    }
}

TEST_CASE("a goal beyond any lure is refused with its range", "[reach]") {
    const Document d = support::preset_named("millrace-170");
    const auto refused = [&](const std::function<void(reach::Goal&)>& change, const char* path) {
        reach::Goal goal{d.targets};
        change(goal);
        const auto ways = reach::ways_out(d, goal);
        REQUIRE_FALSE(ways.ok());
        CHECK(ways.problems().front().path == path);
        CHECK_FALSE(ways.problems().front().limit.empty());
    };
    refused([](reach::Goal& g) { g.targets.fall_m_s = 3.0; }, "/targets/fall_mm_s");
    refused([](reach::Goal& g) { g.targets.fall_m_s = 0.004; }, "/targets/fall_mm_s");
    refused([](reach::Goal& g) { g.targets.pitch_rad = units::rad_from_deg(60.0); }, "/targets/pitch_deg");
    refused([](reach::Goal& g) { g.chance = 1.0; }, "/chance");
    refused(
        [](reach::Goal& g) {
            g.targets.by = document::TargetBy::in_water;
            g.targets.in_water_kg = 0.5;
        },
        "/targets/in_water_g");
}

TEST_CASE("a hook of another size weighs and reaches as the table has it, and keeps the maker's share",
          "[reach]") {
    document::Part hook;
    hook.name = "Front hook, size 6";
    hook.stage = Stage::rigged;
    hook.mass_kg = 1.1 * 0.95e-3;
    hook.reach_m = 0.022;
    REQUIRE(reach::is_hook(hook));
    document::Part larger = hook;
    reach::change_hook(larger, 2);
    CHECK(larger.name == "Front hook, size 2");
    CHECK_THAT(larger.mass_kg, WithinAbs(1.1 * 2.25e-3, 1e-9));
    CHECK_THAT(*larger.reach_m, WithinAbs(0.031, 1e-9));
    reach::change_hook(larger, -2);
    CHECK(larger.name == hook.name);
    CHECK_THAT(larger.mass_kg, WithinAbs(hook.mass_kg, 1e-12));
    CHECK_THAT(larger.at_m.z, WithinAbs(hook.at_m.z, 1e-12));
}

TEST_CASE("readings of the drilled piece stay readings of the holes that a way changes", "[reach]") {
    Document d = support::preset_named("millrace-170");
    d.targets.by = document::TargetBy::fall;
    d.targets.fall_m_s = 0.4;
    document::Reading reading;
    reading.kind = document::ReadingKind::dry_weight;
    reading.stage = Stage::drilled;
    reading.mass_kg = evaluate(d)->answers.stages[static_cast<std::size_t>(Stage::drilled)].mass.kg;
    document::put_down(d, reading);
    const auto ways = reach::ways_out(d, {d.targets, {}});
    REQUIRE(ways.ok());
    REQUIRE_FALSE(ways->ways.empty());
    const Document& changed = ways->ways.front().document;
    REQUIRE(changed.log.size() == 1);
    REQUIRE(changed.log.front().before_change);
    const Document then = document::before_change(changed, *changed.log.front().before_change);
    REQUIRE(then.holes.size() >= d.holes.size());
    for (std::size_t i = 0; i < d.holes.size(); ++i)
        CHECK(then.holes[i].depth_m == d.holes[i].depth_m);
}
