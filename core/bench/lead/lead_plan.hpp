#pragma once

// Lead plan: targets for the finished lure → fills of its holes.

#include "answers/answers.hpp"

#include <optional>
#include <string>
#include <vector>

namespace evenfall {

/// The limit at which a hole's fill stands.
enum class HoleLimit { none, empty, least, full };

/// One hole in the plan.
struct HolePlan {
    int hole = 0; ///< index into document.holes
    std::string material;
    double mass_kg = 0.0;
    double column_m = 0.0; ///< length of the fill in the hole
    double depth_m = 0.0;  ///< depth to drill; 0 = do not drill
    HoleLimit limit = HoleLimit::none;
};

/// What is missing to one target: too fast, too heavy and nose too high are positive.
struct TargetMiss {
    double by = 0.0;    ///< m/s, kg or rad
    double bands = 0.0; ///< in units of the target's band
};

/// Lead for the targets, or as near as the holes allow: the sum of squares of both misses, in units of their
/// bands, is the least.
struct LeadPlan {
    bool met = false;
    document::Document
        document; ///< the input with its holes filled; equal to the input where no plan was possible
    std::vector<HolePlan> holes; ///< the holes that the plan may use, in document order
    Answers before;
    Answers after;
    Problems shortfalls;              ///< when not met: both misses, and the limits that prevent it
    double asked_in_water_kg = 0.0;   ///< or what the asked fall needs, with the lead as it is planned
    std::optional<TargetMiss> fall;   ///< where a fall is asked for and the lure has one
    std::optional<TargetMiss> weight; ///< where a weight in water is asked for
    std::optional<TargetMiss> hang;   ///< absent where G is not below B
};

/// Targets → fills. Changes only holes with use ballast or drilled. Fails where the document does not
/// evaluate. `before`: as of evaluate().
[[nodiscard]] Outcome<LeadPlan> plan_lead(const document::Document& document, const Kept* before = nullptr);

} // namespace evenfall
