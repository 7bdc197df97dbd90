#pragma once

// What a way through the water looks like once it has settled.

#include "water/swim/draws.hpp"

#include <array>
#include <span>
#include <vector>

namespace evenfall::swim {

/// The chain at one moment of a run, at even times.
struct Sample {
    double y_m = 0.0;
    std::array<double, most_segments> heading_rad{};
};

struct Cycle {
    Way way = Way::straight;                       ///< swims, leans, straight or irregular
    double period_s = 0.0;                         ///< mean, where it swims
    double spread = 0.0;                           ///< standard deviation of the periods over their mean
    double head_rad = 0.0;                         ///< half ranges, of the first segment's heading
    double tail_rad = 0.0;                         ///< of the last one's
    double tail_m = 0.0;                           ///< of the tail's way to the side, without its drift
    double nose_m = 0.0;                           ///< of the line tie's
    std::array<double, most_segments> joint_rad{}; ///< of each joint, 0 the one behind the first segment
    std::array<bool, most_segments> at_stop{};     ///< it reached both
    std::array<double, most_segments> lag_rad{};   ///< of each segment behind the one before; 0 of the first
    double beat_from_s = 0.0;                      ///< the last whole beat of the samples begins
};

/// Half ranges leave out the outermost half of a hundredth on either side. Below 1° of the last heading, or
/// without two rises of it, there is no beat: it leans where a joint or the head stands off by more than 2°.
/// Beats are counted where the last heading rises through its middle, after it was below by 15 % of its half
/// range; they are even, and it swims, where their periods' standard deviation is below a fifth.
[[nodiscard]] Cycle cycle_of(const Chain& chain, std::span<const Sample> samples, double every_s);

} // namespace evenfall::swim
