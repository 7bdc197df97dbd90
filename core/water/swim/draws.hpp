#pragma once

// What came of the draws, and what it tells of beats per metre.

#include "base/trade.hpp"
#include "water/swim/chain.hpp"

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

/// How far joints may swing to either side for the model to be as good as it was found to be, and to be
/// asked at all. It was compared in water in three dimensions with stops of 10° and 20° alone (own runs); up
/// to 35° is what it was made for. Usual lures open by 40° to 50°, and the equations hold there as well, so
/// that they are answered, with a wider band and a word of caution.
inline constexpr double usual_swing_rad = 35.0 * units::degree_rad;
inline constexpr double most_swing_rad = 55.0 * units::degree_rad;

/// The widest swing of any joint to either side.
[[nodiscard]] double widest_swing_rad(const Chain& chain);

/// The model's own error: standard deviation of the ln of beats in water over those worked out. 0.16 from
/// seven runs in water in three dimensions (own); beyond usual_swing_rad it grows to 0.30 at most_swing_rad,
/// in proportion (own estimate, nothing was compared there).
[[nodiscard]] double model_sigma_ln(double widest_swing_rad);

/// The band of the draws that beat, each with a normal error of its ln; absent where none beats.
[[nodiscard]] std::optional<Beats> beats_per_m(const Draws& draws, double sigma_ln);

} // namespace evenfall::swim
