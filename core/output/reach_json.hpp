#pragma once

#include "reach/family.hpp"
#include "reach/reach_map.hpp"
#include "reach/ways.hpp"

#include <string>

namespace evenfall::output {

/// Ways out and the map: met, before (figures), shortfalls[], ways[] (change, kinds[], cost, figures,
/// also[]), map (border[] of points, asked, inside, nearest). Figures: mass_g, in_water_g, fall_mm_s (down
/// positive), pitch_deg, bg_mm, chance_percent. A point: in_water_g, fall_mm_s, pitch_deg. Written as in
/// answers_json.hpp.
[[nodiscard]] std::string reach_json(const reach::Ways& ways, const reach::ReachMap& map,
                                     const units::UnitSet& units = units::metric);

/// A family: members[] with fall ("floats", "suspends", "slow", "fast"), met, fill_g, figures, shortfalls[].
[[nodiscard]] std::string family_json(const std::vector<reach::Member>& members,
                                      const units::UnitSet& units = units::metric);

} // namespace evenfall::output
