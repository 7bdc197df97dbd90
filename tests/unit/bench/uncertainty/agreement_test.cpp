// Whether a whole log agrees with what was believed before it.

#include "bench/uncertainty/uncertainty.hpp"
#include "unit/bench/uncertainty/bench_readings.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>

using namespace evenfall;
using namespace evenfall::support;
using Catch::Matchers::WithinAbs;
using document::ReadingKind;

TEST_CASE("chi-square above its tabled value has the tabled chance (NIST/SEMATECH e-Handbook, table "
          "1.3.6.7.4, upper critical values; from memory)") {
    for (const auto& [readings, one, five] : {std::tuple{1, 6.635, 3.841},
                                              {2, 9.210, 5.991},
                                              {3, 11.345, 7.815},
                                              {5, 15.086, 11.070},
                                              {10, 23.209, 18.307},
                                              {20, 37.566, 31.410},
                                              {100, 135.807, 124.342}}) {
        INFO(readings);
        CHECK_THAT(chi_square_above(one, readings), WithinAbs(0.01, 1e-5));
        CHECK_THAT(chi_square_above(five, readings), WithinAbs(0.05, 2e-5));
    }
    CHECK(chi_square_above(0.0, 3) == 1.0);
    CHECK(chi_square_above(1e9, 200) == 0.0);
    CHECK(chi_square_above(5.0, 0) == 1.0);
}

TEST_CASE("a log as foretold agrees, and one of readings all far off together does not") {
    const auto none = uncertainty(millrace());
    REQUIRE(none);
    CHECK(none->agreement.readings == 0);
    CHECK(none->agreement.warning.empty());
    const StagePrediction& carved = none->stages[0];
    const StagePrediction& leaded = none->stages[static_cast<std::size_t>(Stage::leaded)];
    const auto as_foretold = uncertainty(with({held(Stage::leaded, 1e3 * leaded.displaced_kg.value),
                                               held(Stage::carved, 1e3 * carved.displaced_kg.value)}));
    REQUIRE(as_foretold);
    CHECK(as_foretold->agreement.readings == 2);
    CHECK_THAT(as_foretold->agreement.chi_square, WithinAbs(0.0, 1e-9));
    CHECK(as_foretold->agreement.warning.empty());
    // One reading alone, so many standard deviations off: chi-square is their square.
    const double sigma_kg = std::hypot(carved.displaced_kg.sigma, 0.0001);
    const auto off =
        uncertainty(with({held(Stage::carved, 1e3 * (carved.displaced_kg.value + 3.0 * sigma_kg))}));
    REQUIRE(off);
    CHECK_THAT(off->agreement.chi_square, WithinAbs(9.0, 0.4)); // to the curvature of products
    CHECK_THAT(off->agreement.chance, WithinAbs(0.0027, 0.0007));
    CHECK_FALSE(off->agreement.warning.empty());
}
