#pragma once

// The speeds at which a lure is pulled, and how they are told: in metres or feet a second, in kilometres or
// miles an hour, or by turns of the reel's handle. Pure.

#include <array>

namespace evenfall::shell::state {

/// Slow, usual and fast (common practice, no source).
inline constexpr std::array<double, 3> usual_retrieves_m_s{0.3, 0.5, 1.0};
inline constexpr double least_retrieve_m_s = 0.02;
inline constexpr double most_retrieve_m_s = 5.0;
inline constexpr double least_line_per_turn_m = 0.1;
inline constexpr double most_line_per_turn_m = 3.0;

enum class RetrieveBy { second, hour, turns };

/// A reel, a hand, and three speeds. Of this device, as the reel is of the angler and not of the lure.
struct Retrieve {
    RetrieveBy by = RetrieveBy::second;
    std::array<double, 3> speed_m_s = usual_retrieves_m_s;
    double line_per_turn_m = 0.7; ///< of a middling reel (common practice, no source)

    bool operator==(const Retrieve&) const = default;
};

} // namespace evenfall::shell::state
