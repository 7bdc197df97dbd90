#pragma once

#include "bench/lead/candidates.hpp"

#include <array>
#include <functional>
#include <optional>
#include <vector>

namespace evenfall::lead {

/// Targets for the finished lure.
struct LeadTarget {
    double water_kg_m3 = 0.0;
    double in_water_kg = 0.0;
    double pitch_rad = 0.0;
};

/// Fill length for every candidate.
struct Filling {
    std::vector<double> column_m;
    std::vector<bool> used;
};

/// Misses of weight (or fall) and hang, each in units of its band; too much and nose-up positive.
using BandMisses = std::array<double, 2>;

/// The misses of the finished lure by its sum.
struct MissLaw {
    using At = std::function<BandMisses(const ledger::Sum&)>;
    At at;
    /// For slopes at a sum: the same close to it, by the tangent of its fall where it has one.
    std::function<At(const ledger::Sum&)> near;
};

/// The problem to solve; `base` is the lure without the candidates' own wood, fill and caps.
struct LeadProblem {
    const ledger::LedgerInputs* inputs = nullptr;
    ledger::Sum base;
    std::vector<Candidate> candidates;
    std::vector<HoleSums> sums; ///< of each candidate
    LeadTarget aim;
    MissLaw misses;
    std::optional<std::size_t> first; ///< which of the two misses comes first; counts a thousand times

    void add(Candidate candidate);
};

/// A gram-centimetre of moment counts as much as a gram.
inline constexpr double moment_scale_m = 0.010;

/// What a lure is off the aim: weight in water [kg] (too heavy positive), and moment over moment_scale_m [kg]
/// (nose too low positive).
[[nodiscard]] std::array<double, 2> residual(const LeadTarget& aim, const ledger::Sum& sum);

/// Sum of the finished lure with a filling.
[[nodiscard]] ledger::Sum total(const LeadProblem& task, const Filling& filling);

/// The sets of holes that the plan tries, in this order, each foremost first. Every hole costs its cap and
/// its wood even when almost empty: where all of them together are too much, the rearmost are left out first;
/// then come each single hole and each pair.
[[nodiscard]] std::vector<std::vector<std::size_t>> hole_sets(const LeadProblem& task);

/// Fills the holes so that the aim is met, or nothing where no set of holes is found that does. Where many
/// fillings do, lead is placed low and forward: the cost of a fill is its mass times its height above the
/// lowest mouth, with a weight that rises towards the tail. Holes that would take less than a worthwhile fill
/// are not drilled.
[[nodiscard]] std::optional<Filling> solve(const LeadProblem& task);

/// Sum of squares of both misses, what comes first counted a thousand times.
[[nodiscard]] double squares_of(BandMisses off, std::optional<std::size_t> first);

/// The filling with the least sum of squares of both misses; every fill is worth its hole.
[[nodiscard]] Filling nearest_filling(const LeadProblem& task);

/// Shortest fill worth a hole.
inline constexpr double least_fill_length_m = 0.001;

} // namespace evenfall::lead
