#pragma once

// Lead plan: targets for the finished lure → fills of its holes.

#include "answers/answers.hpp"

#include <string>
#include <vector>

namespace evenfall {

/// One hole in the plan.
struct HolePlan {
    int hole = 0; ///< index into document.holes
    std::string material;
    double mass_kg = 0.0;
    double column_m = 0.0; ///< length of the fill in the hole
    double depth_m = 0.0;  ///< depth to drill; 0 = do not drill
};

/// Lead for the targets, or as near as the holes allow.
struct LeadPlan {
    bool met = false;
    document::Document
        document; ///< the input with its holes filled; equal to the input where no plan was possible
    std::vector<HolePlan> holes; ///< the holes that the plan may use, in document order
    Answers before;
    Answers after;
    Problems shortfalls; ///< when not met: the limits that prevent it, and by how much
};

/// Targets → fills. Changes only holes with use ballast or drilled. Fails where the document does not
/// evaluate.
[[nodiscard]] Outcome<LeadPlan> plan_lead(const document::Document& document);

} // namespace evenfall
