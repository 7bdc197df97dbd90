#pragma once

#include "bench/lead/candidates.hpp"

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

/// The problem to solve; `base` is the lure without the candidates' own wood, fill and caps.
struct LeadProblem {
    const ledger::LedgerInputs* inputs = nullptr;
    ledger::Sum base;
    std::vector<Candidate> candidates;
    LeadTarget aim;
};

/// Sum of the finished lure with a filling.
[[nodiscard]] ledger::Sum total(const LeadProblem& task, const Filling& filling);

/// Fills the holes so that both targets are met. Where many fillings do, lead is placed low and forward: the
/// cost of a fill is its mass times its height above the lowest mouth, with a weight that rises towards the
/// tail. Where none does, the weight in water comes first and the pitch as near as the holes allow. Holes
/// that would take less than a worthwhile fill are not drilled.
[[nodiscard]] Filling solve(const LeadProblem& task);

/// Shortest fill worth a hole.
inline constexpr double least_fill_length_m = 0.001;

} // namespace evenfall::lead
