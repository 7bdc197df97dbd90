#pragma once

#include "base/problem.hpp"
#include "body/bore.hpp"
#include "body/keep_out.hpp"

#include <utility>
#include <vector>

namespace evenfall::holes {

/// What limits the depth of a hole.
enum class DepthStop {
    bit,       ///< the builder's own depth limit
    far_wall,  ///< the skin on the far side
    side_wall, ///< the skin beside it, where the section narrows
    built_in,  ///< a pocket, hinge wire, pin, hanger or part in its way
    hole,      ///< another hole in its way
};

struct DepthLimit {
    double depth_m =
        0.0; ///< greatest depth allowed, drill point not counted; 0 where the hole is too wide for the wood
    DepthStop stop = DepthStop::bit;
    std::string built_in{}; ///< what is in its way, as built_in_text() names it
};

/// Greatest depth of this hole at its position, by its own limit and its wall at far side, sides and drill
/// point.
[[nodiscard]] DepthLimit depth_limit(const document::Hole& hole, const Bore& bore, const shape::Body& body);

/// The same, with a wall to everything built in (keep_out.hpp) and to every other drilled hole in its way:
/// the hole's own, or joints::thin_wall_m where that is more, and thin_wall_m beside it. Holes in `planned`
/// (pairs of hole and depth), which a plan may drill as well, count with the depth given there.
[[nodiscard]] DepthLimit free_depth(const document::Document& document, std::size_t index,
                                    const shape::Body& body, const std::vector<Bore>& bores,
                                    const std::vector<std::pair<std::size_t, double>>& planned);

/// True where this hole, drilled as deep as it says, comes nearer to something built in than `wall_m`.
[[nodiscard]] bool comes_near(const document::Hole& hole, const Bore& bore, const fittings::KeepOut& zone,
                              double wall_m);

/// Where the holes as drilled run into wire, hangers or parts, or leave less than joints::thin_wall_m to
/// them: remarks. Pins and pockets are judged with their joint. A plugged hole is wood again.
[[nodiscard]] Problems built_in_warnings(const document::Document& document, const shape::Body& body,
                                         const std::vector<Bore>& bores);

/// Refuses holes and pockets that are impossible: outside their segment, through a wall, overlapping, or with
/// a fill longer than the hole. A hole with use = fixed already exists, so its wall may be thinner than
/// asked, but it must not come out through the skin. Holes before `first` are known to be possible: only
/// what later ones do to them is asked.
[[nodiscard]] Problems check(const document::Document& document, const shape::Body& body,
                             const std::vector<Bore>& bores, std::size_t first = 0);

} // namespace evenfall::holes
