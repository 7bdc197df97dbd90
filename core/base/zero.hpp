#pragma once

#include <cmath>

namespace evenfall {

/// An end of a bracket: where, and the function there.
struct BracketEnd {
    double x = 0.0;
    double f = 0.0;
};

/// When a zero is near enough.
struct ZeroLimits {
    double x = 0.0;  ///< width of the bracket
    double f = 0.0;  ///< size of the function
    int rounds = 30; ///< at most so many evaluations
};

/// The zero of `f` between two ends of differing sign, by false position with the Illinois correction (Dowell
/// and Jarratt 1971, BIT 11, 168–174). For functions that cost a cut of a hull: some six evaluations where
/// the bracket is small.
template <class Function>
[[nodiscard]] double zero_between(const Function& f, BracketEnd a, BracketEnd b, const ZeroLimits& limits) {
    for (int round = 0; round < limits.rounds && std::abs(b.x - a.x) > limits.x && a.f != b.f; ++round) {
        const double x = b.x - b.f * (b.x - a.x) / (b.f - a.f);
        const double fx = f(x);
        if ((fx > 0.0) != (b.f > 0.0)) {
            a = b;
        } else {
            a.f *= 0.5;
        }
        b = {x, fx};
        if (std::abs(fx) < limits.f) break;
    }
    return b.x;
}

} // namespace evenfall
