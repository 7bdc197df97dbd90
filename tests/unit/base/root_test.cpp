#include "base/root.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <numbers>
#include <utility>

using namespace evenfall;
using Catch::Matchers::WithinAbs;

TEST_CASE("a root is found between ends in either order") {
    const auto f = [](double x) { return std::cos(x) - x; };
    constexpr double root = 0.739085133215160642; // the Dottie number, OEIS A003957
    CHECK_THAT(root_between(f, 0.0, 1.0, {1e-12}), WithinAbs(root, 1e-12));
    CHECK_THAT(root_between(f, 1.0, 0.0, {1e-12}), WithinAbs(root, 1e-12));
    CHECK_THAT(root_between(f, 0.0, 1.0, {}), WithinAbs(root, 1e-15));
}

TEST_CASE("a root ends at a value that counts as zero, after fewer looks") {
    int looks = 0;
    const auto f = [&looks](double x) {
        ++looks;
        return std::exp(x) - 2.0;
    };
    const double exact = root_between(f, 0.0, 2.0, {1e-14});
    const int all = std::exchange(looks, 0);
    const double rough = root_between(f, 0.0, 2.0, {1e-14, 1e-3});
    CHECK(looks < all);
    CHECK_THAT(exact, WithinAbs(std::numbers::ln2, 1e-14));
    CHECK_THAT(rough, WithinAbs(std::numbers::ln2, 5e-4));
}

TEST_CASE("an end that is zero is the root, and ends of one sign give the one nearer to zero") {
    const auto f = [](double x) { return x * x; };
    CHECK(root_between(f, 0.0, 2.0, {1e-12}) == 0.0);
    CHECK(root_between(f, -2.0, 0.0, {1e-12}) == 0.0);
    CHECK(root_between(f, 1.0, 2.0, {1e-12}) == 1.0);
    CHECK(root_between(f, -3.0, -1.0, {1e-12}) == -1.0);
}

TEST_CASE("the last place where something holds lies on its own side, in either direction") {
    const auto holds = [](double x) { return x * x <= 2.0; };
    const double up = last_where(holds, 0.0, 4.0, 1e-9);
    CHECK(holds(up));
    CHECK_THAT(up, WithinAbs(std::numbers::sqrt2, 1e-9));
    const double down = last_where(holds, 0.0, -4.0, 0.0); // down to neighbours in floating point
    CHECK(holds(down));
    CHECK_FALSE(holds(std::nextafter(down, -4.0)));
}

TEST_CASE("a valley's bottom is found where it is round and where it has a kink") {
    CHECK_THAT(least_between([](double x) { return (x - 0.3) * (x - 0.3); }, -1.0, 2.0, 40, 0.0),
               WithinAbs(0.3, 1e-5));
    CHECK_THAT(least_between([](double x) { return std::abs(x - 0.3); }, 2.0, -1.0, 40, 0.0),
               WithinAbs(0.3, 1e-5));
}
