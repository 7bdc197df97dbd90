#include "water/swim/compare.hpp"

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include <cmath>

using namespace evenfall::swim;
using Catch::Approx;

namespace {

Draws draws_of(std::initializer_list<double> beats) {
    Draws draws;
    for (const double b : beats)
        draws.push_back({b > 0.0 ? Way::swims : Way::leans, b, 0.05});
    return draws;
}

} // namespace

TEST_CASE("one draw's band is the model's own error about it", "[swim]") {
    const Draws draws = draws_of({1.4});
    const auto band = beats_per_m(draws, belief_of(draws));
    REQUIRE(band.has_value());
    CHECK(band->mid == Approx(1.4).epsilon(1e-9));
    // One in ten of a normal distribution lies 1.2816 standard deviations down.
    CHECK(band->low == Approx(1.4 * std::exp(-1.2815515655 * 0.16)).epsilon(1e-9));
    CHECK(band->high == Approx(1.4 * std::exp(1.2815515655 * 0.16)).epsilon(1e-9));
}

TEST_CASE("draws without a beat count for nothing, and none at all gives no band", "[swim]") {
    const Draws some = draws_of({1.2, 0.0, 1.6, 0.0}), only = draws_of({1.2, 1.6});
    CHECK(beats_per_m(some, belief_of(some))->mid == beats_per_m(only, belief_of(only))->mid);
    const Draws none = draws_of({0.0, 0.0});
    CHECK(!beats_per_m(none, belief_of(none)).has_value());
}

TEST_CASE("a count weighs the draws and shifts the model's error as normal distributions do", "[swim]") {
    const Draws draws = draws_of({1.2, 1.5});
    const Belief b = learnt(belief_of(draws), draws, 1.5, 0.07);
    const double both = 0.16 * 0.16 + 0.07 * 0.07, off = std::log(1.5 / 1.2);
    CHECK(b.weight[0] / b.weight[1] == Approx(std::exp(-0.5 * off * off / both)).epsilon(1e-12));
    CHECK(b.weight[0] + b.weight[1] == Approx(1.0).epsilon(1e-12));
    CHECK(b.error_mean[0] == Approx(off * 0.16 * 0.16 / both).epsilon(1e-12));
    CHECK(b.error_mean[1] == 0.0);
    CHECK(b.error_sigma == Approx(0.16 * 0.07 / std::sqrt(both)).epsilon(1e-12));
}

TEST_CASE("a count narrows the band round itself, two alike more than one", "[swim]") {
    const Draws draws = draws_of({1.1, 1.25, 1.3, 1.4, 1.6});
    const auto width = [](const Beats& b) { return std::log(b.high / b.low); };
    const Belief before = belief_of(draws), once = learnt(before, draws, 1.6, 0.07),
                 twice = learnt(once, draws, 1.6, 0.07);
    const Beats wide = *beats_per_m(draws, before), narrow = *beats_per_m(draws, once),
                narrower = *beats_per_m(draws, twice);
    CHECK(width(narrow) < 0.5 * width(wide));
    CHECK(width(narrower) < 0.8 * width(narrow));
    CHECK(narrow.mid == Approx(1.6).epsilon(0.03));
    CHECK(error_of(once).mean > 0.0);
    CHECK(error_of(once).sigma < 0.16);
    CHECK(after_a_change(error_of(once)).sigma == Approx(std::hypot(error_of(once).sigma, 0.08)));
}

TEST_CASE("a count far from all draws leaves finite weights", "[swim]") {
    const Draws draws = draws_of({1.1, 1.3});
    const Belief b = learnt(belief_of(draws), draws, 500.0, 0.001);
    CHECK(std::isfinite(b.weight[0]));
    CHECK(b.weight[0] + b.weight[1] == Approx(1.0));
    CHECK(std::isfinite(beats_per_m(draws, b)->mid));
}

TEST_CASE("a change is told where nine in ten draws agree and the middle is off by more than 8 %", "[swim]") {
    const Draws before = draws_of({1.0, 1.2, 1.4, 1.6});
    const auto times = [&](std::initializer_list<double> by) {
        Draws after = before;
        std::size_t k = 0;
        for (const double f : by)
            after[k++].beats_per_m *= f;
        return compare(before, after);
    };
    CHECK(times({1.1, 1.1, 1.12, 1.2}).beats == Told::more);
    CHECK(times({0.8, 0.9, 0.9, 0.85}).beats == Told::less);
    CHECK(times({1.05, 1.06, 1.07, 1.3}).beats == Told::not_told); // too little
    CHECK(times({0.8, 1.2, 1.3, 1.4}).beats == Told::not_told);    // not all
    CHECK(times({1.1, 1.1, 1.12, 1.2}).swing == Told::not_told);
    // Where few draws beat both before and after, nothing is told but that.
    const Change few = times({1.5, 0.0, 0.0, 0.0});
    CHECK(few.beats == Told::not_told);
    CHECK(few.swims_before == 4);
    CHECK(few.swims_after == 1);
    CHECK(few.both_swim == 1);
}

TEST_CASE("the same lure is no change", "[swim]") {
    const Draws draws = draws_of({1.0, 1.2, 0.0, 1.6});
    const Change c = compare(draws, draws);
    CHECK(c.beats_ratio == std::array{1.0, 1.0, 1.0});
    CHECK(c.beats == Told::not_told);
    CHECK(c.both_swim == 3);
}
