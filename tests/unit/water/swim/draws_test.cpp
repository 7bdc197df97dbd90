#include "water/swim/draws.hpp"

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
    const auto band = beats_per_m(draws_of({1.4}), 0.16);
    REQUIRE(band.has_value());
    CHECK(band->mid == Approx(1.4).epsilon(1e-9));
    // One in ten of a normal distribution lies 1.2816 standard deviations down.
    CHECK(band->low == Approx(1.4 * std::exp(-1.2815515655 * 0.16)).epsilon(1e-9));
    CHECK(band->high == Approx(1.4 * std::exp(1.2815515655 * 0.16)).epsilon(1e-9));
}

TEST_CASE("draws without a beat count for nothing, and none at all gives no band", "[swim]") {
    const auto some = beats_per_m(draws_of({1.2, 0.0, 1.6, 0.0}), 0.16);
    const auto only = beats_per_m(draws_of({1.2, 1.6}), 0.16);
    CHECK(some->low == only->low);
    CHECK(some->mid == only->mid);
    CHECK(some->high == only->high);
    CHECK(!beats_per_m(draws_of({0.0, 0.0}), 0.16).has_value());
}

TEST_CASE("the model's error is one number up to the usual swings and grows beyond them to the widest",
          "[swim]") {
    constexpr double degree = evenfall::units::degree_rad;
    CHECK(model_sigma_ln(5.0 * degree) == 0.16);
    CHECK(model_sigma_ln(35.0 * degree) == Approx(0.16).epsilon(1e-12));
    CHECK(model_sigma_ln(45.0 * degree) == Approx(0.23).epsilon(1e-12));
    CHECK(model_sigma_ln(55.0 * degree) == Approx(0.30).epsilon(1e-12));
    Chain chain;
    chain.joints = {{{0.3, 0.2}, 0.0}, {{0.1, 0.4}, 0.0}};
    CHECK(widest_swing_rad(chain) == 0.4);
}
