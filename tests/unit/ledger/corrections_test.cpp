#include "evenfall.hpp"
#include "support/small_lures.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using namespace evenfall;
using Catch::Matchers::WithinRel;

namespace {

document::Document corrected_by(document::Correction c) {
    document::Document d = support::fish();
    d.corrections.push_back(c);
    return d;
}

double mass_of(const ledger::Ledger& ledger, ledger::Kind kind, int item = -1) {
    double sum = 0.0;
    for (const ledger::Line& line : ledger) {
        if (line.kind == kind && (item < 0 || line.item == item)) sum += line.mass_kg;
    }
    return sum;
}

} // namespace

TEST_CASE("A correction multiplies the lines of its cause and group, and no others") {
    const auto plain = evaluate(support::fish());
    const auto wood = evaluate(corrected_by({document::Cause::wood_density, {}, 1.1, 0.01}));
    REQUIRE((plain.ok() && wood.ok()));
    for (const auto kind : {ledger::Kind::wood, ledger::Kind::hole_wood, ledger::Kind::bore_wood}) {
        CHECK_THAT(mass_of(wood->ledger, kind), WithinRel(1.1 * mass_of(plain->ledger, kind), 1e-12));
    }
    CHECK(mass_of(wood->ledger, ledger::Kind::part) == mass_of(plain->ledger, ledger::Kind::part));
    CHECK(wood->answers.displaced_m3 == plain->answers.displaced_m3);
    // What is left is how it is carved.
    document::Document even = support::fish();
    even.shape.carving = document::Carving::careful;
    document::Document known = corrected_by({document::Cause::wood_density, {}, 1.1, 0.01});
    known.shape.carving = document::Carving::careful;
    CHECK(evaluate(known)->answers.mass_sigma.kg < 0.5 * evaluate(even)->answers.mass_sigma.kg);

    const auto coat = evaluate(corrected_by({document::Cause::coat_amount, 0, 1.5, {}}));
    CHECK_THAT(mass_of(coat->ledger, ledger::Kind::coat, 0),
               WithinRel(1.5 * mass_of(plain->ledger, ledger::Kind::coat, 0), 1e-12));
    CHECK(mass_of(coat->ledger, ledger::Kind::coat, 1) == mass_of(plain->ledger, ledger::Kind::coat, 1));

    const auto middle = evaluate(corrected_by({document::Cause::carved_size, 1, 1.02, {}}));
    CHECK_THAT(mass_of(middle->ledger, ledger::Kind::wood, 1),
               WithinRel(1.02 * mass_of(plain->ledger, ledger::Kind::wood, 1), 1e-12));
    CHECK(mass_of(middle->ledger, ledger::Kind::wood, 0) == mass_of(plain->ledger, ledger::Kind::wood, 0));
    const auto all = evaluate(corrected_by({document::Cause::carved_size, {}, 1.02, {}}));
    CHECK_THAT(mass_of(all->ledger, ledger::Kind::wood),
               WithinRel(1.02 * mass_of(plain->ledger, ledger::Kind::wood), 1e-12));
}

TEST_CASE("A correction of drag changes the fall alone: twice the drag, the weight of two") {
    const auto planned = plan_lead(support::fish());
    REQUIRE((planned.ok() && planned->met));
    document::Document document = planned->document;
    const auto once = evaluate(document);
    document.corrections.push_back({document::Cause::drag, {}, 2.0, {}});
    const auto twice = evaluate(document);
    REQUIRE((once.ok() && twice.ok() && once->answers.fall && twice->answers.fall));
    CHECK(twice->answers.in_water.kg == once->answers.in_water.kg);
    CHECK_THAT(twice->answers.fall->speed_m_s / once->answers.fall->speed_m_s,
               WithinRel(std::sqrt(0.5), 0.02));
}

TEST_CASE("Corrections of one thing multiply, and are refused where together they leave the limits of one") {
    const auto with = [](std::initializer_list<document::Correction> list) {
        document::Document d = support::fish();
        d.corrections = list;
        return d;
    };
    CHECK(evaluate(with({{document::Cause::wood_density, {}, 2.0, {}},
                         {document::Cause::wood_density, {}, 0.5, {}}}))
              .ok());
    CHECK(
        evaluate(with({{document::Cause::part_mass, 0, 20.0, {}}, {document::Cause::part_mass, 1, 20.0, {}}}))
            .ok());
    const auto refused = evaluate(with({{document::Cause::moisture, {}, 15.0, {}},
                                        {document::Cause::part_mass, 0, 2.0, {}},
                                        {document::Cause::moisture, {}, 15.0, {}}}));
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.problems().front().path == "/corrections/2/factor");
    CHECK(refused.problems()
              .front()
              .sentence.text(evenfall::units::metric)
              .find("a factor of 225; the limit is 0.05 to 20.") != std::string::npos);
    // Two hundred of them are no number any more.
    document::Document many = support::fish();
    many.corrections.assign(document::max_corrections, {document::Cause::drag, {}, 20.0, {}});
    CHECK_FALSE(evaluate(many).ok());
}

TEST_CASE("The lead plan plans with corrections: heavier wood, less lead") {
    const auto plain = plan_lead(support::fish());
    const auto heavy = plan_lead(corrected_by({document::Cause::wood_density, {}, 1.05, {}}));
    REQUIRE((plain.ok() && heavy.ok() && plain->met && heavy->met));
    double plain_kg = 0.0;
    double heavy_kg = 0.0;
    for (const HolePlan& h : plain->holes)
        plain_kg += h.mass_kg;
    for (const HolePlan& h : heavy->holes)
        heavy_kg += h.mass_kg;
    CHECK(heavy_kg < plain_kg - 0.001);
    CHECK_THAT(heavy->after.in_water.kg, WithinRel(plain->after.in_water.kg, 1e-2));
}
