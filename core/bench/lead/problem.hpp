#pragma once

#include "bench/lead/lead_plan.hpp"
#include "bench/lead/solve.hpp"

namespace evenfall::lead {

/// The lure without its candidates, and what it is to come to: a speed of fall as the weight in water of the
/// level fall without parts, a first guess. `inputs` has to outlive it.
[[nodiscard]] LeadProblem problem_of(const ledger::Ledger& ledger, const ledger::LedgerInputs& inputs,
                                     const materials::WaterProperties& water);

/// The plan of plan_lead() where it is met; else nothing, sooner than the nearest would be found. `guess_kg`:
/// of the weight in water that it will come to.
[[nodiscard]] std::optional<LeadPlan> met_plan(const document::Document& document, double guess_kg);

} // namespace evenfall::lead
