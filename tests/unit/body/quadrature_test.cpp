#include "base/quadrature.hpp"

#include <boost/math/quadrature/gauss.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>

using namespace evenfall;
using Catch::Matchers::WithinAbs;

namespace {

/// Boost keeps the non-negative half of the nodes on [−1, 1].
template <std::size_t N>
void check_against_boost() {
    using Reference = boost::math::quadrature::gauss<double, static_cast<unsigned>(N)>;
    const auto& node = Reference::abscissa();
    const auto& weight = Reference::weights();
    for (std::size_t k = 0; k < node.size(); ++k) {
        const std::size_t upper = N / 2 + k;
        CHECK_THAT(gauss_rule<N>.node[upper], WithinAbs(0.5 + 0.5 * node[k], 2e-16));
        CHECK_THAT(gauss_rule<N>.weight[upper], WithinAbs(0.5 * weight[k], 1e-15));
        CHECK_THAT(gauss_rule<N>.node[N - 1 - upper], WithinAbs(0.5 - 0.5 * node[k], 2e-16));
        CHECK_THAT(gauss_rule<N>.weight[N - 1 - upper], WithinAbs(0.5 * weight[k], 1e-15));
    }
}

} // namespace

TEST_CASE("Gauss rules made by the compiler are those of Boost.Math", "[base]") {
    check_against_boost<2>();
    check_against_boost<3>();
    check_against_boost<5>();
    check_against_boost<6>();
    check_against_boost<7>();
    check_against_boost<10>();
}

TEST_CASE("a soft interval runs from end to end and tames a square root at either", "[base]") {
    for (const bool from : {false, true}) {
        for (const bool to : {false, true}) {
            const SoftInterval interval{2.0, 5.0, from, to};
            CHECK(interval.at(0.0) == 2.0);
            CHECK(interval.at(1.0) == 5.0);
            CHECK_THAT((interval.at(0.3 + 1e-6) - interval.at(0.3 - 1e-6)) / 2e-6,
                       WithinAbs(interval.stretch(0.3), 1e-8));
        }
    }
    const SoftInterval both{0.0, 1.0, true, true};
    double sum = 0.0;
    for (std::size_t k = 0; k < 10; ++k) {
        const double s = gauss_rule<10>.node[k];
        sum += gauss_rule<10>.weight[k] * both.stretch(s) * std::sqrt(both.at(s) * (1.0 - both.at(s)));
    }
    CHECK_THAT(sum, WithinAbs(3.14159265358979 / 8.0,
                              1e-6)); // half disc of radius ½; a plain rule of ten misses by 1e-4
}
