#pragma once

// Two designs by the same assumptions, and what a count of beats teaches.

#include "water/swim/swim.hpp"

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

/// What is held of a lure: how likely each of its draws is, and the model's error in it.
struct Belief {
    std::vector<double> weight;     ///< by draw; 0 where it does not beat
    std::vector<double> error_mean; ///< by draw
    double error_sigma = 0.0;
};
/// Before a count.
[[nodiscard]] Belief belief_of(const Draws& draws, const ModelError& error = {});
/// After a count of beats per metre > 0, with this standard deviation of its ln.
[[nodiscard]] Belief learnt(const Belief& before, const Draws& draws, double counted_per_m, double sigma_ln);
/// Absent where it beats in no draw.
[[nodiscard]] std::optional<Beats> beats_per_m(const Draws& draws, const Belief& belief);
/// What is kept with the lure, as the model's error; after_a_change() where the design has changed since.
[[nodiscard]] ModelError error_of(const Belief& belief);
[[nodiscard]] ModelError after_a_change(const ModelError& error);

} // namespace evenfall::swim
