#pragma once

#include <span>
#include <string_view>

namespace evenfall::materials {

/// A treble hook with its split ring.
struct Hook {
    std::string_view size; ///< as the trade counts: "6", "1/0"
    double mass_kg = 0.0;
    double reach_m = 0.0; ///< from the hanger's eye to the far side of the bend, ring included
};

/// Usual short-shank trebles with a ring to match, smallest first. All from memory, makers differ by a fifth:
/// weigh your own.
[[nodiscard]] std::span<const Hook> hooks();

} // namespace evenfall::materials
