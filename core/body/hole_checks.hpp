#pragma once

#include "base/problem.hpp"
#include "body/bore.hpp"

#include <utility>
#include <vector>

namespace evenfall::holes {

/// What keeps a hole from going deeper.
enum class DepthStop {
    bit,       ///< the builder's own depth limit
    far_wall,  ///< the skin on the other side
    side_wall, ///< the skin beside it, where the section narrows
    pocket,    ///< a pocket in its way
    hole,      ///< another hole in its way
};

struct DepthLimit {
    double depth_m = 0.0; ///< deepest shoulder allowed; 0 where the hole is too wide for the wood at all
    DepthStop stop = DepthStop::bit;
};

/// The deepest this hole may go where it stands, by its own limit and its wall to back, sides and point.
[[nodiscard]] DepthLimit depth_limit(const document::Hole& hole, const Bore& bore, const shape::Body& body);

/// The same with a wall to every pocket in its way and to every other hole that is drilled. Those of
/// `planned`, holes that a plan is free to drill as well, count with the depth given there and not with their
/// own: each (hole, depth).
[[nodiscard]] DepthLimit free_depth(const document::Document& document, std::size_t index,
                                    const shape::Body& body, const std::vector<Bore>& bores,
                                    const std::vector<std::pair<std::size_t, double>>& planned);

/// Refuses holes and pockets that cannot be: out of their segment, through a wall, overlapping, fill longer
/// than the room for it. A hole with use = fixed may be thinner-walled than asked (it is there already) but
/// not come out.
[[nodiscard]] Problems check(const document::Document& document, const shape::Body& body,
                             const std::vector<Bore>& bores);

} // namespace evenfall::holes
