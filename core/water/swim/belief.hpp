#pragma once

// What came of the draws, what it tells of beats per metre, and what a count of beats in water teaches.

#include <optional>
#include <vector>

namespace evenfall::swim {

/// What becomes of it.
enum class Way {
    swims,             ///< beats evenly, from whatever start
    swims_once_jerked, ///< beats once its joints were bent; left alone it leans or runs straight
    leans,             ///< stays bent to one side
    straight,          ///< runs without a beat
    irregular,         ///< to and fro without an even beat
    glides,            ///< two segments that go wide from side to side: glides, not beats
};

/// What came of one set of assumptions.
struct Draw {
    Way way = Way::straight;
    double beats_per_m = 0.0;  ///< 0 where it does not beat
    double tail_swing_m = 0.0; ///< half of the tail's way from side to side
};
/// In the order of the assumptions, which are the same for every lure.
using Draws = std::vector<Draw>;

/// One in ten, the middle and nine in ten of what may be, per metre of travel.
struct Beats {
    double low = 0.0;
    double mid = 0.0;
    double high = 0.0;
};

/// The model's own error: ln of the beats in water over those worked out, normal.
struct ModelError {
    double mean = 0.0;
    double sigma = 0.16; ///< from seven runs in water in three dimensions (own)
};

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
