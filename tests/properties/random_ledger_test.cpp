// The ledger is a sum: what is added to a lure is what its answers gain. Lures drawn by chance; a failure
// names seed and draw.

#include "ledger/fold.hpp"
#include "materials/solids.hpp"
#include "materials/water_properties.hpp"
#include "support/random_lures.hpp"
#include "water/fall/descent.hpp"
#include "water/fall/level_fall.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr int lures = 220;

/// Some hundred roundings of sums of 0.1 kg and 1e-4 m³.
constexpr double rounding_kg = 1e-15;
constexpr double rounding_m3 = 1e-18;

Answers answers_of(const document::Document& document) {
    auto e = evaluate(document);
    for (const Problem& p : e.ok() ? Problems{} : e.problems())
        UNSCOPED_INFO(p.path << ": " << p.sentence.text(evenfall::units::metric));
    REQUIRE(e.ok());
    return std::move(e).value().answers;
}

} // namespace

TEST_CASE("a part adds its own mass, its own volume and its own moment, from its stage on",
          "[properties][random]") {
    support::each_random_lure(201, lures, [&](const support::RandomLure& lure, int n) {
        document::Document with = lure.document;
        document::Part part;
        part.stage = n % 2 == 0 ? Stage::hardware : Stage::rigged;
        part.material = "brass";
        part.mass_kg = 0.001 + 1e-5 * n;
        part.at_m = {0.03, 0.002, -0.011};
        part.segment = 0;
        with.parts.push_back(part);
        const Answers& a = lure.evaluation.answers;
        const Answers b = answers_of(with);
        const double volume = part.mass_kg / materials::find_solid("brass")->density_kg_m3.value;
        CHECK_THAT(b.mass.kg - a.mass.kg, WithinAbs(part.mass_kg, rounding_kg));
        CHECK_THAT(b.displaced_m3 - a.displaced_m3, WithinAbs(volume, rounding_m3));
        CHECK_THAT(b.segments[0].mass.kg - a.segments[0].mass.kg, WithinAbs(part.mass_kg, rounding_kg));
        for (const auto& [axis, at] :
             {std::pair{&Vec3::x, part.at_m.x}, {&Vec3::y, part.at_m.y}, {&Vec3::z, part.at_m.z}}) {
            CHECK_THAT(b.mass.kg * (b.g_m.*axis) - a.mass.kg * (a.g_m.*axis),
                       WithinAbs(part.mass_kg * at, rounding_kg));
            CHECK_THAT(b.displaced_m3 * (b.b_m.*axis) - a.displaced_m3 * (a.b_m.*axis),
                       WithinAbs(volume * at, rounding_m3));
        }
        for (std::size_t s = 0; s < a.stages.size(); ++s) {
            const double gained = a.stages[s].stage < part.stage ? 0.0 : part.mass_kg;
            CHECK_THAT(b.stages[s].mass.kg - a.stages[s].mass.kg, WithinAbs(gained, rounding_kg));
        }
    });
}

TEST_CASE("a soaked coat adds its mass and nothing else, a film by its mass adds that over its density",
          "[properties][random]") {
    support::each_random_lure(202, lures, [&](const support::RandomLure& lure, int n) {
        document::Coat coat;
        coat.kind = n % 2 == 0 ? document::CoatKind::soaks : document::CoatKind::film;
        coat.material = "epoxy";
        coat.mass_kg = 0.0007;
        document::Document with = lure.document;
        with.coats.push_back(coat);
        const Answers& a = lure.evaluation.answers;
        const Answers b = answers_of(with);
        const double volume = coat.kind == document::CoatKind::film
                                  ? *coat.mass_kg / materials::find_solid("epoxy")->density_kg_m3.value
                                  : 0.0;
        CHECK_THAT(b.mass.kg - a.mass.kg, WithinAbs(*coat.mass_kg, rounding_kg));
        // What a film takes of a pocket that stays dry pushes no water aside; without pockets in it, it lies
        // outside.
        CHECK_THAT(b.displaced_m3 - a.displaced_m3, WithinAbs(volume, rounding_m3));
        CHECK_THAT(b.coats.back().mass.kg, WithinAbs(*coat.mass_kg, rounding_kg));
    });
}

TEST_CASE("segments, and the lines of each stage, sum to the whole", "[properties][random]") {
    support::each_random_lure(203, lures, [&](const support::RandomLure& lure, int) {
        const Answers& a = lure.evaluation.answers;
        double mass = 0.0;
        double displaced = 0.0;
        double in_water = 0.0;
        double mass_x = 0.0;
        double displaced_z = 0.0;
        for (const SegmentAnswer& s : a.segments) {
            mass += s.mass.kg;
            displaced += s.displaced_m3;
            in_water += s.in_water.kg;
            mass_x += s.mass.kg * s.g_m.x;
            displaced_z += s.displaced_m3 * s.b_m.z;
        }
        CHECK_THAT(mass, WithinAbs(a.mass.kg, rounding_kg));
        CHECK_THAT(displaced, WithinAbs(a.displaced_m3, rounding_m3));
        CHECK_THAT(in_water, WithinAbs(a.in_water.kg, rounding_kg));
        CHECK_THAT(mass_x, WithinAbs(a.mass.kg * a.g_m.x, rounding_kg));
        CHECK_THAT(displaced_z, WithinAbs(a.displaced_m3 * a.b_m.z, rounding_m3));
        CHECK(a.stages.back().mass.kg == a.mass.kg);
        CHECK(a.stages.back().displaced_m3 == a.displaced_m3);
        // Line by line, by hand.
        std::array<double, stage_count> by_stage{};
        double coats = 0.0;
        for (const ledger::Line& line : lure.evaluation.ledger) {
            by_stage[static_cast<std::size_t>(line.stage)] += line.mass_kg;
            coats += line.kind == ledger::Kind::coat ? line.mass_kg : 0.0;
        }
        double reached = 0.0;
        for (std::size_t s = 0; s < by_stage.size(); ++s) {
            reached += by_stage[s];
            CHECK_THAT(a.stages[s].mass.kg, WithinAbs(reached, rounding_kg));
        }
        for (const CoatAnswer& c : a.coats)
            coats -= c.mass.kg;
        CHECK_THAT(coats, WithinAbs(0.0, rounding_kg));
    });
}

TEST_CASE("more lead in any hole is as much heavier in water, and falls faster as it lies level",
          "[properties][random]") {
    int filled = 0;
    support::each_random_lure(204, lures, [&](const support::RandomLure& lure, int) {
        const auto water =
            materials::water_properties(lure.document.water.temperature_c, lure.document.water.salinity_g_kg)
                .value();
        const fall::LevelFall level(*lure.evaluation.body.lines);
        for (std::size_t i = 0; i < lure.document.holes.size(); ++i) {
            const document::Hole& hole = lure.document.holes[i];
            if (!hole.cap || !hole.fill->length_m || *hole.fill->length_m <= 0.0) continue;
            document::Document less = lure.document;
            *less.holes[i].fill->length_m *= 0.9;
            const Answers b = answers_of(less);
            const Answers& a = lure.evaluation.answers;
            CHECK(b.mass.kg < a.mass.kg);
            // Under a cap lead takes the place of air: all of its weight is felt.
            CHECK_THAT(a.in_water.kg - b.in_water.kg, WithinAbs(a.mass.kg - b.mass.kg, rounding_kg));
            const auto fast = level.speed_m_s(a.in_water.kg, water);
            const auto slow = level.speed_m_s(b.in_water.kg, water);
            if (fast && slow) CHECK(*fast > *slow);
            ++filled;
        }
    });
    CHECK(filled > lures / 2);
}

TEST_CASE("in every steady fall weight does just the work that drag takes, and nothing turns it",
          "[properties][random][fall]") {
    // Heavier need not be faster: about the same G and B a heavier lure may lie flatter. The balance of
    // powers always holds.
    int falls = 0;
    support::each_random_lure(205, lures, [&](const support::RandomLure& lure, int) {
        const auto water =
            materials::water_properties(lure.document.water.temperature_c, lure.document.water.salinity_g_kg)
                .value();
        const fall::FallingLure descent(lure.evaluation.body, lure.evaluation.ledger, lure.document, water);
        const fall::Motion motion = descent.motion();
        for (const fall::SteadyFall& f : descent.steady().falls) {
            const double given_w = descent.in_water_kg() * units::standard_gravity_m_s2 * f.vertical_m_s;
            const auto still = motion.rates_and_loss({f.along_m_s, f.across_m_s, 0.0, f.pitch_rad});
            CHECK(given_w > 0.0);
            // Pitch is found to 1e-10 rad and speeds follow it.
            CHECK_THAT(still.lost_w, WithinRel(given_w, 1e-7));
            CHECK_THAT(f.along_m_s * f.along_m_s + f.across_m_s * f.across_m_s,
                       WithinRel(f.vertical_m_s * f.vertical_m_s + f.forward_m_s * f.forward_m_s, 1e-12));
            ++falls;
        }
    });
    CHECK(falls > lures);
}
