#include "water/swim/compare.hpp"

#include <catch2/catch_test_macros.hpp>

using namespace evenfall::swim;

namespace {

Draws draws_of(std::initializer_list<double> beats) {
    Draws draws;
    for (const double b : beats)
        draws.push_back({b > 0.0 ? Way::swims : Way::leans, b, 0.05});
    return draws;
}

} // namespace

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
