#pragma once

#include "base/outcome.hpp"
#include "reach/goal.hpp"

#include <vector>

namespace evenfall::reach {

/// A finished lure on the map. Fall rises with the weight in water, so that either may be the picture's axis.
struct MapPoint {
    double in_water_kg = 0.0;
    std::optional<double> fall_m_s; ///< absent where it does not sink steadily
    double pitch_rad = 0.0;         ///< hang
};

/// What weight in water (fall) and hang today's shape and holes can meet with lead alone.
struct ReachMap {
    /// Closed line round what is reachable: from the least weight along the nose-up side to the greatest, and
    /// back along the nose-down side. Empty where no hole may be filled, or the lure always rolls over.
    std::vector<MapPoint> border;
    MapPoint asked;
    bool inside = false; ///< lead alone meets what is asked
    MapPoint nearest;    ///< the lead plan's own: what is asked, or what comes nearest to it by the bands
};

/// Each border point is a filling of the holes that the plan may fill: at a given weight, what hangs the most
/// nose-up or nose-down has at most one hole neither empty nor full. Refuses what evaluate() refuses.
[[nodiscard]] Outcome<ReachMap> reach_map(const document::Document& document, const Goal& goal);

} // namespace evenfall::reach
