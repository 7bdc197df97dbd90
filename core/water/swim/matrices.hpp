#pragma once

// The water that a chain moves with it, and the water that it sheds.

#include "water/swim/chain.hpp"
#include "water/swim/closures.hpp"

#include <array>

namespace evenfall::swim {

/// Over the motions z of a chain of n segments: the speeds across W of their fore hinges, then their turning
/// speeds: entries beyond 2n are 0.
using Matrix = std::array<std::array<double, 2 * most_segments>, 2 * most_segments>;

/// How far water is moved by what goes on beside it. Slice by slice, a body as high as its joints are close
/// would move too much of it: a slice feels its own motion by `own`, the rest is the mean of the motions
/// around it, fading within `reach` of its height. Fitted to the exact share of a thin strip with a wave
/// along it (own boundary integral): squared, within 6 % of it down to waves of 1.6 heights. own = 1: slice
/// by slice.
struct Nearness {
    double own = 0.4;
    double reach = 0.27;
};

struct Matrices {
    Matrix added{}; ///< ½ zᵀ·added·z is the water's energy
    /// By the segment where it is shed: a chain that moves along at u loses ½·u·zᵀ·shed·z of it [per s].
    std::array<Matrix, most_segments> shed{};
};

/// Where added mass falls towards the tail, its momentum is given back but for a share (Païdoussis' tail
/// factor, spread over the taper): within a segment, at a joint, where a fin begins, at the last edge.
[[nodiscard]] Matrices matrices_of(const Chain& chain, const Closures& closures,
                                   const Nearness& nearness = {});

} // namespace evenfall::swim
