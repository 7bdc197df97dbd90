#pragma once

#include <boost/math/policies/policy.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstdint>

namespace evenfall::fall {

/// Boost.Math policy: plain doubles, so that native and page take the same steps; errors come back as NaN,
/// because exceptions would link C++'s locale code into the page.
using QuietDoubles = boost::math::policies::policy<
    boost::math::policies::promote_double<false>,
    boost::math::policies::domain_error<boost::math::policies::ignore_error>,
    boost::math::policies::pole_error<boost::math::policies::ignore_error>,
    boost::math::policies::overflow_error<boost::math::policies::ignore_error>,
    boost::math::policies::underflow_error<boost::math::policies::ignore_error>,
    boost::math::policies::denorm_error<boost::math::policies::ignore_error>,
    boost::math::policies::rounding_error<boost::math::policies::ignore_error>,
    boost::math::policies::evaluation_error<boost::math::policies::ignore_error>,
    boost::math::policies::indeterminate_result_error<boost::math::policies::ignore_error>>;

/// Root of `f` between `from` < `to`. `at_from` and `at_to` are the values of `f` there: of opposite sign,
/// neither 0. Accurate to `close` (TOMS 748: Alefeld, Potra and Shi 1995, by Boost).
template <class F>
double bracketed_root(F f, double from, double to, double at_from, double at_to, double close) {
    std::uintmax_t tries = 60;
    const auto [low, high] = boost::math::tools::toms748_solve(
        f, from, to, at_from, at_to, [close](double a, double b) { return std::abs(b - a) < close; }, tries,
        QuietDoubles());
    return 0.5 * (low + high);
}

} // namespace evenfall::fall
