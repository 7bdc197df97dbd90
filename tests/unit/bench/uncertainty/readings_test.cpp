// Readings of the bench against the figures of the lure.

#include "base/trade.hpp"
#include "bench/uncertainty/uncertainty.hpp"
#include "ledger/build.hpp"
#include "materials/solids.hpp"
#include "materials/water_properties.hpp"
#include "unit/bench/uncertainty/bench_readings.hpp"
#include "water/afloat/float_answers.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <cmath>

using namespace evenfall;
using namespace evenfall::support;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using document::ReadingKind;

TEST_CASE("Slopes of every reading agree with differences of it") {
    invented::Recipe recipe(millrace());
    const bench::Model& model = recipe.model();
    bench::Observer observer(model);
    bench::Random random(3, 5);
    const Eigen::VectorXd u = 0.3 * recipe.truth(random);
    std::vector<document::Reading> readings{dry(Stage::sealed, 55.0), held(Stage::carved, 56.0),
                                            invented::board(), invented::clipped(Stage::sealed)};
    document::Reading one = dry(Stage::carved, 10.0);
    one.segment = 1;
    readings.push_back(one);
    document::Reading angle = invented::weighed(ReadingKind::hang_angle, Stage::rigged);
    angle.angle_rad = -0.05;
    readings.push_back(angle);
    document::Reading across = invented::calipered(Stage::painted, 0.06);
    across.width_m = 0.02;
    readings.push_back(across);
    for (document::Reading& r : readings) {
        if (document::number_of(r).value == &document::Reading::mass_kg && !r.mass_kg) r.mass_kg = 0.004;
        const auto here = observer.observe(r, u);
        REQUIRE(here);
        for (Eigen::Index i = 0; i < u.size(); ++i) {
            constexpr double step = 1e-4;
            Eigen::VectorXd up = u;
            Eigen::VectorXd down = u;
            up(i) += step;
            down(i) -= step;
            const double slope =
                (observer.observe(r, up)->predicted - observer.observe(r, down)->predicted) / (2.0 * step);
            CHECK_THAT(here->slope(i), WithinAbs(slope, 1e-7 * std::abs(here->predicted) + 1e-9));
        }
    }
    // A timed fall compares two weights, the lure's own and the one that takes so long: the slope is that of
    // their difference. Left out is how B itself moves against the drag and how the water it carries along
    // grows with it: below 10 mg for a standard deviation of any input, where wood density makes 2 g.
    document::Reading fall = invented::timed(Stage::rigged, 0.5);
    fall.time_s = 3.5;
    const auto here = observer.observe(fall, u);
    REQUIRE(here);
    for (Eigen::Index i = 0; i < u.size(); ++i) {
        constexpr double step = 1e-3;
        Eigen::VectorXd up = u;
        Eigen::VectorXd down = u;
        up(i) += step;
        down(i) -= step;
        const auto above = observer.observe(fall, up);
        const auto below = observer.observe(fall, down);
        const double slope =
            ((above->predicted - above->read) - (below->predicted - below->read)) / (2.0 * step);
        CHECK_THAT(here->slope(i), WithinAbs(slope, 2e-2 * std::abs(slope) + 1e-5));
    }
}

TEST_CASE("A wrong reading is found, and what would make it fit is named") {
    const auto expected = uncertainty(with({dry(Stage::carved, 23.4), held(Stage::carved, 55.9)}));
    REQUIRE(expected.ok());
    const double right_g =
        units::g_from_kg(expected->stages[static_cast<std::size_t>(Stage::leaded)].mass_kg.value);
    const auto explained = [&](const document::Reading& wrong, const std::string& beginning) {
        const auto s = uncertainty(with({dry(Stage::carved, 23.4), held(Stage::carved, 55.9), wrong}));
        REQUIRE(s.ok());
        CHECK(std::abs(s->readings[2].z_score) > 3.0);
        CHECK(!s->readings[2].warning.empty());
        for (std::size_t i = 0; i < 2; ++i)
            CHECK(s->readings[i].warning.empty());
        return std::any_of(
            s->readings[2].explanations.begin(), s->readings[2].explanations.end(),
            [&](const Sentence& one) { return one.text(units::metric).rfind(beginning, 0) == 0; });
    };
    CHECK(explained(dry(Stage::leaded, right_g / 10.0), "A slipped decimal point"));
    CHECK(explained(dry(Stage::leaded, right_g / 28.349523125), "Read in ounces"));
    CHECK(explained(dry(Stage::carved, right_g), "Another stage"));
    CHECK(explained(dry(Stage::leaded, right_g + 2.0), "Wet wood"));
    // 52.x put down as 25.x.
    const double swapped = right_g - 10.0 * std::floor(right_g / 10.0) * 1.0;
    const double tens = std::floor(right_g / 10.0);
    const double ones = std::floor(swapped);
    CHECK(explained(dry(Stage::leaded, 10.0 * ones + tens + (right_g - std::floor(right_g))),
                    "Two digits changed over"));
    // The right one raises no voice.
    const auto s =
        uncertainty(with({dry(Stage::carved, 23.4), held(Stage::carved, 55.9), dry(Stage::leaded, right_g)}));
    for (const ReadingFit& v : s->readings)
        CHECK(v.warning.empty());
}

TEST_CASE("A floater that shows as much as its own figures say fits them, and one that shows more is "
          "believed lighter") {
    const document::Document reedline = invented::preset_named("reedline-120");
    const auto e = evaluate(reedline);
    REQUIRE(e.ok());
    const auto afloat = afloat::upright_answer(
        e->body, e->ledger, reedline,
        materials::water_properties(reedline.tub.temperature_c, reedline.tub.salinity_g_kg)->density_kg_m3);
    REQUIRE(afloat.has_value());
    document::Reading r;
    r.kind = ReadingKind::freeboard;
    r.stage = Stage::rigged;
    r.freeboard_m = afloat->freeboard_m;
    const auto fits = uncertainty(with({r}, reedline));
    REQUIRE(fits.ok());
    // Read to a millimetre: the expected showing is the same within a hundredth of that.
    CHECK_THAT(fits->readings[0].predicted, WithinAbs(*r.freeboard_m, 1e-5));
    CHECK(std::abs(fits->readings[0].z_score) < 0.01);
    CHECK_THAT(fits->in_water_kg.value, WithinAbs(e->answers.in_water.kg, 1e-5));
    r.freeboard_m = afloat->freeboard_m + 0.002;
    const auto lighter = uncertainty(with({r}, reedline));
    REQUIRE(lighter.ok());
    CHECK(lighter->in_water_kg.value < e->answers.in_water.kg - 1e-4);
    CHECK(lighter->in_water_kg.sigma < fits->in_water_kg.sigma_before);
}

TEST_CASE(
    "A blank of light wood that shows as much as its own figures say fits them, though most of it is dry") {
    for (const char* species : {"western_redcedar", "balsa", "paulownia"}) {
        INFO(species);
        document::Document light = millrace();
        light.wood = {};
        light.wood.species = species;
        const auto e = evaluate(light);
        REQUIRE(e.ok());
        ledger::Ledger carved = e->ledger;
        std::erase_if(carved, [](const ledger::Line& line) { return line.stage > Stage::carved; });
        const auto afloat = afloat::upright_answer(
            e->body, carved, light,
            materials::water_properties(light.tub.temperature_c, light.tub.salinity_g_kg)->density_kg_m3);
        REQUIRE(afloat.has_value());
        document::Reading r;
        r.kind = ReadingKind::freeboard;
        r.stage = Stage::carved;
        r.freeboard_m = afloat->freeboard_m;
        const auto s = uncertainty(with({r}, light));
        REQUIRE(s.ok());
        CHECK(s->readings[0].used);
        CHECK(s->readings[0].warning.empty());
        CHECK_THAT(s->readings[0].predicted, WithinAbs(*r.freeboard_m, 1e-5));
    }
}

TEST_CASE("A floater that is said to show more than all of itself teaches nothing, and spoils no figure") {
    const document::Document reedline = invented::preset_named("reedline-120");
    document::Reading r;
    r.kind = ReadingKind::freeboard;
    r.stage = Stage::carved;
    for (const double freeboard_m : {0.05, 0.283, 0.3}) {
        r.freeboard_m = freeboard_m;
        const auto s = uncertainty(with({r}, reedline));
        const auto without = uncertainty(with({}, reedline));
        REQUIRE((s.ok() && without.ok()));
        CHECK(s->in_water_kg.value == without->in_water_kg.value);
        CHECK(s->in_water_kg.sigma == without->in_water_kg.sigma);
        CHECK(do_now(with({r}, reedline)).ok());
        CHECK(corrected(with({r}, reedline)).ok());
    }
}

TEST_CASE("What a clip should weigh is what keeps the lure hanging, of whatever the clip is made") {
    const document::Document reedline = invented::preset_named("reedline-120");
    // What floats wants a heavy clip, what sinks one that floats.
    for (auto [lure, material] :
         {std::pair{reedline, "lead"}, std::pair{reedline, "nylon"}, std::pair{millrace(), "dowel"}}) {
        lure.shape.carving = document::Carving::careful; // the less it may be off, the straighter the sums
        INFO(lure.name << ", " << material);
        const double water =
            materials::water_properties(lure.tub.temperature_c, lure.tub.salinity_g_kg)->density_kg_m3;
        const Estimate in_tub = uncertainty(lure)->stages[static_cast<std::size_t>(Stage::rigged)].in_tub_kg;
        // Archimedes: the clip's own share of its mass that water does not carry.
        const double share = 1.0 - water / materials::find_solid(material)->density_kg_m3.value;
        const double needed = -in_tub.value / share;
        REQUIRE(needed > 0.0);
        document::Reading r;
        r.kind = ReadingKind::suspends;
        r.stage = Stage::rigged;
        r.clip_material = material;
        r.mass_kg = needed + 0.0001;
        r.mass_sigma_kg = 0.0003;
        const auto s = uncertainty(with({r}, lure));
        REQUIRE(s.ok());
        CHECK_THAT(s->readings[0].predicted, WithinRel(needed, 1e-4));
        CHECK_THAT(s->readings[0].predicted_sigma, WithinRel(std::hypot(in_tub.sigma / share, 0.0003), 1e-3));
    }
}

TEST_CASE("A block is weighed before there is a lure: it puts the lure at no stage") {
    document::Reading block = invented::board();
    block.mass_kg = 0.119;
    block.stage = Stage::rigged;
    const auto s = uncertainty(with({block}));
    REQUIRE(s.ok());
    CHECK(s->stage == Stage::carved);
    CHECK(s->readings[0].used);
}

TEST_CASE("The block foretold is of the lure's own wood: good to the same share of any wood's density") {
    const auto block_of = [](const char* species) {
        document::Document d = millrace();
        d.wood = {};
        d.wood.species = species;
        const auto s = uncertainty(d);
        const auto block = std::find_if(s->next.begin(), s->next.end(),
                                        [](const NextReading& n) { return n.kind == ReadingKind::board; });
        REQUIRE(block != s->next.end());
        const auto bare = evaluate(d);
        return block->sigma / ledger::ledger_inputs(d, bare->body)->wood_kg_m3;
    };
    CHECK_THAT(block_of("balsa"), WithinRel(block_of("hard_maple"), 0.01));
}

TEST_CASE("A reading that says nothing of the lure is told, with what was likely meant") {
    // Reedline 120 is some 25 mm high: 50 mm over the water is no reading of it, 5 mm may be.
    document::Reading shown = invented::weighed(ReadingKind::freeboard, Stage::rigged);
    shown.mass_kg.reset();
    shown.freeboard_m = units::m_from_mm(50.0);
    const auto afloat = uncertainty(with({shown}, invented::preset_named("reedline-120")));
    REQUIRE(afloat.ok());
    const ReadingFit& v = afloat->readings.front();
    CHECK_FALSE(v.used);
    CHECK(v.warning ==
          "Reading 1 says nothing of this lure: with no weight does it float upright and show so much.");
    REQUIRE(v.explanations.size() == 2);
    CHECK(v.explanations[0].text(units::metric) == "A slipped decimal point: 5.00 mm would fit.");
    CHECK(v.explanations[1].text(units::metric) == "The other unit of length: 2.0 mm would fit.");

    // Twenty metres in a twentieth of a second.
    document::Reading timed = invented::timed(Stage::rigged, 20.0);
    timed.time_s = 0.05;
    const auto fast = uncertainty(with({timed}));
    REQUIRE(fast.ok());
    CHECK(fast->readings.front().warning ==
          "Reading 1 says nothing of this lure: with no weight does it fall so far in that time.");

    // What is excluded is not asked, so it is not told either.
    timed.excluded = true;
    CHECK(uncertainty(with({timed}))->readings.front().warning.empty());
}
