// How long uncertainty takes, and what readings do for a first fall. Measured, never tested on time.

#include "bench/uncertainty/uncertainty.hpp"
#include "output/uncertainty_json.hpp"
#include "support/invented_lures.hpp"

#include <catch2/benchmark/catch_benchmark.hpp>
#include <catch2/catch_test_macros.hpp>

#include <cstdio>

using namespace evenfall;
using document::ReadingKind;

namespace {

document::Reading with_value(document::Reading r, double kg) {
    r.mass_kg = kg;
    return r;
}

document::Document half_built(const std::string& name) {
    document::Document d = invented::preset_named(name);
    const auto s = uncertainty(d);
    const auto& sealed = s->stages[static_cast<std::size_t>(Stage::sealed)];
    d.log.push_back(
        with_value(invented::weighed(ReadingKind::dry_weight, Stage::sealed), sealed.mass_kg.value + 0.001));
    d.log.push_back(
        with_value(invented::weighed(ReadingKind::held_under, Stage::sealed), sealed.displaced_kg.value));
    return d;
}

} // namespace

TEST_CASE("uncertainty", "[bench]") {
    for (const std::string name : {"millrace-170", "quarry-230"}) {
        const document::Document bare = invented::preset_named(name);
        const document::Document read = half_built(name);
        BENCHMARK("uncertainty " + name) {
            return uncertainty(bare);
        };
        BENCHMARK("uncertainty with two readings " + name) {
            return uncertainty(read);
        };
        BENCHMARK("do now " + name) {
            return do_now(read);
        };
        BENCHMARK("10000 draws " + name) {
            return uncertainty_by_draws(bare, 10'000);
        };
        BENCHMARK("10000 draws with two readings " + name) {
            return uncertainty_by_draws(read, 10'000);
        };
        auto run = DrawRun::start(bare);
        BENCHMARK("500 draws of a run " + name) {
            run->run(500);
            return run->count();
        };
        const auto s = uncertainty(bare);
        BENCHMARK("uncertainty as JSON " + name) {
            return output::uncertainty_json(bare, *s, std::nullopt, std::nullopt);
        };
    }
}

namespace {

struct Tally {
    double foretold = 0.0;
    Chances came{};
    double sigma_g = 0.0;
    int count = 0;
};

/// One way of working: readings before the lead, then lead; readings sealed, then the lead put right.
struct SwingSide {
    const char* name;
    std::vector<document::Reading> before_lead;
    std::vector<document::Reading> sealed;
    bool second_lure;
};

/// Builds one invented lure that way. True inputs `u` of this lure; `recipe` is what is believed when it is
/// begun.
void build(Tally& tally, const SwingSide& way, const document::Document& recipe, invented::Recipe& world,
           const Eigen::VectorXd& u, bench::Random& random) {
    document::Document document = recipe;
    const auto take_all = [&](invented::Recipe& from, const std::vector<document::Reading>& readings) {
        for (document::Reading r : readings) {
            if (from.take(r, u, random)) document.log.push_back(r);
        }
    };
    take_all(world, way.before_lead);
    const auto lead = do_now(document, Stage::carved);
    if (!lead.ok()) return;
    // The lead as it is cut; what is known stays in the log.
    document.holes = lead->document.holes;
    double foretold = uncertainty(document)->chances_corrected.both;
    double sigma = uncertainty(document)->in_water_kg.sigma;
    if (!way.sealed.empty()) {
        document::Document leaded = world.model().document();
        leaded.holes = document.holes;
        invented::Recipe there(leaded);
        take_all(there, way.sealed);
        const auto s = uncertainty(document);
        foretold = s->chances_corrected.both;
        sigma = s->in_water_kg.sigma;
        const auto now = do_now(document, Stage::sealed);
        if (!now.ok()) return;
        document.holes = now->document.holes;
    }
    document::Document built = world.as_built(u);
    built.holes = document.holes;
    const auto truth = evaluate(built);
    if (!truth.ok()) return;
    const Chances right = invented::is_right(built, truth->answers);
    tally.foretold += foretold;
    tally.sigma_g += 1e3 * sigma;
    tally.came.fall += right.fall;
    tally.came.pitch += right.pitch;
    tally.came.both += right.both;
    ++tally.count;
}

} // namespace

TEST_CASE("first-fall table", "[.table]") {
    const document::Document recipe = invented::preset_named("millrace-170");
    const auto dry = [](Stage s) { return invented::weighed(ReadingKind::dry_weight, s); };
    const auto held = [](Stage s) { return invented::weighed(ReadingKind::held_under, s); };
    const std::vector<SwingSide> ways{
        {"no reading at all", {}, {}, false},
        {"board weighed and measured", {invented::board()}, {}, false},
        {"body weighed dry", {dry(Stage::carved)}, {}, false},
        {"body dry and held under", {dry(Stage::carved), held(Stage::carved)}, {}, false},
        {"the same, and sealed: dry and held under",
         {dry(Stage::carved), held(Stage::carved)},
         {dry(Stage::sealed), held(Stage::sealed)},
         false},
        {"the same, and sealed: made to hang with a clip",
         {dry(Stage::carved), held(Stage::carved)},
         {dry(Stage::sealed), held(Stage::sealed), invented::clipped(Stage::sealed)},
         false},
        {"the same, hooks and tail on: timed over 0.5 m by hand",
         {dry(Stage::carved), held(Stage::carved)},
         {dry(Stage::sealed), held(Stage::sealed), invented::with_all(invented::timed(Stage::sealed, 0.5))},
         false},
        {"the same, hooks and tail on: timed over 1 m by hand",
         {dry(Stage::carved), held(Stage::carved)},
         {dry(Stage::sealed), held(Stage::sealed), invented::with_all(invented::timed(Stage::sealed, 1.0))},
         false},
        {"second lure, first one read when finished",
         {dry(Stage::carved), held(Stage::carved)},
         {dry(Stage::sealed), held(Stage::sealed)},
         true},
    };
    constexpr std::uint64_t lures = 1000;
    std::printf("| readings | spread of weight in water g | foretold | fall right | hang right | both right "
                "|\n|---|---|---|---|---|---|\n");
    for (const SwingSide& way : ways) {
        Tally tally;
        for (std::uint64_t n = 0; n < lures; ++n) {
            bench::Random random(42, n);
            invented::Recipe world(recipe);
            Eigen::VectorXd u = world.truth(random);
            document::Document start = recipe;
            if (way.second_lure) {
                // The first lure shares part of each input with the second; it is read finished, as it came.
                Eigen::VectorXd first = world.truth(random);
                for (Eigen::Index i = 0; i < u.size(); ++i) {
                    const double shared =
                        bench::shared_fraction(world.model().inputs()[static_cast<std::size_t>(i)]);
                    const double common = std::sqrt(shared) * random.normal();
                    u(i) = common + std::sqrt(1.0 - shared) * u(i);
                    first(i) = common + std::sqrt(1.0 - shared) * first(i);
                }
                document::Document log = recipe;
                document::Reading hung = invented::weighed(ReadingKind::hung_in_water, Stage::rigged);
                hung.mass_sigma_kg = bench::hung_sigma_kg;
                for (document::Reading r :
                     {dry(Stage::carved), held(Stage::carved), dry(Stage::sealed), held(Stage::sealed),
                      dry(Stage::rigged), hung, invented::timed(Stage::rigged, 1.0)}) {
                    if (world.take(r, first, random)) log.log.push_back(r);
                }
                start = for_next_lure(log).value();
            }
            build(tally, way, start, world, u, random);
        }
        std::printf("| %s | %.2f | %.0f %% | %.0f %% | %.0f %% | %.0f %% |\n", way.name,
                    tally.sigma_g / tally.count, 100.0 * tally.foretold / tally.count,
                    100.0 * tally.came.fall / tally.count, 100.0 * tally.came.pitch / tally.count,
                    100.0 * tally.came.both / tally.count);
        std::fflush(stdout);
    }
}
