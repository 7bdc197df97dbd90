#pragma once

#include "bench/lead/candidates.hpp"

#include <vector>

namespace evenfall::lead {

/// What the finished lure must come to.
struct Aim {
    double water_kg_m3 = 0.0;
    double in_water_kg = 0.0;
    double pitch_rad = 0.0;
};

/// Columns for every candidate.
struct Filling {
    std::vector<double> column_m;
    std::vector<bool> used;
};

/// The task without any candidate's own wood, fill or cap.
struct Task {
    const ledger::LedgerInputs* inputs = nullptr;
    ledger::Sum base;
    std::vector<Candidate> candidates;
    Aim aim;
};

/// Finished sum of a filling.
[[nodiscard]] ledger::Sum total(const Task& task, const Filling& filling);

/// Fills the holes so that both aims are met. Where many fillings do, lead lies low and forward: the cost of
/// a column is its mass times its height over the lowest mouth, weighted up towards the tail. Where none
/// does, the in-water aim comes first and the pitch as near as the holes let it. Holes that would take less
/// than a worthwhile column are left undrilled.
[[nodiscard]] Filling solve(const Task& task);

/// Shortest column worth a hole.
inline constexpr double worthwhile_column_m = 0.001;

} // namespace evenfall::lead
