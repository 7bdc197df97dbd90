#pragma once

// Two designs by the same assumptions.

#include "water/swim/draws.hpp"

#include <array>

namespace evenfall::swim {

enum class Told {
    more,
    less,
    not_told, ///< no change that can be told
};

/// What a change does: ratios after over before, one in ten, the middle and nine in ten of the draws in which
/// both beat. Told where both ends lie on one side of 1 and the middle is off by more than 8 %.
struct Change {
    Told beats = Told::not_told;
    Told swing = Told::not_told; ///< of the tail from side to side
    std::array<double, 3> beats_ratio{1.0, 1.0, 1.0};
    std::array<double, 3> swing_ratio{1.0, 1.0, 1.0};
    int both_swim = 0; ///< draws that the ratios are of; told only where these are half of all
    int swims_before = 0;
    int swims_after = 0;
    int of = 0;
};
[[nodiscard]] Change compare(const Draws& before, const Draws& after);

} // namespace evenfall::swim
