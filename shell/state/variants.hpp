#pragma once

// Two lures side by side: what the core says of each. Pure.

#include "evenfall.hpp"

#include <vector>

namespace evenfall::shell::state {

/// A lure worked through, with what its readings taught.
struct Variant {
    document::Document document;
    Evaluation evaluation;
    double chance = 0.0;         ///< of a right first fall and hang, 0 to 1
    std::vector<double> fill_kg; ///< what lies in each hole; 0 where it is empty
};

/// Refuses what the core refuses.
[[nodiscard]] Outcome<Variant> variant_of(const document::Document& document);

} // namespace evenfall::shell::state
