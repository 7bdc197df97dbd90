#include "support/worked.hpp"
#include "water/afloat/float_answers.hpp"

#include "evenfall.hpp"
#include "support/small_lures.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <limits>
#include <string>
#include <vector>

using namespace evenfall;
using namespace evenfall::afloat;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using support::worked;

namespace {} // namespace

TEST_CASE("a bare block is told to lie flat before it is cut") {
    // 20 mm broad and 30 mm high, half as dense as water: on its narrow face GM is 15/2 + 400/180 − 15 =
    // −5.28 mm.
    document::Document d = support::block();
    const Evaluation e = worked(d);
    const auto answers = float_answers(e.body, e.ledger, d, 1000.0);
    REQUIRE(answers.ok());
    CHECK(answers->floats);
    REQUIRE(answers->upright.has_value());
    CHECK_THAT(answers->upright->gm_transverse_m, WithinAbs(0.0075 + 0.4 / 180.0 - 0.015, 1e-9));
    REQUIRE_FALSE(answers->rests.empty());
    for (const Rest& rest : answers->rests)
        CHECK(rest.posture == Posture::on_its_side);
    const auto warning = roll_over_warning(e.body, e.ledger, d, 1000.0);
    REQUIRE(warning.has_value());
    CHECK(warning->code == ProblemCode::capsizes);
    // T/2 + 33.3/T − 15 = 0 mm at a draft of 27.58 mm: 66.20 g against 36 g.
    CHECK(warning->sentence.text(units::metric) ==
          "Afloat this lure does not stay upright: its metacentre lies 5.3 "
          "mm under G. G must come down by 5.3 mm, or the lure must "
          "be 30.20 g heavier.");
}

TEST_CASE("a lure with its weight above B is told that more of it there does not help") {
    document::Document d = support::block();
    document::Part tower;
    tower.name = "tower";
    tower.mass_kg = 0.010;
    tower.at_m = {0.060, 0.0, 0.040};
    d.parts = {tower};
    const Evaluation e = worked(d);
    const auto warning = roll_over_warning(e.body, e.ledger, d, 1000.0);
    REQUIRE(warning.has_value());
    CHECK(warning->sentence.text(units::metric).ends_with("more weight at the same height does not help."));
}

TEST_CASE("evaluating a floater that rolls over says so once, before it is cut; one that stays upright or "
          "sinks says nothing") {
    document::Document d = support::block();
    d.water = d.tub = {20.0, 0.0};
    const auto said = [&] {
        int times = 0;
        for (const Problem& p : worked(d).answers.warnings)
            times += p.sentence.text(evenfall::units::metric).starts_with("Afloat") ? 1 : 0;
        return times;
    };
    CHECK(said() == 1);
    const auto full = float_answers(worked(d).body, worked(d).ledger, d, 998.2);
    REQUIRE(full.ok());
    CHECK(full->warnings.empty());
    d.wood.density_kg_m3 = 1200.0;
    CHECK(said() == 0);
    // On its broad side: 30 mm wide, 20 mm high.
    d.wood.density_kg_m3 = 500.0;
    for (auto& p : d.shape.back)
        p.value = 0.010;
    for (auto& p : d.shape.belly)
        p.value = -0.010;
    for (auto& p : d.shape.half_width)
        p.value = 0.015;
    CHECK(said() == 0);
}

TEST_CASE("a floater whose weight lies off the middle is told so; one that only stands is told how it comes "
          "to rest, without a heel") {
    document::Document d = support::block();
    d.shape.section.kind = document::SectionKind::rounded;
    d.shape.section.curve() = {{0.0, 2.0}};
    for (auto& p : d.shape.half_width)
        p.value = 0.015;
    document::Part lead;
    lead.name = "lead";
    lead.material = "lead";
    lead.embedded = 1.0;
    lead.mass_kg = 0.012;
    lead.at_m = {0.060, 0.006, -0.001};
    d.parts = {lead};
    const auto said = [&] {
        const Evaluation e = worked(d);
        const auto answers = float_answers(e.body, e.ledger, d, 998.2);
        REQUIRE(answers.ok());
        std::vector<std::string> all;
        for (const Problems* list : {&e.answers.warnings, &answers->warnings}) {
            for (const Problem& p : *list) {
                if (p.sentence.text(evenfall::units::metric).starts_with("Afloat"))
                    all.push_back(p.sentence.text(evenfall::units::metric));
            }
        }
        return all;
    };
    auto words = said();
    REQUIRE(words.size() == 1);
    CHECK(words[0].starts_with("Afloat this lure does not stay upright: G lies "));
    CHECK(words[0].ends_with(" mm to starboard of B."));
    d.parts[0].at_m.y = -0.006;
    CHECK(said().at(0).ends_with(" mm to port of B."));
    d.parts[0].mass_kg = 0.025;
    d.parts[0].at_m = {0.005, 0.0, -0.001};
    words = said();
    REQUIRE(words.size() == 1);
    CHECK(words[0].starts_with("Afloat this lure comes to rest nose down, at a pitch of "));
    // A low weight in the middle lets it lie upright.
    d.parts[0].at_m = {0.060, 0.0, -0.010};
    CHECK(said().empty());
}

TEST_CASE("the quick answer is the upright one of the full answers") {
    document::Document d = support::fish();
    const Evaluation e = worked(d);
    const auto answers = float_answers(e.body, e.ledger, d, 999.1);
    REQUIRE(answers.ok());
    const auto quick = upright_answer(e.body, e.ledger, d, 999.1);
    REQUIRE(quick.has_value());
    REQUIRE(answers->upright.has_value());
    CHECK(quick->pitch_rad == answers->upright->pitch_rad);
    CHECK(quick->depth_m == answers->upright->depth_m);
    CHECK(quick->gm_transverse_m == answers->upright->gm_transverse_m);
}

TEST_CASE("a lure that sinks has its righting moment under water and nothing else") {
    document::Document d = support::block();
    d.wood.density_kg_m3 = 1200.0;
    const Evaluation e = worked(d);
    const auto answers = float_answers(e.body, e.ledger, d, 1000.0);
    REQUIRE(answers.ok());
    CHECK_FALSE(answers->floats);
    CHECK(answers->rests.empty());
    CHECK_FALSE(answers->upright.has_value());
    CHECK(answers->righting.points.empty());
    CHECK(answers->warnings.empty());
    CHECK_THAT(answers->under_water.bg_m, WithinAbs(e.answers.bg_m, 1e-12));
    CHECK_FALSE(upright_answer(e.body, e.ledger, d, 1000.0).has_value());
}

TEST_CASE("water without a density and a ledger without mass are refused") {
    const document::Document d = support::block();
    const Evaluation e = worked(d);
    for (const double density :
         {0.0, -1.0, std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
        const auto answers = float_answers(e.body, e.ledger, d, density);
        REQUIRE_FALSE(answers.ok());
        CHECK(answers.problems()[0].code == ProblemCode::out_of_range);
        CHECK_FALSE(upright_answer(e.body, e.ledger, d, density).has_value());
    }
    CHECK_FALSE(float_answers(e.body, {}, d, 1000.0).ok());
}
