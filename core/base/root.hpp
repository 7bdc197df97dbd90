#pragma once

// Roots and minima of functions of one variable; roots by Boost.Math.

#include <algorithm>
#include <boost/math/policies/policy.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstdint>
#include <limits>
#include <numbers>

namespace evenfall {

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

/// Where to stop looking for a root.
struct RootLimits {
    double x = 0.0; ///< a bracket narrower than this, or than rounding
    double f = 0.0; ///< values of the function smaller than this count as zero
};

/// Where `f` is zero between `from` and `to`, in either order, where it is `at_from` and `at_to` (TOMS 748:
/// Alefeld, Potra and Shi 1995, by Boost). Ends of the same sign: the one that is nearer to zero.
template <class F>
[[nodiscard]] double root_between(const F& f, double from, double to, double at_from, double at_to,
                                  RootLimits limits) {
    if ((at_from > 0.0) == (at_to > 0.0)) return std::abs(at_from) < std::abs(at_to) ? from : to;
    if (from > to) return root_between(f, to, from, at_to, at_from, limits);
    const auto value = [&](double x) {
        const double at_x = f(x);
        return std::abs(at_x) < limits.f ? 0.0 : at_x;
    };
    const auto is_close = [&](double a, double b) {
        constexpr double rounding = 4.0 * std::numeric_limits<double>::epsilon();
        return b - a < limits.x || b - a <= rounding * std::min(std::abs(a), std::abs(b));
    };
    std::uintmax_t tries = 300;
    const auto [low, high] =
        boost::math::tools::toms748_solve(value, from, to, at_from, at_to, is_close, tries, QuietDoubles());
    return 0.5 * (low + high);
}

/// The same where the ends' values are not at hand.
template <class F>
[[nodiscard]] double root_between(const F& f, double from, double to, RootLimits limits) {
    return root_between(f, from, to, f(from), f(to), limits);
}

/// The last place from `from`, where `holds` is true, on the way to `to`, where it is not: within `close`,
/// and on the true side of the change. By bisection.
template <class Predicate>
[[nodiscard]] double last_where(const Predicate& holds, double from, double to, double close) {
    while (std::abs(to - from) > close) {
        const double middle = 0.5 * (from + to);
        if (middle == from || middle == to) break; // neighbouring floating-point numbers
        (holds(middle) ? from : to) = middle;
    }
    return from;
}

/// Where `f` is least between `from` and `to`, of one valley between them: golden section (Kiefer 1953), the
/// stretch narrowed `narrowings` times by 0.618. Values within `same` count as equal: rounding must not
/// decide which way the search goes, or page and native program end in different places. (Boost's Brent has
/// no such allowance.)
template <class F>
double least_between(const F& f, double from, double to, int narrowings, double same) {
    constexpr double golden = std::numbers::phi - 1.0;
    double low = to - golden * (to - from);
    double high = from + golden * (to - from);
    double at_low = f(low);
    double at_high = f(high);
    for (int k = 0; k < narrowings; ++k) {
        if (at_low <= at_high + same) {
            to = high;
            high = low;
            at_high = at_low;
            low = to - golden * (to - from);
            at_low = f(low);
        } else {
            from = low;
            low = high;
            at_low = at_high;
            high = from + golden * (to - from);
            at_high = f(high);
        }
    }
    return 0.5 * (from + to);
}

} // namespace evenfall
