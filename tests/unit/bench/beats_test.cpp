#include "bench/beats.hpp"

#include "bench/uncertainty/uncertainty.hpp"
#include "support/presets.hpp"
#include "support/swim_chains.hpp"
#include "water/swim/swim.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <numbers>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using document::ReadingKind;

namespace {

document::Reading count(double beats, double travel_m, std::optional<double> foretold_per_m = {}) {
    document::Reading r;
    r.kind = ReadingKind::beats;
    r.stage = Stage::rigged;
    r.beats = beats;
    r.travel_m = travel_m;
    r.foretold_per_m = foretold_per_m;
    return r;
}

document::Document millrace(std::vector<document::Reading> log) {
    document::Document d = support::preset_named("millrace-170");
    d.log = std::move(log);
    return d;
}

} // namespace

TEST_CASE("beats are counted over a way, or over a time at a speed") {
    document::Reading timed = count(14, 3.0);
    CHECK_THAT(*bench::counted_per_m(timed), WithinRel(14.0 / 3.0, 1e-12));
    timed.travel_m.reset();
    timed.time_s = 6.0;
    timed.speed_m_s = 0.5;
    CHECK_THAT(*bench::counted_per_m(timed), WithinRel(14.0 / 3.0, 1e-12));
    timed.speed_m_s.reset();
    CHECK_FALSE(bench::counted_per_m(timed));
}

TEST_CASE("a count narrows what was foretold as two normal figures of one thing do: the precision-weighted "
          "mean (closed form)") {
    const double sigma = 0.187;
    document::Reading r = count(16.0, 10.0); // 1.6 a metre, where 1.42 were foretold
    r.beats_sigma = 0.07 * 16.0;
    const bench::BeatsError after = bench::beats_error(millrace({r}), 1.42, sigma);
    const double precision = 1.0 / (sigma * sigma) + 1.0 / (0.07 * 0.07);
    CHECK(after.counts == 1);
    CHECK_THAT(after.mean, WithinAbs(std::log(1.6 / 1.42) / (0.07 * 0.07) / precision, 1e-12));
    CHECK_THAT(after.sigma, WithinAbs(1.0 / std::sqrt(precision), 1e-12));
    // The same count twice is one of half the variance, in whatever order it stands with another.
    document::Reading better = r;
    better.beats_sigma = *r.beats_sigma / std::sqrt(2.0);
    const bench::BeatsError twice = bench::beats_error(millrace({r, r}), 1.42, sigma);
    const bench::BeatsError once = bench::beats_error(millrace({better}), 1.42, sigma);
    CHECK_THAT(twice.mean, WithinAbs(once.mean, 1e-12));
    CHECK_THAT(twice.sigma, WithinAbs(once.sigma, 1e-12));
}

TEST_CASE("a band is what it was before a count, and narrow about the count after it: three figures of a "
          "prototype that weighed draws one by one (regression values)",
          "[swim]") {
    const swim::Beats before{1.12, 1.42, 1.81};
    const bench::KnownBeats none = bench::known_beats(millrace({}), before);
    CHECK_FALSE(none.is_learnt);
    CHECK(none.counts == 0);
    CHECK(none.per_m.low == before.low);
    CHECK(none.per_m.high == before.high);
    document::Reading r = count(16.0, 10.0);
    r.beats_sigma = 0.07 * 16.0;
    const bench::KnownBeats after = bench::known_beats(millrace({r}), before);
    CHECK(after.is_learnt);
    CHECK(after.counts == 1);
    CHECK_THAT(after.per_m.low, WithinRel(1.45, 0.02));
    CHECK_THAT(after.per_m.mid, WithinRel(1.58, 0.02));
    CHECK_THAT(after.per_m.high, WithinRel(1.72, 0.02));
}

namespace {

/// The band after a count, exactly: each draw is as likely as the count makes it, and the model's error in it
/// normal. Inverted by halving.
double weighed(const swim::Draws& draws, double counted, double sigma_model, double sigma_count,
               double share) {
    const double own = sigma_model * sigma_model, both = own + sigma_count * sigma_count;
    const double left = sigma_model * sigma_count / std::sqrt(both);
    const auto below = [&](double ln) {
        double sum = 0.0, all = 0.0;
        for (const swim::Draw& d : draws) {
            if (!(d.beats_per_m > 0.0)) continue;
            const double middle = std::log(d.beats_per_m), off = std::log(counted) - middle;
            const double weight = std::exp(-0.5 * off * off / both);
            all += weight;
            sum += weight * 0.5 * std::erfc((middle + off * own / both - ln) / (left * std::numbers::sqrt2));
        }
        return sum / all;
    };
    double low = std::log(counted) - 2.0, high = std::log(counted) + 2.0;
    for (int k = 0; k < 60; ++k)
        (below(0.5 * (low + high)) < share ? low : high) = 0.5 * (low + high);
    return std::exp(low);
}

} // namespace

TEST_CASE("a band narrowed as if it were normal is that of its draws weighed one by one, to 3 %", "[swim]") {
    const swim::SwimAnswer a = swim::swim(testing::chain_of(testing::body_b170()));
    REQUIRE(a.beats_per_m);
    for (const double counted : {1.2, 1.4, 1.6, 1.8}) {
        CAPTURE(counted);
        document::Reading r = count(10.0 * counted, 10.0);
        r.beats_sigma = 0.07 * *r.beats;
        const swim::Beats after = bench::known_beats(millrace({r}), *a.beats_per_m).per_m;
        CHECK_THAT(after.low, WithinRel(weighed(a.draws, counted, 0.16, 0.07, 0.1), 0.03));
        CHECK_THAT(after.mid, WithinRel(weighed(a.draws, counted, 0.16, 0.07, 0.5), 0.03));
        CHECK_THAT(after.high, WithinRel(weighed(a.draws, counted, 0.16, 0.07, 0.9), 0.03));
    }
}

TEST_CASE("a longer count says more, and one of a design that was changed since says less") {
    const auto sigma_after = [](const document::Reading& r) {
        return bench::beats_error(millrace({r}), 1.5, 0.2).sigma;
    };
    CHECK(bench::count_sigma_ln(count(10, 5.0)) < 0.0708);
    CHECK(bench::count_sigma_ln(count(10, 5.0)) > 0.0707);
    CHECK(sigma_after(count(20, 14.0)) < sigma_after(count(5, 3.5)));
    CHECK(sigma_after(count(20, 14.0, 1.5)) == sigma_after(count(20, 14.0)));
    CHECK(sigma_after(count(20, 14.0, 1.2)) > sigma_after(count(20, 14.0)));
    // What was foretold then is what it is held against.
    const bench::BeatsError then = bench::beats_error(millrace({count(20, 10.0, 2.0)}), 1.5, 0.2);
    CHECK_THAT(then.mean, WithinAbs(0.0, 1e-12));
}

TEST_CASE("counts of the lure on the bench alone are taken, and none that is excluded") {
    document::Reading other = count(20, 5.0);
    document::Reading mine = count(15, 10.0);
    mine.lure = 1;
    document::Reading out = count(40, 10.0);
    out.lure = 1;
    out.excluded = true;
    CHECK(bench::beats_error(millrace({other, mine, out}), 1.5, 0.2).counts == 1);
}

TEST_CASE("the next lure of the recipe begins with what was counted, and holds it for less sure") {
    const document::Document first = millrace({count(16, 10.0, 1.42)});
    const auto next = for_next_lure(first);
    REQUIRE(next);
    const bench::BeatsError learnt = bench::beats_error(first, 1.42, 0.2);
    const bench::BeatsError begun = bench::beats_error(*next, 1.42, 0.2);
    CHECK(begun.counts == 0);
    CHECK_THAT(begun.mean, WithinAbs(learnt.mean, 1e-9));
    CHECK(begun.sigma > learnt.sigma);
    CHECK(begun.sigma < 0.2);
    // A lure after that, with nothing more counted, knows the same.
    const auto third = for_next_lure(*next);
    REQUIRE(third);
    CHECK_THAT(bench::beats_error(*third, 1.42, 0.2).sigma, WithinAbs(begun.sigma, 1e-12));
    // Its band is about what the first lure's count was over what was foretold of it.
    const bench::KnownBeats band = bench::known_beats(*next, {1.12, 1.42, 1.81});
    CHECK(band.is_learnt);
    CHECK(band.counts == 0);
    CHECK_THAT(band.per_m.mid, WithinRel(1.42 * std::exp(learnt.mean), 1e-9));
    CHECK(band.per_m.high / band.per_m.low < 1.81 / 1.12);
}

TEST_CASE("weight, hang, fall and advice are untouched by beats counted") {
    const document::Document bare = millrace({});
    const document::Document counted = millrace({count(16, 10.0, 1.42)});
    const auto a = uncertainty(bare);
    const auto b = uncertainty(counted);
    REQUIRE((a && b));
    CHECK(a->in_water_kg.value == b->in_water_kg.value);
    CHECK(a->in_water_kg.sigma == b->in_water_kg.sigma);
    CHECK(a->pitch_rad.sigma == b->pitch_rad.sigma);
    CHECK(a->chances_corrected.both == b->chances_corrected.both);
    CHECK_FALSE(b->has_readings);
    REQUIRE(b->readings.size() == 1);
    CHECK_FALSE(b->readings[0].used);
    CHECK(b->readings[0].warning.empty());
    const auto now_a = do_now(bare);
    const auto now_b = do_now(counted);
    REQUIRE((now_a && now_b));
    CHECK(now_a->stage == now_b->stage);
    CHECK(now_a->change_kg == now_b->change_kg);
}
