#pragma once

#include "base/problem.hpp"
#include "holes/bore.hpp"

#include <vector>

namespace evenfall::holes {

/// What keeps a hole from going deeper.
enum class DepthStop {
    bit,        ///< the builder's own depth limit
    far_wall,   ///< the skin on the other side
    side_wall,  ///< the skin beside it, where the section narrows
};

struct DepthLimit {
    double depth_m = 0.0;  ///< deepest shoulder allowed; 0 where the hole is too wide for the wood at all
    DepthStop stop = DepthStop::bit;
};

/// The deepest this hole may go where it stands, by its own limit and its wall to back, sides and point.
[[nodiscard]] DepthLimit depth_limit(const preset::Hole& hole, const Bore& bore, const shape::Body& body);

/// Refuses holes and pockets that cannot be: out of their segment, through a wall, overlapping, fill longer than the
/// room for it. A hole with use = fixed may be thinner-walled than asked (it is there already) but not come out.
[[nodiscard]] Problems check(const preset::Document& document, const shape::Body& body, const std::vector<Bore>& bores);

}  // namespace evenfall::holes
