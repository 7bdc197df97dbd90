// The tub test as carvers do it: sealed, not painted, hooks and tail hung on.

#include "base/trade.hpp"
#include "bench/uncertainty/posterior.hpp"
#include "ledger/hung_on.hpp"
#include "materials/solids.hpp"
#include "output/bench_text.hpp"
#include "unit/bench/uncertainty/bench_readings.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <cmath>

using namespace evenfall;
using namespace evenfall::support;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using document::HungKind;
using document::HungOn;
using document::ReadingKind;

namespace {

document::Reading timed_fall(Stage stage, double time_s, document::HungList hung = {}) {
    document::Reading r = invented::timed(stage, 0.5);
    r.time_s = time_s;
    r.with = std::move(hung);
    return r;
}

HungOn part_on(int index) {
    HungOn on;
    on.what = HungKind::part;
    on.part = index;
    return on;
}

HungOn weight_on(double kg, const char* material) {
    HungOn on;
    on.what = HungKind::weight;
    on.mass_kg = kg;
    on.material = material;
    return on;
}

ledger::Sum sum_through(const ledger::Ledger& ledger, Stage stage) {
    return ledger::sum_if(ledger, [stage](const ledger::Line& line) { return line.stage <= stage; });
}

bool refused(const document::Document& document) {
    return !evaluate(document).ok();
}

} // namespace

TEST_CASE("with all hung on, a stage weighs what it has and what the rigged lure adds") {
    const auto e = evaluate(millrace());
    REQUIRE(e);
    const ledger::Ledger hung = ledger::with_hung_on(e->ledger, document::all_hung_on(), {});
    const auto& stages = e->answers.stages;
    const double rigging_kg = stages[static_cast<std::size_t>(Stage::rigged)].mass.kg -
                              stages[static_cast<std::size_t>(Stage::clear_coated)].mass.kg;
    REQUIRE(rigging_kg > 0.001);
    for (const Stage stage : document::test_stages) {
        const double bare_kg = stages[static_cast<std::size_t>(stage)].mass.kg;
        CHECK_THAT(sum_through(hung, stage).mass.kg, WithinAbs(bare_kg + rigging_kg, 1e-12));
    }
    // Clear coated and with everything on it is the finished lure.
    const std::vector<StageAnswer> tests = stages_with_all(millrace(), *e);
    REQUIRE(tests.size() == document::test_stages.size());
    const StageAnswer& last = tests.back();
    CHECK_THAT(last.in_water.kg, WithinAbs(e->answers.in_water.kg, 1e-12));
    REQUIRE((last.fall && e->answers.fall));
    CHECK_THAT(last.fall->speed_m_s, WithinRel(e->answers.fall->speed_m_s, 1e-9));
}

TEST_CASE("parts one by one are all of it, and a test weight adds its mass and pushes its own water aside") {
    document::Document d = millrace();
    const auto e = evaluate(d);
    REQUIRE(e);
    document::HungList one_by_one;
    for (int i = 0; i < static_cast<int>(d.parts.size()); ++i) {
        if (d.parts[static_cast<std::size_t>(i)].stage == Stage::rigged) one_by_one.push_back(part_on(i));
    }
    if (d.tail) one_by_one.push_back({HungKind::tail, {}, {}, ""});
    REQUIRE(one_by_one.size() >= 2);
    const auto sealed = [&](const document::HungList& with) {
        return sum_through(ledger::with_hung_on(e->ledger, with, e->answers.g_m), Stage::sealed);
    };
    CHECK_THAT(sealed(one_by_one).mass.kg, WithinAbs(sealed(document::all_hung_on()).mass.kg, 1e-12));
    CHECK(sealed({one_by_one.front()}).mass.kg < sealed(one_by_one).mass.kg);
    // 11.34 g/cm³, as in the table of materials: 11.34 g push 1 cm³ aside.
    const double lead = materials::find_solid("lead")->density_kg_m3.value;
    const ledger::Sum with_weight = sealed({weight_on(1e-6 * lead, "lead")});
    CHECK_THAT(with_weight.mass.kg - sealed({}).mass.kg, WithinAbs(1e-6 * lead, 1e-12));
    CHECK_THAT(with_weight.displaced_m3 - sealed({}).displaced_m3, WithinAbs(1e-6, 1e-15));
}

TEST_CASE("a reading of the clear coated lure with all on says what one of the rigged lure says") {
    const auto rigged = uncertainty(with({timed_fall(Stage::rigged, 3.6)}));
    const auto tested = uncertainty(with({timed_fall(Stage::clear_coated, 3.6, document::all_hung_on())}));
    REQUIRE((rigged && tested));
    CHECK_THAT(tested->in_water_kg.value, WithinRel(rigged->in_water_kg.value, 1e-9));
    CHECK_THAT(tested->in_water_kg.sigma, WithinRel(rigged->in_water_kg.sigma, 1e-9));
    CHECK_THAT(tested->chances_corrected.both, WithinAbs(rigged->chances_corrected.both, 1e-9));
}

TEST_CASE("the sealed lure floats bare and falls with hooks and tail on: only so a fall can be read") {
    const auto before = uncertainty(millrace());
    REQUIRE(before);
    const auto& bare = before->stages[static_cast<std::size_t>(Stage::sealed)];
    REQUIRE(before->stages_with_all.size() == document::test_stages.size());
    const StagePrediction& tested = before->stages_with_all[1];
    REQUIRE(tested.stage == Stage::sealed);
    REQUIRE(tested.tub_fall_m_s);
    const double time_s = 0.5 / tested.tub_fall_m_s->value + 0.4;
    const auto read = uncertainty(with({timed_fall(Stage::sealed, time_s, document::all_hung_on())}));
    REQUIRE(read);
    REQUIRE(read->readings.size() == 1);
    CHECK(read->readings[0].used);
    CHECK(read->in_water_kg.sigma < before->in_water_kg.sigma);
    if (bare.in_tub_kg.value < 0.0) CHECK_FALSE(bare.tub_fall_m_s);
}

TEST_CASE(
    "what to do now says what the tub should show with all on, and the finished lure then falls right") {
    const auto now = do_now(millrace(), Stage::sealed);
    REQUIRE(now);
    REQUIRE(now->with_all);
    CHECK(now->with_all->stage == Stage::sealed);
    const auto after = evaluate(now->document);
    REQUIRE(after);
    const std::vector<StageAnswer> tests = stages_with_all(now->document, *after);
    CHECK_THAT(now->with_all->in_water_kg, WithinAbs(tests[1].in_tub.kg, 1e-12));
    REQUIRE((now->with_all->fall_m_s && tests[1].tub_fall));
    CHECK_THAT(*now->with_all->fall_m_s, WithinRel(tests[1].tub_fall->speed_m_s, 1e-9));
    // Followed: a lure that reads just so in the tub is foretold to be right when it is finished.
    document::Document followed = with_advice(millrace(), *now);
    followed.log.push_back(timed_fall(Stage::sealed, *now->with_all->half_metre_s, document::all_hung_on()));
    const auto then = uncertainty(followed);
    REQUIRE((then && then->fall_m_s));
    CHECK(fall_on_target(followed.targets, then->fall_m_s->value));
}

TEST_CASE(
    "first to a sealed, weighed lure how it hangs is offered, and once that is read the fall with all on") {
    const auto blank = uncertainty(millrace());
    REQUIRE(blank);
    const StagePrediction& sealed = blank->stages[static_cast<std::size_t>(Stage::sealed)];
    std::vector<document::Reading> log{dry(Stage::sealed, 1e3 * sealed.mass_kg.value),
                                       held(Stage::sealed, 1e3 * sealed.displaced_kg.value)};
    const auto weighed = uncertainty(with(log));
    REQUIRE((weighed && !weighed->next.empty()));
    CHECK(weighed->next.front().kind == ReadingKind::hang_angle);
    document::Reading hang;
    hang.kind = ReadingKind::hang_angle;
    hang.stage = Stage::sealed;
    hang.angle_rad = 0.0;
    log.push_back(hang);
    log.back().angle_rad = uncertainty(with(log))->readings.back().predicted; // as it is expected to hang
    const auto seen = uncertainty(with(log));
    REQUIRE((seen && !seen->next.empty()));
    const NextReading& first = seen->next.front();
    CHECK(first.kind == ReadingKind::tub_fall);
    CHECK(first.stage == Stage::sealed);
    CHECK(first.with_all);
    CHECK(first.gain > 0.1);
}

TEST_CASE("a fall read without a word of the hooks is explained by them") {
    const auto blank = uncertainty(millrace());
    REQUIRE(blank);
    const StagePrediction& bare = blank->stages[static_cast<std::size_t>(Stage::sealed)];
    const StagePrediction& tested = blank->stages_with_all[1];
    // Weighed in water with hooks and tail on, put down as the bare lure.
    document::Reading hung = invented::weighed(ReadingKind::hung_in_water, Stage::sealed);
    hung.mass_kg = tested.in_tub_kg.value;
    const auto s = uncertainty(with({dry(Stage::sealed, 1e3 * bare.mass_kg.value),
                                     held(Stage::sealed, 1e3 * bare.displaced_kg.value), hung}));
    REQUIRE(s);
    const ReadingFit& fit = s->readings[2];
    REQUIRE_FALSE(fit.warning.empty());
    const auto tells = [](const Sentence& why) {
        return why.text(units::metric).find("hooks and tail on") != std::string::npos;
    };
    CHECK(std::any_of(fit.explanations.begin(), fit.explanations.end(), tells));
}

TEST_CASE("what hung on is checked: the lure leaded, whole, the part there, the weight of a known stuff") {
    CHECK_FALSE(refused(with({timed_fall(Stage::sealed, 4.0, document::all_hung_on())})));
    CHECK_FALSE(refused(with({timed_fall(Stage::leaded, 4.0, {weight_on(0.002, "tungsten")})})));
    CHECK(refused(with({timed_fall(Stage::hardware, 4.0, document::all_hung_on())})));
    CHECK(refused(with({timed_fall(Stage::sealed, 4.0, {part_on(99)})})));
    CHECK(refused(with({timed_fall(Stage::sealed, 4.0, {weight_on(0.002, "unobtainium")})})));
    CHECK(refused(with({timed_fall(Stage::sealed, 4.0, {weight_on(0.0, "lead")})})));
    HungOn nameless;
    nameless.what = HungKind::part;
    CHECK(refused(with({timed_fall(Stage::sealed, 4.0, {nameless})})));
    HungOn both = part_on(0);
    both.mass_kg = 0.001;
    CHECK(refused(with({timed_fall(Stage::sealed, 4.0, {both})})));
    document::Reading one = dry(Stage::sealed, 10.0);
    one.segment = 0;
    one.with = document::all_hung_on();
    CHECK(refused(with({one})));
    document::Reading board = invented::board();
    board.mass_kg = 0.13;
    board.with = document::all_hung_on();
    CHECK(refused(with({board})));
    document::Document bald = millrace();
    bald.tail.reset();
    CHECK(refused(with({timed_fall(Stage::sealed, 4.0, {{HungKind::tail, {}, {}, ""}})}, bald)));
}

TEST_CASE("what hung on travels in a document and in a link, and is told in words") {
    const document::Document d =
        with({timed_fall(Stage::sealed, 4.0, {part_on(0), weight_on(0.002, "tungsten")}),
              timed_fall(Stage::painted, 4.0, document::all_hung_on())});
    const auto back = read_document(write_document(d));
    REQUIRE(back);
    CHECK(back->log[0].with == d.log[0].with);
    CHECK(back->log[1].with == d.log[1].with);
    CHECK(output::hung_words(d, d.log[1].with).text(units::metric) == "hooks and tail on");
    CHECK(output::hung_words(d, {weight_on(0.002, "tungsten")}).text(units::metric) ==
          "2.00 g of Tungsten on");
    CHECK(output::hung_words(d, {}).empty());
}
