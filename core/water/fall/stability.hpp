#pragma once

// Whether a steady fall comes back after a small disturbance.

#include "water/fall/motion.hpp"

#include <array>
#include <complex>
#include <span>

namespace evenfall::fall {

/// Rates of (along, across, pitching, pitch) by small disturbances of the same, row by column.
using DisturbanceRates = std::array<std::array<double, 4>, 4>;

/// The equations of motion (motion.hpp) linearised about a steady fall, in closed form.
///
///   sums     of the same lure, weights, water and factors
///   state    of the steady fall: no pitching, and a speed above zero
[[nodiscard]] DisturbanceRates disturbance_rates(const HydroBody& hull, const MassProperties& weights,
                                                 std::span<const DragItem> items,
                                                 const materials::WaterProperties& water,
                                                 const ModelFactors& closure, const SteadySums& sums,
                                                 const MotionState& state);

/// Whether every small disturbance decays: all eigenvalues have negative real parts (Routh 1877 and Hurwitz
/// 1895, for four), which their polynomial tells (Faddeev and LeVerrier) in a tenth of the time that they
/// take.
[[nodiscard]] bool decays(const DisturbanceRates& rates);

/// Eigenvalues [1/s], slowest decay (or fastest growth) first.
[[nodiscard]] std::array<std::complex<double>, 4> modes_of(const DisturbanceRates& rates);

} // namespace evenfall::fall
