#pragma once

// The inverse of an evaluation: what is asked of the finished lure → fills of its holes.

#include "answers/answers.hpp"

#include <string>
#include <vector>

namespace evenfall {

/// One hole as the plan leaves it.
struct HolePlan {
    int hole = 0; ///< index into document.holes
    std::string material;
    double mass_kg = 0.0;
    double column_m = 0.0; ///< length of the fill in the hole
    double depth_m = 0.0;  ///< to drill; 0 = leave the wood whole
};

/// Lead for the targets, or as near as the holes allow.
struct LeadPlan {
    bool met = false;
    document::Document
        document; ///< the input with holes filled; equal to the input where nothing could be planned
    std::vector<HolePlan> holes; ///< the holes the plan may use, in document order
    Answers before;
    Answers after;
    Problems shortfalls; ///< when not met: which limit stops it and by how much
};

/// The inverse: targets → fills. Only holes with use ballast or drilled are touched.
[[nodiscard]] Outcome<LeadPlan> plan_lead(const document::Document& document);

} // namespace evenfall
