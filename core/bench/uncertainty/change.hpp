#pragma once

// Lead taken out of holes, or laid into them, when the lead is in already.

#include "bench/lead/solve.hpp"
#include "ledger/build.hpp"
#include "ledger/fold.hpp"

#include <functional>
#include <optional>
#include <vector>

namespace evenfall::bench {

/// What one hole can still give or take [kg of fill].
struct HoleRange {
    std::size_t hole = 0;
    lead::Candidate candidate;
    double least_kg = 0.0; ///< all drilled out: ≤ 0
    double most_kg = 0.0;  ///< full up to the cap
    bool fresh = false;    ///< not drilled yet: anything in it is drilled, filled and capped anew
};
[[nodiscard]] std::vector<HoleRange> hole_ranges(const ledger::LedgerInputs& inputs);

/// The hole with its fill changed: drilled out from the mouth or laid on top, the void capped again.
[[nodiscard]] document::Hole changed_hole(const ledger::LedgerInputs& inputs, const HoleRange& range,
                                          double change_kg);

struct ChangeAim {
    double water_kg_m3 = 0.0;
    double in_water_kg = 0.0;
    double pitch_rad = 0.0;
    double pitch_slack_rad = 0.0; ///< off by less is right
    lead::MissLaw misses;
    std::optional<std::size_t> first; ///< of the two (LeadProblem::first)
};

/// Fill changes in as few holes as will do: one where the pitch then is right, else the two that move least
/// and meet both exactly, else more together. Where none do: the change that brings it nearest by the bands
/// (solve.hpp). Empty where no hole can change anything, or none brings it nearer.
struct Change {
    std::vector<std::pair<std::size_t, double>> by; ///< index into the ranges, kg
    bool weight_met = false;
    bool pitch_met = false;
    ledger::Sum sum; ///< of the finished lure
};
[[nodiscard]] Change solve_change(const ledger::LedgerInputs& inputs, const std::vector<HoleRange>& ranges,
                                  const ledger::Sum& finished, const ChangeAim& aim);

} // namespace evenfall::bench
