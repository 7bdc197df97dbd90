// What uncertainty says is to be done now: lead changed, a trim hole, today's fall.

#include "base/trade.hpp"
#include "bench/uncertainty/uncertainty.hpp"
#include "body/bore.hpp"
#include "ledger/build.hpp"
#include "output/uncertainty_json.hpp"
#include "unit/bench/uncertainty/bench_readings.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

using namespace evenfall;
using namespace evenfall::support;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using document::ReadingKind;

namespace {

/// Leaded, weighed so many grams over what is expected, and pushing aside just what is expected.
document::Document leaded_over(const document::Document& recipe, double over_g) {
    const auto s = uncertainty(recipe);
    const StagePrediction& leaded = s->stages[static_cast<std::size_t>(Stage::leaded)];
    document::Reading over = dry(Stage::leaded, units::g_from_kg(leaded.mass_kg.value) + over_g);
    over.stands = true; // far over is no slip here
    return with({over, held(Stage::leaded, units::g_from_kg(leaded.displaced_kg.value))}, recipe);
}

} // namespace

TEST_CASE("What to do now before the lead is in: the lead plan for the wood as weighed") {
    const document::Document document = with({dry(Stage::carved, 24.5)});
    const auto now = do_now(document);
    REQUIRE(now.ok());
    CHECK(now->met);
    CHECK(now->stage == Stage::leaded);
    CHECK_THAT(now->after.fall->speed_m_s, WithinRel(document.targets.fall_m_s, 2e-3));
    CHECK_THAT(*now->after.pitch_rad, WithinAbs(document.targets.pitch_rad, 1e-3));
    CHECK(now->change_kg < -0.0005); // heavier wood wants less lead
}

TEST_CASE("What to do now with the lead in: as few holes as will do, and the finished lure is right") {
    for (const double g : {52.9, 51.6}) { // too heavy, too light
        const document::Document document = with({dry(Stage::leaded, g), held(Stage::leaded, 55.8)});
        const auto now = do_now(document);
        REQUIRE(now.ok());
        INFO("weighed " << g << " g; "
                        << (now->steps.empty() ? std::string() : now->steps[0].text(units::metric)));
        CHECK(now->met);
        CHECK(now->changes.size() <= 2);
        CHECK_THAT(now->after.fall->speed_m_s, WithinRel(document.targets.fall_m_s, 2e-3));
        CHECK_THAT(*now->after.pitch_rad,
                   WithinAbs(document.targets.pitch_rad, document.targets.pitch_band_rad / 3.0 + 1e-9));
        // The document it hands back says the same by itself.
        CHECK_THAT(evaluate(now->document)->answers.in_water.kg, WithinAbs(now->after.in_water.kg, 1e-12));
        CHECK((g > 52.0 ? now->change_kg < 0.0 : now->change_kg > 0.0));
        for (const HoleChange& c : now->changes) {
            if (c.change_kg < 0.0) CHECK(c.depth_m > 0.0);
        }
    }
}

TEST_CASE("Where two holes cannot bring weight and pitch right, more do, and no more than it takes") {
    const document::Document quarry = invented::preset_named("quarry-230");
    for (const auto& [recipe, over_g] :
         {std::pair{quarry, 9.28}, std::pair{millrace(), 12.0}, std::pair{millrace(), 16.0}}) {
        INFO(recipe.name << ", over by " << over_g << " g");
        const document::Document document = leaded_over(recipe, over_g);
        const auto now = do_now(document);
        REQUIRE(now.ok());
        CHECK(now->met);
        CHECK(now->shortfalls.empty());
        CHECK(now->changes.size() > 2);
        const double asked = uncertainty(now->document)->target_in_water_kg;
        CHECK_THAT(now->after.in_water.kg, WithinAbs(asked, 5e-6));
        CHECK_THAT(*now->after.pitch_rad,
                   WithinAbs(recipe.targets.pitch_rad, recipe.targets.pitch_band_rad / 3.0 + 1e-9));
        // Every hole keeps what it can hold, and there is no hole that nothing goes into.
        CHECK(now->document.holes.size() == recipe.holes.size());
        for (const HoleChange& c : now->changes)
            CHECK(now->document.holes[static_cast<std::size_t>(c.hole)].fill->mass_kg.value() >= 0.0);
    }
}

TEST_CASE("Where all the holes cannot bring the weight right, they are filled or emptied, and weight and "
          "pitch are told") {
    // Far too light, in holes that have no cap: lead there takes water's place, and does not weigh in full.
    document::Document open = millrace();
    open.holes.pop_back(); // there is no wood to drill the tail's deeper
    for (document::Hole& hole : open.holes) {
        hole.cap.reset();
        hole.max_depth_m = 0.022;
        hole.depth_m += 0.005;
        hole.use = document::HoleUse::drilled;
    }
    document::Document tight = open;
    for (document::Hole& hole : tight.holes)
        hole.depth_m -= 0.004;
    const auto some = do_now(leaded_over(open, -6.0));
    const auto all = do_now(leaded_over(tight, -40.0));
    REQUIRE((some.ok() && all.ok()));
    const auto weight_told = [](const DoNow& now) {
        return std::any_of(now.shortfalls.begin(), now.shortfalls.end(),
                           [](const Problem& p) { return p.path == "/holes"; });
    };
    const auto pitch_told = [](const DoNow& now) {
        return std::any_of(now.shortfalls.begin(), now.shortfalls.end(),
                           [](const Problem& p) { return p.path == "/targets/pitch_deg"; });
    };
    CHECK_FALSE(weight_told(*some));
    for (const Sentence& step : some->steps)
        CHECK(step.text(units::metric).find("cap") == std::string::npos); // there is none to open or close
    CHECK(weight_told(*all));
    CHECK(pitch_told(*all) ==
          (std::abs(*all->after.pitch_rad - open.targets.pitch_rad) > open.targets.pitch_band_rad / 3.0));
    for (const document::Hole& hole : all->document.holes) {
        const auto body = evaluate(all->document)->body;
        const holes::HoleContents in = holes::contents(hole, holes::place(hole, body));
        CHECK_THAT(in.fill_column_m, WithinAbs(in.room_m, 1e-6));
    }
    // Far too heavy: all is drilled out.
    const auto heavy = do_now(leaded_over(invented::preset_named("quarry-230"), 32.0));
    REQUIRE(heavy.ok());
    CHECK(weight_told(*heavy));
    CHECK(heavy->document.holes.size() ==
          invented::preset_named("quarry-230").holes.size()); // no trim hole that nothing goes into
    for (const document::Hole& hole : heavy->document.holes)
        CHECK(hole.fill->mass_kg.value() < 1e-9);
    // A lure whose holes are full gets its trim hole.
    const auto light = do_now(leaded_over(invented::preset_named("quarry-230"), -13.9));
    REQUIRE(light.ok());
    CHECK(light->change_kg > 0.0);
    CHECK(light->met == light->shortfalls.empty());
}

TEST_CASE("A lure that is right needs nothing done") {
    const auto s = uncertainty(millrace());
    document::Reading r =
        dry(Stage::leaded,
            units::g_from_kg(s->stages[static_cast<std::size_t>(Stage::leaded)].mass_kg.value) - 0.058);
    const auto now = do_now(with({r}));
    REQUIRE(now.ok());
    CHECK(now->nothing_to_do);
    CHECK(now->changes.empty());
}

TEST_CASE("Today's tub fall becomes the finished fall: faster in the tub, faster finished") {
    const auto slow = finished_fall_for_tub(millrace(), Stage::rigged, 0.12);
    const auto fast = finished_fall_for_tub(millrace(), Stage::rigged, 0.20);
    REQUIRE((slow.ok() && fast.ok()));
    REQUIRE((slow->has_value() && fast->has_value()));
    // Dressed, tub and fishing water differ by five degrees only: nearly the same speed, and known to some
    // per cent.
    CHECK_THAT((*slow)->value, WithinRel(0.12, 0.05));
    CHECK_THAT((*fast)->value, WithinRel(0.20, 0.05));
    CHECK((*fast)->sigma < 0.1 * (*fast)->value);
    CHECK(!finished_fall_for_tub(millrace(), Stage::rigged, 0.0).ok());
}

TEST_CASE(
    "A trim hole is advised where the spread is wider than the holes' room, and not before the lead is in") {
    CHECK(!uncertainty(millrace())->trim.needed);
    const auto s = uncertainty(with({dry(Stage::leaded, 52.2)}));
    CHECK(s->trim.needed);
    CHECK(!s->trim.sentence.empty());
    CHECK(s->trim.reserve_kg > s->trim.room_up_kg);
    // As wide as the widest hole; under its cap of 2 mm, lead in the place of wood weighs the reserve, in air
    // as in water.
    double widest_m = 0.0;
    for (const document::Hole& hole : millrace().holes)
        widest_m = std::max(widest_m, hole.diameter_m);
    CHECK(s->trim.diameter_m == widest_m);
    const auto bare = evaluate(millrace());
    const double wood_kg_m3 = ledger::ledger_inputs(millrace(), bare->body)->wood_kg_m3;
    const double area_m2 = 0.25 * std::numbers::pi * widest_m * widest_m;
    CHECK_THAT((s->trim.depth_m - 0.002) * area_m2 * (11340.0 - wood_kg_m3),
               WithinRel(s->trim.reserve_kg, 1e-9));
}

TEST_CASE("A trim hole is advised where there is wood for it, not in a joint or a pocket") {
    // A pocket through the belly just where lead turns nothing: 230 mm have another place near it; 170 mm
    // with joint and holes close by, as an early recipe has them, have not.
    for (const bool wide : {true, false}) {
        document::Document recipe = wide ? invented::preset_named("quarry-230") : invented::early_millrace();
        if (!wide) {
            recipe.pockets.clear();
            for (document::Joint& joint : recipe.joints)
                joint.hinge.reset();
            std::erase_if(recipe.parts, [](const document::Part& p) { return p.stage == Stage::hardware; });
        }
        INFO(recipe.name);
        const auto advised = [&](const document::Document& lure) {
            const auto s = uncertainty(leaded_over(lure, 0.0));
            REQUIRE(s.ok());
            REQUIRE(s->trim.needed);
            return s->trim;
        };
        const auto fits = [](document::Document lure, const TrimHole& trim) {
            document::Hole hole;
            hole.x_m = trim.x_m;
            hole.diameter_m = trim.diameter_m;
            hole.depth_m = trim.depth_m;
            lure.holes.push_back(hole);
            return evaluate(lure).ok();
        };
        const TrimHole plain = advised(recipe);
        CHECK(fits(recipe, plain));
        document::Document cut = recipe;
        document::Pocket pocket;
        pocket.name = "Slot";
        pocket.x_from_m = plain.x_m - 0.001;
        pocket.x_to_m = plain.x_m + 0.001;
        pocket.z_to_m = 0.0;
        cut.pockets.push_back(pocket);
        CHECK_FALSE(fits(cut, plain));
        const TrimHole beside = advised(cut);
        CHECK((beside.sentence.text(evenfall::units::metric).find("Keep the belly clear") !=
               std::string::npos) == wide);
        CHECK(fits(cut, beside) == wide);
    }
}

TEST_CASE("A full log makes way for a fall that is asked after without losing what it knows") {
    const document::Reading weighed = dry(Stage::sealed, 53.0);
    document::Reading excluded = dry(Stage::carved, 20.0);
    excluded.excluded = true;
    std::vector<document::Reading> full(document::max_readings, excluded);
    full.front() = weighed;
    const auto alone = finished_fall_for_tub(with({weighed}), Stage::sealed, 0.15);
    const auto among = finished_fall_for_tub(with(full), Stage::sealed, 0.15);
    REQUIRE((alone.ok() && among.ok()));
    REQUIRE((alone->has_value() && among->has_value()));
    CHECK((*among)->value == (*alone)->value);
    CHECK((*among)->sigma == (*alone)->sigma);
    // Among timed falls one of them goes, and the weighing stays.
    document::Reading fall = invented::timed(Stage::rigged, 0.5);
    fall.time_s = 4.0;
    std::fill(full.begin() + 1, full.end(), fall);
    const std::vector<document::Reading> one_less(full.begin(), full.end() - 1);
    const auto with_all = finished_fall_for_tub(with(full), Stage::rigged, 0.14);
    const auto with_one_less = finished_fall_for_tub(with(one_less), Stage::rigged, 0.14);
    REQUIRE((with_all.ok() && with_one_less.ok()));
    REQUIRE((with_all->has_value() && with_one_less->has_value()));
    // The time that such a fall takes goes by the log as it was, which a fall more moves by next to nothing.
    CHECK_THAT((*with_all)->value, WithinRel((*with_one_less)->value, 1e-9));
    const auto unweighed = finished_fall_for_tub(
        with(std::vector<document::Reading>(full.begin() + 1, full.end())), Stage::rigged, 0.14);
    REQUIRE((unweighed.ok() && unweighed->has_value()));
    CHECK_THAT((*unweighed)->value, !WithinRel((*with_all)->value, 1e-5));
}

TEST_CASE("A fall that no lure could have beside what the log says is refused, not answered from a search "
          "that never ended") {
    document::Reading fall = invented::timed(Stage::rigged, 0.5);
    fall.time_s = 4.0;
    for (const std::size_t falls : {1UL, 5UL, 190UL}) {
        INFO(falls << " falls of the rigged lure, which floats by 2.8 g before that");
        const auto log = with(std::vector<document::Reading>(falls, fall));
        CHECK_FALSE(finished_fall_for_tub(log, Stage::sealed, 0.25).ok());
        CHECK(finished_fall_for_tub(log, Stage::sealed, 0.05).ok());
        CHECK(finished_fall_for_tub(log, Stage::rigged, 0.15).ok());
    }
}

TEST_CASE("Advice that is followed keeps what the readings taught, and the stage") {
    for (const double over_g : {2.0, -1.0}) {
        INFO("off by " << over_g << " g");
        const document::Document before = leaded_over(millrace(), over_g);
        const auto taught = uncertainty(before);
        const auto now = do_now(before);
        REQUIRE((taught.ok() && now.ok()));
        REQUIRE((now->lead_is_in && !now->changes.empty()));
        const document::Document after = with_advice(before, *now);
        const auto kept = uncertainty(after);
        REQUIRE(kept.ok());
        CHECK(kept->stage == Stage::leaded);
        CHECK(after.corrections.empty());
        CHECK_THAT(kept->in_water_kg.value, WithinAbs(now->after.in_water.kg, 1e-7));
        CHECK_THAT(kept->in_water_kg.sigma, WithinRel(taught->in_water_kg.sigma, 0.03));
        for (std::size_t i = 0; i < before.log.size(); ++i) {
            CHECK(kept->readings[i].used);
            CHECK_THAT(kept->readings[i].predicted, WithinAbs(taught->readings[i].predicted, 1e-6));
        }
        CHECK(do_now(after)->nothing_to_do);
        // The next weighing is of the lead as it is now, and the one before it still fits.
        document::Document weighed = after;
        const double kg = kept->stages[static_cast<std::size_t>(Stage::leaded)].mass_kg.value;
        weighed.log.push_back(dry(Stage::leaded, units::g_from_kg(kg)));
        // As a scale shows it, which air makes a little lighter.
        weighed.log.back().mass_kg = uncertainty(weighed)->readings.back().predicted;
        const auto fits = uncertainty(weighed);
        REQUIRE(fits.ok());
        CHECK(std::abs(fits->readings.back().z_score) < 1e-3);
        for (std::size_t i = 0; i < before.log.size(); ++i)
            CHECK(std::abs(fits->readings[i].z_score) < std::abs(taught->readings[i].z_score));
        // And it may be changed again.
        weighed.log.back().mass_kg = kg + 0.0015;
        const auto again = do_now(weighed);
        REQUIRE((again.ok() && again->lead_is_in));
        const auto twice = uncertainty(with_advice(weighed, *again));
        REQUIRE(twice.ok());
        CHECK_THAT(twice->in_water_kg.value, WithinAbs(again->after.in_water.kg, 1e-7));
        CHECK(twice->in_water_kg.sigma < 1.03 * uncertainty(weighed)->in_water_kg.sigma);
    }
}

TEST_CASE("Advice that is followed hole by hole is the same advice") {
    const document::Document before = leaded_over(millrace(), 12.0);
    const auto now = do_now(before);
    REQUIRE((now.ok() && now->changes.size() > 1));
    document::Document one = with_advice(before, *now, now->changes.front().hole);
    CHECK(one.holes[static_cast<std::size_t>(now->changes.front().hole)].use == document::HoleUse::leaded);
    const auto rest = do_now(one);
    REQUIRE(rest.ok());
    CHECK(rest->changes.size() < now->changes.size());
    const document::Document all = with_advice(one, *rest);
    CHECK_THAT(uncertainty(all)->in_water_kg.value, WithinAbs(now->after.in_water.kg, 5e-6));
    for (const document::Reading& reading : all.log)
        CHECK(reading.before_change == 0);
}

TEST_CASE(
    "Holes that are drilled and weighed are planned on as they are: other fills before deeper holes, and "
    "never shallower ones") {
    const auto s = uncertainty(millrace());
    const double kg = s->stages[static_cast<std::size_t>(Stage::drilled)].mass_kg.value;
    for (const double over_g : {3.0, -2.0, 0.0}) {
        INFO("off by " << over_g << " g");
        const document::Document before = with({dry(Stage::drilled, units::g_from_kg(kg) + over_g)});
        const auto now = do_now(before);
        REQUIRE(now.ok());
        CHECK_FALSE(now->lead_is_in);
        bool deeper = false;
        for (std::size_t i = 0; i < before.holes.size(); ++i) {
            CHECK(now->document.holes[i].depth_m >= before.holes[i].depth_m - 1e-9);
            deeper = deeper || now->document.holes[i].depth_m > before.holes[i].depth_m + 1e-6;
        }
        if (over_g > 0.0) CHECK_FALSE(deeper);
        // A reading of the drilled piece stays one of the depths it had.
        const document::Document after = with_advice(before, *now);
        if (deeper) CHECK(after.log.front().before_change == 0);
        const auto kept = uncertainty(after);
        REQUIRE(kept.ok());
        CHECK_THAT(kept->in_water_kg.value, WithinAbs(now->after.in_water.kg, 1e-7));
    }
}

TEST_CASE("A hole that was drilled as advised is not asked a hair shallower while others still follow") {
    document::Reading wood = dry(Stage::hardware, 21.068);
    wood.lure = 1;
    document::Reading fall = invented::with_all(invented::timed(Stage::leaded, 0.699)); // of the lure before
    fall.time_s = 19.361;
    fall.time_sigma_s = 0.185;
    fall.before_change = 1;
    const document::Document before = with({wood, fall});
    const auto now = do_now(before);
    REQUIRE(now.ok());
    int deeper = 0;
    for (const HoleChange& c : now->changes) {
        INFO("hole " << c.hole + 1);
        const auto hole = static_cast<std::size_t>(c.hole);
        const document::Document one = with_advice(before, *now, c.hole);
        deeper += one.holes[hole].depth_m > before.holes[hole].depth_m ? 1 : 0;
        const auto next = do_now(one);
        REQUIRE(next.ok());
        CHECK(next->document.holes[hole].depth_m >= one.holes[hole].depth_m - 1e-9);
    }
    CHECK(deeper > 1);
}

namespace {

void must_not_be_taken_back(const document::Document& before, const DoNow& now) {
    const auto next = do_now(with_advice(before, now));
    REQUIRE(next.ok());
    for (const HoleChange& was : now.changes) {
        for (const HoleChange& is : next->changes)
            CHECK_FALSE((is.hole == was.hole && is.change_kg * was.change_kg < 0.0 &&
                         std::abs(is.change_kg) > 0.5 * std::abs(was.change_kg)));
    }
}

} // namespace

TEST_CASE(
    "Lead that is advised where nothing meets what is asked is not taken out again by the next advice") {
    // Falling half as fast as foretold: all the lead that there is room for will not do.
    document::Document before = invented::preset_named("estuary-150");
    for (document::Hole& hole : before.holes)
        hole.use = document::HoleUse::leaded;
    const auto s = uncertainty(before);
    REQUIRE((s.ok() && s->fall_m_s));
    document::Reading fall = invented::timed(Stage::rigged, 0.5);
    fall.time_s = 2.0 * 0.5 / s->fall_m_s->value + 0.1;
    fall.stands = true;
    before.log = {fall};
    const auto now = do_now(before);
    REQUIRE((now.ok() && now->lead_is_in && !now->met));
    REQUIRE_FALSE(now->changes.empty());
    must_not_be_taken_back(before, *now);
}

TEST_CASE("No trim hole is advised that the next advice would empty, where nothing meets what is asked") {
    document::Document before = invented::preset_named("estuary-150");
    before.holes[1].use = document::HoleUse::drilled;
    before.coats.erase(before.coats.begin()); // not sealed
    document::Reading weighed = invented::with_all(dry(Stage::clear_coated, 4.759767));
    document::Reading held;
    held.kind = document::ReadingKind::held_under;
    held.stage = Stage::rigged;
    held.mass_kg = units::kg_from_g(52.693352);
    document::Reading board;
    board.kind = document::ReadingKind::board;
    board.stage = Stage::rigged;
    board.mass_kg = units::kg_from_g(123.91729);
    board.length_m = 0.200;
    board.width_m = 0.030;
    board.height_m = 0.045;
    before.log = {weighed, held, board};
    const auto now = do_now(before);
    REQUIRE((now.ok() && now->lead_is_in && !now->met));
    CHECK(now->document.holes.size() == before.holes.size());
    must_not_be_taken_back(before, *now);
}

TEST_CASE("Lead that is ticked as in is changed, not planned anew; the next lure starts with whole wood") {
    document::Document ticked = millrace();
    for (document::Hole& hole : ticked.holes)
        hole.use = document::HoleUse::leaded;
    const auto now = do_now(ticked);
    REQUIRE(now.ok());
    CHECK(now->lead_is_in);
    const auto plan = plan_lead(ticked);
    REQUIRE(plan.ok());
    CHECK(plan->holes.empty());
    for (std::size_t i = 0; i < ticked.holes.size(); ++i)
        CHECK(plan->document.holes[i].fill->mass_kg == ticked.holes[i].fill->mass_kg);
    const auto next = for_next_lure(with_advice(ticked, *now));
    REQUIRE(next.ok());
    for (const document::Hole& hole : next->holes) {
        CHECK(hole.use == document::HoleUse::ballast);
        CHECK(hole.before.empty());
    }
}

TEST_CASE("Each change tells the depth of its hole, or to where lead comes out, as the steps do") {
    // Before the lead is in, for heavier wood: less lead, in holes that are not yet drilled.
    document::Document bare = millrace();
    for (document::Hole& hole : bare.holes)
        hole.use = document::HoleUse::ballast;
    bare.log.push_back(dry(Stage::carved, 24.5));
    for (const document::Document& lure : {bare, leaded_over(millrace(), 2.0)}) {
        const auto now = do_now(lure);
        REQUIRE((now.ok() && !now->changes.empty()));
        for (const HoleChange& c : now->changes) {
            const auto step = std::find_if(now->holes.begin(), now->holes.end(),
                                           [&](const HoleStep& s) { return s.hole == c.hole; });
            REQUIRE(step != now->holes.end());
            INFO("hole " << c.hole + 1);
            CHECK_THAT(c.depth_m, WithinAbs(step->depth_m, 1e-12));
            if (!now->lead_is_in) CHECK(c.depth_m > 0.003); // not the cap alone
        }
    }
}

TEST_CASE("The chance that is told is that of the best that can be reached") {
    // Quarry far too heavy: all its lead drilled out does not do.
    const document::Document heavy = leaded_over(invented::preset_named("quarry-230"), 32.0);
    const auto s = uncertainty(heavy);
    const auto now = do_now(heavy);
    REQUIRE((s.ok() && now.ok() && !now->met));
    CHECK(s->chances_corrected.both > 0.1);
    CHECK(now->chances.both < 1e-6);
    const std::string json = output::uncertainty_json(heavy, *s, *now, std::nullopt);
    const auto tree = nlohmann::json::parse(json);
    CHECK(tree["chance_put_right"]["both"].get<double>() < 1e-6);
    CHECK(tree["do_now"]["met"] == false);
    // What the changed lure then says of itself, with the same readings behind it.
    document::Document full = millrace();
    full.targets.fall_band = 0.25;
    for (document::Hole& hole : full.holes)
        hole.max_depth_m = hole.depth_m;
    const document::Document asked_elsewhere = leaded_over(full, -1.5);
    const auto far = do_now(asked_elsewhere);
    REQUIRE((far.ok() && !far->met));
    const auto after = uncertainty(with_advice(asked_elsewhere, *far));
    REQUIRE(after.ok());
    CHECK_THAT(far->chances.both, WithinAbs(after->chances_now.both, 0.03));
    CHECK_THAT(far->chances.fall, WithinAbs(after->chances_now.fall, 0.03));
    CHECK_THAT(far->chances.pitch, WithinAbs(after->chances_now.pitch, 0.03));
    // Where it can be put right, it is as before.
    const document::Document near = leaded_over(millrace(), 2.0);
    CHECK(do_now(near)->chances.both == uncertainty(near)->chances_corrected.both);
}

TEST_CASE(
    "Where the change cannot meet both, it is the nearest by the bands, and what matters more decides") {
    document::Document lure = leaded_over(millrace(), 2.0);
    lure.targets.pitch_rad = 40.0 * units::degree_rad;
    const auto misses = [&](document::MattersMore more) {
        document::Document d = lure;
        d.targets.matters_more = more;
        const auto now = do_now(d);
        REQUIRE((now.ok() && !now->met));
        REQUIRE((now->after.fall && now->after.pitch_rad));
        const double fall = (now->after.fall->speed_m_s / d.targets.fall_m_s - 1.0) / d.targets.fall_band;
        const double hang = (*now->after.pitch_rad - d.targets.pitch_rad) / d.targets.pitch_band_rad;
        return std::array{std::abs(fall), std::abs(hang)};
    };
    const auto both = misses(document::MattersMore::both_alike);
    const auto fall = misses(document::MattersMore::fall);
    const auto hang = misses(document::MattersMore::hang);
    CHECK(std::hypot(both[0], both[1]) < std::hypot(fall[0], fall[1]) - 0.1);
    CHECK(std::hypot(both[0], both[1]) <= std::hypot(hang[0], hang[1]) + 1e-9);
    CHECK(fall[0] < 0.01);
    CHECK(hang[1] <= both[1] + 1e-9);
    CHECK(fall[1] > both[1]);
}

TEST_CASE("A new trim hole has its place among the changes") {
    // Full holes, and wood for no deeper ones: the lead that is missing needs a hole of its own.
    document::Document full = millrace();
    for (document::Hole& hole : full.holes) {
        hole.use = document::HoleUse::leaded;
        hole.max_depth_m = hole.depth_m;
    }
    const document::Document light = leaded_over(full, -1.5);
    const auto s = uncertainty(light);
    const auto now = do_now(light);
    REQUIRE((s.ok() && now.ok()));
    REQUIRE(now->document.holes.size() == full.holes.size() + 1);
    const std::string json = output::uncertainty_json(light, *s, *now, std::nullopt);
    const auto tree = nlohmann::json::parse(json);
    bool found = false;
    for (const auto& change : tree["do_now"]["changes"]) {
        const auto hole = change["hole"].get<std::size_t>();
        CHECK(change.contains("x_mm"));
        if (hole <= full.holes.size()) continue;
        found = true;
        CHECK(change["new"] == true);
        CHECK(change["from"] == "belly");
        CHECK_THAT(change["x_mm"].get<double>(), WithinAbs(1e3 * now->document.holes.back().x_m, 1e-5));
        CHECK_THAT(change["depth_mm"].get<double>(),
                   WithinAbs(1e3 * now->document.holes.back().depth_m, 1e-5));
    }
    CHECK(found);
}
