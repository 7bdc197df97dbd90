#pragma once

#include "base/outcome.hpp"
#include "bench/lead/lead_plan.hpp"
#include "reach/goal.hpp"
#include "starter/new_lure.hpp"

#include <array>

namespace evenfall::reach {

/// One body with another lead.
struct Member {
    starter::WantedFall fall = starter::WantedFall::floats; ///< floats, suspends, slow or fast
    LeadPlan plan;                                          ///< plan.met, else as near as the holes allow
    Figures figures;                                        ///< of the planned lure, with the chance
};

/// One recipe as floater, suspender, slow and fast sinker: body, holes, hooks and coats the same, four lead
/// plans. The hang asked is the document's own. Holes that are leaded count as drilled. Refuses what
/// evaluate() refuses.
[[nodiscard]] Outcome<std::array<Member, 4>> family(const document::Document& document);

} // namespace evenfall::reach
