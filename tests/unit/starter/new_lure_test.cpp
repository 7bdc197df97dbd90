// A card of few choices gives a lure that can be built, or names the choice that forbids it.

#include "base/trade.hpp"
#include "bench/lead/lead_plan.hpp"
#include "materials/woods.hpp"
#include "starter/new_lure.hpp"
#include "workshop/joint_answers.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <map>
#include <set>

using namespace evenfall;
using namespace evenfall::starter;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

const std::set<std::string> choices{"/length_mm", "/height_mm", "/thickness_mm", "/segments",
                                    "/wood",      "/hooks",     "/fall"};

/// What a card asks is met without a warning; else the refusal names a choice.
bool holds(const LureCard& card) {
    INFO("form " << static_cast<int>(card.form) << ", " << card.length_m * 1e3 << " mm, " << card.segments
                 << " segments, " << card.wood << ", hooks " << card.hooks << ", tail "
                 << static_cast<int>(card.tail) << ", fall " << static_cast<int>(card.fall));
    const auto lure = new_lure(card);
    if (!lure) {
        INFO(lure.problems().front().sentence.text(units::metric));
        CHECK(choices.count(lure.problems().front().path) == 1);
        CHECK_FALSE(lure.problems().front().sentence.empty());
        return false;
    }
    const auto evaluation = evaluate(*lure);
    REQUIRE(evaluation.ok());
    for (const Problem& warning : evaluation->answers.warnings)
        FAIL_CHECK(warning.sentence.text(units::metric));
    const auto joints = joints::joint_answers(*lure);
    REQUIRE(joints.ok());
    for (const Problem& warning : joints->warnings)
        FAIL_CHECK(warning.sentence.text(units::metric));
    const auto plan = plan_lead(*lure);
    REQUIRE(plan.ok());
    CHECK(plan->met);
    CHECK_THAT(plan->after.in_water.kg, WithinAbs(evaluation->answers.in_water.kg, 2e-5));
    CHECK(lure->joints.size() + 1 == static_cast<std::size_t>(card.segments));
    CHECK(static_cast<int>(lure->parts.size()) == card.hooks);
    CHECK(lure->tail.has_value() == (card.tail == TailFin::soft));
    for (const document::Hole& hole : lure->holes)
        CHECK(hole.depth_m > 0.0);
    return true;
}

LureCard card_of(int form, int segments, int hooks, int tail, int fall) {
    LureCard card;
    card.form = static_cast<Form>(form);
    card.segments = segments;
    card.hooks = hooks;
    card.tail = static_cast<TailFin>(tail);
    card.fall = static_cast<WantedFall>(fall);
    return card;
}

} // namespace

namespace {

/// Cards of up to four segments and of more, and how many of them were made.
struct Count {
    int few_made = 0, few = 0, many_made = 0, many = 0;
};

/// All cards of form, segments, hooks and tail, with the falls that `asks` names for them.
template <class Asks>
Count made_of_all(const Asks& asks) {
    Count count;
    for (int form = 0; form < 4; ++form)
        for (int segments = 1; segments <= most_segments; ++segments)
            for (int hooks = 0; hooks <= most_hooks; ++hooks)
                for (int tail = 0; tail < 2; ++tail)
                    for (int fall = 0; fall < 5; ++fall) {
                        if (!asks(form + segments + hooks + tail, fall)) continue;
                        const bool made = holds(card_of(form, segments, hooks, tail, fall));
                        (segments <= 4 ? count.few : count.many) += 1;
                        (segments <= 4 ? count.few_made : count.many_made) += made;
                    }
    return count;
}

} // namespace

TEST_CASE(
    "a card gives a lure without a warning that meets what is asked, or names the choice that forbids it",
    "[starter]") {
    // Each form, number of segments, hooks and tail with one fall; all falls come in turn.
    const Count count = made_of_all([](int sum, int fall) { return sum % 5 == fall; });
    // Of 160 mm in a light wood, with up to four segments, nearly all can be built; with five and six, some.
    CHECK(count.few_made > count.few * 9 / 10);
    CHECK(count.many_made > count.many / 4);
}

TEST_CASE("so does every card there is", "[.every-card]") {
    const Count count = made_of_all([](int, int) { return true; });
    CHECK(count.few_made > count.few * 9 / 10);
    CHECK(count.many_made > count.many / 4);
}

TEST_CASE("the usual card is built in every wood and at every usual length, floating to fast", "[starter]") {
    for (const materials::Wood& wood : materials::woods()) {
        LureCard card;
        card.wood = wood.id;
        card.hooks = 1;
        holds(card);
    }
    for (const double mm : {90.0, 120.0, 150.0, 180.0, 220.0, 280.0}) {
        LureCard card;
        card.length_m = units::m_from_mm(mm);
        card.segments = mm < 110.0 ? 2 : 3;
        card.hooks = mm < 110.0 ? 1 : 2;
        CAPTURE(mm);
        CHECK(holds(card));
    }
}

TEST_CASE("a wood too weak for a hook behind a joint is named as the reason", "[starter]") {
    LureCard card;
    card.wood = "balsa";
    card.hooks = 2;
    const auto lure = new_lure(card);
    REQUIRE_FALSE(lure.ok());
    CHECK(lure.problems().front().path == "/hooks");
    CHECK(lure.problems().front().sentence.text(units::metric) ==
          "In this wood no joint holds a hook behind it: take one hook, fewer segments, or a stronger wood.");
}

TEST_CASE("a lure from the card falls at the speed that was asked", "[starter]") {
    LureCard card;
    card.fall = WantedFall::by_speed;
    card.speed_m_s = 0.18;
    const auto lure = new_lure(card);
    REQUIRE(lure.ok());
    CHECK_THAT(evaluate(*lure)->answers.fall->speed_m_s, WithinRel(0.18, 1e-3));
}

TEST_CASE("impossible numbers on the card are refused by name", "[starter]") {
    const auto refused = [](const LureCard& card) { return new_lure(card).problems().front().path; };
    LureCard card;
    card.length_m = 0.03;
    CHECK(refused(card) == "/length_mm");
    card = {};
    card.segments = 7;
    CHECK(refused(card) == "/segments");
    card = {};
    card.hooks = 3;
    CHECK(refused(card) == "/hooks");
    card = {};
    card.wood = "driftwood";
    CHECK(refused(card) == "/wood");
    card = {};
    card.height_m = 0.15;
    CHECK(refused(card) == "/height_mm");
    card = {};
    card.fall = WantedFall::by_speed;
    card.speed_m_s = 3.0;
    CHECK(refused(card) == "/fall");
    card = {};
    card.wood = "hard_maple";
    card.fall = WantedFall::fast;
    card.hooks = 2;
    card.thickness_m = 0.030;
    CHECK((new_lure(card).ok() || choices.count(refused(card)) == 1));
}
