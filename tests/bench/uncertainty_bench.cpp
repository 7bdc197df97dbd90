// How long uncertainty takes, and what readings do for a first fall. Measured, never tested on time.

#include "bench/uncertainty/uncertainty.hpp"
#include "ledger/build.hpp"
#include "output/uncertainty_json.hpp"
#include "support/invented_lures.hpp"

#include <catch2/benchmark/catch_benchmark.hpp>
#include <catch2/catch_test_macros.hpp>

#include <cmath>
#include <cstdio>
#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

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

/// As a carver fills a log who weighs every segment, calipers it, and lets it go in the tub with hooks and
/// tail on.
document::Document twenty_readings(const std::string& name) {
    document::Document d = invented::preset_named(name);
    invented::Recipe as_drawn(d);
    bench::Random random(1, 1);
    const Eigen::VectorXd u = as_drawn.truth(random);
    std::vector<document::Reading> readings;
    for (int n = 0; static_cast<int>(readings.size()) < 12; ++n) {
        for (const ReadingKind kind : {ReadingKind::dry_weight, ReadingKind::held_under}) {
            readings.push_back(invented::weighed(kind, Stage::carved));
            readings.back().segment = n % static_cast<int>(d.segment_names.size());
        }
    }
    for (const Stage stage : {Stage::drilled, Stage::sealed}) {
        for (const ReadingKind kind : {ReadingKind::dry_weight, ReadingKind::held_under})
            readings.push_back(invented::weighed(kind, stage));
    }
    readings.push_back(invented::with_all(invented::weighed(ReadingKind::hang_angle, Stage::sealed)));
    for (const double depth_m : {0.5, 1.0, 1.0})
        readings.push_back(invented::with_all(invented::timed(Stage::sealed, depth_m)));
    for (document::Reading& r : readings) {
        if (as_drawn.take(r, u, random)) d.log.push_back(r);
    }
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
        const document::Document twenty = twenty_readings(name);
        BENCHMARK("uncertainty with twenty readings " + name) {
            return uncertainty(twenty);
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
    int met = 0; ///< the lead could be put right
    Chances came{};
    double sigma_g = 0.0;
    int warned = 0; ///< of a log that disagrees with the spreads believed
    int count = 0;
};

/// One way of working: readings before the lead, then lead; readings sealed, then the lead put right.
struct Way {
    std::string name;
    std::vector<document::Reading> before_lead;
    std::vector<document::Reading> sealed;
    bool second_lure = false;
};

/// Builds one invented lure that way. True inputs `u` of this lure; `recipe` is what is believed when it is
/// begun.
void build(Tally& tally, const Way& way, const document::Document& recipe, invented::Recipe& world,
           const Eigen::VectorXd& u, bench::Random& random) {
    document::Document document = recipe;
    const auto take_all = [&](invented::Recipe& from, const Eigen::VectorXd& truth,
                              const std::vector<document::Reading>& readings) {
        for (document::Reading r : readings) {
            if (from.take(r, truth, random)) document.log.push_back(r);
        }
    };
    take_all(world, u, way.before_lead);
    auto now = do_now(document, Stage::carved);
    if (!now.ok()) return;
    // The lead as it is cut; what is known stays in the log.
    document.holes = now->document.holes;
    Outcome<Uncertainty> s = uncertainty(document);
    if (!way.sealed.empty()) {
        document::Document leaded = world.model().document();
        leaded.holes = document.holes;
        invented::Recipe there(leaded);
        take_all(there, there.same_truth(world, u), way.sealed);
        s = uncertainty(document);
        now = do_now(document, Stage::sealed);
        if (!now.ok()) return;
        document.holes = now->document.holes;
    }
    document::Document built = world.as_built(u);
    built.holes = document.holes;
    const auto truth = evaluate(built);
    if (!truth.ok() || !s.ok()) return;
    const Chances right = invented::is_right(built, truth->answers);
    tally.foretold += now->chances.both;
    tally.met += now->met ? 1 : 0;
    tally.sigma_g += 1e3 * s->in_water_kg.sigma;
    tally.warned += s->agreement.warning.empty() ? 0 : 1;
    tally.came.fall += right.fall;
    tally.came.pitch += right.pitch;
    tally.came.both += right.both;
    ++tally.count;
}

constexpr std::uint64_t lures = 1000;

document::Reading dry(Stage s) {
    return invented::weighed(ReadingKind::dry_weight, s);
}
document::Reading held(Stage s) {
    return invented::weighed(ReadingKind::held_under, s);
}
document::Reading caliper(Stage s, double x_m) {
    document::Reading r = invented::calipered(s, x_m);
    r.width_m = 0.02;
    return r;
}

const std::vector<document::Reading> carved_weighings{dry(Stage::carved), held(Stage::carved)};

/// Each segment weighed and dunked by itself once it is carved.
std::vector<document::Reading> segment_weighings(const document::Document& recipe) {
    const auto segments = static_cast<int>(recipe.segment_names.size());
    std::vector<document::Reading> all;
    for (int s = 0; s < segments; ++s) {
        for (document::Reading r : carved_weighings) {
            if (segments > 1) r.segment = s;
            all.push_back(r);
        }
    }
    return all;
}

/// Weighed and dunked, each segment carved and the whole sealed, and let go in the tub sealed with hooks and
/// tail hung on; how it hangs is read off a photo, or not looked at.
struct TubTest {
    double depth_m = 1.0;
    std::optional<double> video_m_s{}; ///< its speed, where it is filmed
    bool photo = false;
    bool segments = true; ///< weighed one by one, carved; else the whole
};
Way tub_test(const std::string& name, const document::Document& recipe, const TubTest& test) {
    // What is to float or suspend has no fall to be timed: a clip is found that keeps it hanging.
    const bool falls = recipe.targets.by == document::TargetBy::fall;
    document::Reading fall = invented::with_all(falls ? invented::timed(Stage::sealed, test.depth_m)
                                                      : invented::clipped(Stage::sealed));
    if (test.video_m_s) fall = invented::by_video(fall, 30.0, *test.video_m_s);
    Way way{name,
            test.segments ? segment_weighings(recipe) : carved_weighings,
            {dry(Stage::sealed), held(Stage::sealed), fall}};
    if (test.photo) {
        way.sealed.push_back(invented::with_all(invented::weighed(ReadingKind::hang_angle, Stage::sealed)));
    }
    return way;
}

/// The same where no bare wood goes into water: each segment of Millrace weighed dry, and a caliper across
/// it.
Way dry_tub_test(const std::string& name, const document::Document& recipe) {
    Way way = tub_test(name, recipe, {.photo = true});
    std::erase_if(way.before_lead, [](const auto& r) { return r.kind == ReadingKind::held_under; });
    for (const double x_m : {0.035, 0.090, 0.135}) {
        way.before_lead.push_back(caliper(Stage::carved, x_m));
        document::Reading high = caliper(Stage::carved, x_m);
        high.width_m.reset();
        high.height_m = 0.02;
        way.before_lead.push_back(high);
    }
    return way;
}

/// A second lure, and what its recipe has learnt of the first, which shares part of each input and was read
/// finished, as it came.
document::Document begin_second(const document::Document& recipe, invented::Recipe& world, Eigen::VectorXd& u,
                                bench::Random& random) {
    Eigen::VectorXd first = world.truth(random);
    for (Eigen::Index i = 0; i < u.size(); ++i) {
        const double shared = bench::shared_fraction(world.model().input(i));
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
    return for_next_lure(log).value();
}

/// What becomes of true inputs that are drawn otherwise than believed.
using Otherwise = std::function<void(const invented::Recipe&, Eigen::VectorXd&)>;

Tally thousand(const Way& way, const document::Document& recipe, const Otherwise& otherwise = {}) {
    Tally tally;
    for (std::uint64_t n = 0; n < lures; ++n) {
        bench::Random random(42, n);
        invented::Recipe world(recipe);
        Eigen::VectorXd u = world.truth(random);
        if (otherwise) otherwise(world, u);
        const document::Document start = way.second_lure ? begin_second(recipe, world, u, random) : recipe;
        build(tally, way, start, world, u, random);
    }
    return tally;
}

void print_row(const std::string& name, const Tally& t, bool warned = false) {
    const auto percent = [&](double sum) { return 100.0 * sum / t.count; };
    std::printf("| %s | %.2f | %.0f %% | %.0f %% | %.0f %% | %.0f %% | %.0f %% |", name.c_str(),
                t.sigma_g / t.count, percent(t.met), percent(t.foretold), percent(t.came.fall),
                percent(t.came.pitch), percent(t.came.both));
    if (warned) std::printf(" %.0f %% |", percent(t.warned));
    std::printf("%s\n", t.count < static_cast<int>(lures) ? " (some could not be built)" : "");
    std::fflush(stdout);
}

} // namespace

TEST_CASE("first-fall table", "[.table]") {
    const document::Document recipe = invented::preset_named("millrace-170");
    const double speed = recipe.targets.fall_m_s;
    const std::vector<document::Reading> sealed{dry(Stage::sealed), held(Stage::sealed)};
    const std::vector<Way> ways{
        {"none", {}, {}},
        {"board weighed and measured", {invented::board()}, {}},
        {"body weighed dry", {dry(Stage::carved)}, {}},
        {"body dry, and a caliper across each segment",
         {dry(Stage::carved), caliper(Stage::carved, 0.035), caliper(Stage::carved, 0.090),
          caliper(Stage::carved, 0.135)},
         {}},
        {"body dry and held under water", carved_weighings, {}},
        {"the same, and sealed: dry and held under", carved_weighings, sealed},
        {"the same, and made to hang with a clip",
         carved_weighings,
         {dry(Stage::sealed), held(Stage::sealed), invented::clipped(Stage::sealed)}},
        tub_test("the same, and hooks and tail on: timed over 1 m by hand", recipe, {.segments = false}),
        tub_test("– and how it hangs, off a photo", recipe, {.photo = true, .segments = false}),
        {"each segment dry and held under", segment_weighings(recipe), {}},
        {"the same, and sealed: dry and held under", segment_weighings(recipe), sealed},
        tub_test("the same, and hooks and tail on: timed over 0.5 m by hand", recipe, {.depth_m = 0.5}),
        tub_test("– over 1 m by hand", recipe, {}),
        tub_test("– over 0.5 m by video, 30 frames/s", recipe, {.depth_m = 0.5, .video_m_s = speed}),
        tub_test("– over 1 m by video, 30 frames/s", recipe, {.video_m_s = speed}),
        tub_test("– over 0.5 m by hand, and how it hangs, off a photo", recipe,
                 {.depth_m = 0.5, .photo = true}),
        tub_test("– over 1 m by hand, and how it hangs, off a photo", recipe, {.photo = true}),
        tub_test("– over 0.5 m by video, and how it hangs, off a photo", recipe,
                 {.depth_m = 0.5, .video_m_s = speed, .photo = true}),
        dry_tub_test("each segment dry, and a caliper across it both ways; sealed, hooks and tail on, 1 m by "
                     "hand, photo",
                     recipe),
        {"second lure, the first one read when finished", carved_weighings, sealed, true},
    };
    std::printf("| readings taken before the finish | spread of weight in water, g | can be put right | "
                "chance foretold | fall right "
                "| hang right | both right |\n|---|---|---|---|---|---|---|\n");
    for (const Way& way : ways)
        print_row(way.name, thousand(way, recipe));
}

TEST_CASE("first-fall table of all demo lures", "[.table]") {
    std::printf("| lure | spread of weight in water, g | can be put right | chance foretold | fall right | "
                "hang right | both right "
                "|\n|---|---|---|---|---|---|---|\n");
    for (const char* name : {"millrace-170", "reedline-120", "quarry-230", "estuary-150"}) {
        const document::Document recipe = invented::preset_named(name);
        print_row(recipe.name, thousand(tub_test(name, recipe, {.photo = true}), recipe));
    }
}

TEST_CASE("first-fall table of lures wider than believed", "[.table]") {
    using document::Cause;
    const auto times = [](Cause cause, double factor) -> Otherwise {
        return [=](const invented::Recipe& world, Eigen::VectorXd& u) {
            for (Eigen::Index i = 0; i < u.size(); ++i)
                u(i) *= world.model().input(i).cause == cause ? factor : 1.0;
        };
    };
    const auto hooks_heavy = [](const invented::Recipe& world, Eigen::VectorXd& u) {
        for (Eigen::Index i = 0; i < u.size(); ++i) {
            const bench::Input& input = world.model().input(i);
            if (input.cause != Cause::part_mass) continue;
            const auto& part = world.model().document().parts[static_cast<std::size_t>(input.group)];
            if (part.stage == Stage::rigged) u(i) = 0.05 / input.relative;
        }
    };
    const auto wet_board = [](const invented::Recipe& world, Eigen::VectorXd& u) {
        const auto i = world.index_of(Cause::moisture, 0);
        document::Document wet = world.model().document();
        const double dry_kg_m3 = ledger::ledger_inputs(wet, world.model().evaluation().body)->wood_kg_m3;
        wet.wood.moisture_percent += 8.0;
        const double wet_kg_m3 = ledger::ledger_inputs(wet, world.model().evaluation().body)->wood_kg_m3;
        if (i) u(*i) = (wet_kg_m3 / dry_kg_m3 - 1.0) / world.model().input(*i).relative;
    };
    const std::vector<std::pair<std::string, Otherwise>> drawn{
        {"as believed", {}},
        {"carved twice as unevenly as believed", times(Cause::carved_size, 2.0)},
        {"three times as unevenly", times(Cause::carved_size, 3.0)},
        {"wood that differs by 4 % from head to tail, where 2 % is believed",
         times(Cause::wood_gradient, 2.0)},
        {"hooks 5 % heavier than entered", hooks_heavy},
        {"board with 8 points more moisture than entered", wet_board},
    };
    const document::Document recipe = invented::preset_named("millrace-170");
    for (const Way& way :
         {Way{"body dry and held under water", carved_weighings, {}},
          tub_test("each segment dry and held under; sealed, hooks and tail on: timed over 1 m by hand, and "
                   "how it hangs, off a photo",
                   recipe, {.photo = true})}) {
        std::printf("\n%s\n\n| lures drawn | spread of weight in water, g | can be put right | chance "
                    "foretold | fall right | "
                    "hang right "
                    "| both right | told that the log disagrees |\n|---|---|---|---|---|---|---|---|---|\n",
                    way.name.c_str());
        for (const auto& [name, otherwise] : drawn)
            print_row(name, thousand(way, recipe, otherwise), true);
    }
}
