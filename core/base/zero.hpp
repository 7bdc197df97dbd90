#pragma once

#include <cmath>

namespace evenfall {

/// One end of a bracket: the position and the function's value there.
struct BracketEnd {
    double x = 0.0;
    double f = 0.0;
};

/// Convergence limits: stops at whichever is met first.
struct ZeroLimits {
    double x = 0.0;  ///< width of the bracket
    double f = 0.0;  ///< absolute value of the function
    int rounds = 30; ///< maximum number of evaluations
};

/// The root of `f` between two ends of opposite sign, by false position with the Illinois correction (Dowell
/// and Jarratt 1971, BIT 11, 168–174). For expensive functions such as cutting a body by a plane: about six
/// evaluations where the bracket is small.
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
