#pragma once

#include "answers/answers.hpp"
#include "bench/lead/solve.hpp"

namespace evenfall::lead {

/// The lure without its candidates, and what it is to come to: a speed of fall as the weight in water of the
/// level fall without parts, a first guess. `inputs` has to outlive it.
[[nodiscard]] LeadProblem problem_of(const Evaluation& lure, const ledger::LedgerInputs& inputs,
                                     const materials::WaterProperties& water);

} // namespace evenfall::lead
