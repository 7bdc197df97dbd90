#pragma once

#include "base/outcome.hpp"
#include "bench/lead/lead_plan.hpp"
#include "reach/goal.hpp"
#include "starter/new_lure.hpp"

#include <array>
#include <vector>

namespace evenfall::reach {

/// One body with another lead.
struct Member {
    starter::WantedFall fall = starter::WantedFall::floats; ///< floats, suspends, slow or fast
    LeadPlan plan;                                          ///< plan.met, else as near as the holes allow
    Figures figures;                                        ///< of the planned lure, with the chance
};

/// The falls that one body is led for.
inline constexpr std::array family_falls{starter::WantedFall::floats, starter::WantedFall::suspends,
                                         starter::WantedFall::slow, starter::WantedFall::fast};

/// The recipe led for one fall: body, holes, hooks and coats as they are. The hang asked is the document's
/// own. Holes that are leaded count as drilled. Refuses what evaluate() refuses.
[[nodiscard]] Outcome<Member> family_member(const document::Document& document, starter::WantedFall fall);

/// All of family_falls, in their order.
[[nodiscard]] Outcome<std::vector<Member>> family(const document::Document& document);

} // namespace evenfall::reach
