#pragma once

#include "answers/answers.hpp"
#include "ledger/fold.hpp"

namespace evenfall::tail {

/// Effect of a soft tail with a drawn shape: its own lines in the ledger, and the answers of the same lure
/// without it (slot included). The effect is the difference to the lure's answers.
struct TailEffect {
    ledger::Sum own;
    Answers without;
};

/// Evaluates the lure a second time, so call it only where it is shown. The document must have a tail.
[[nodiscard]] Outcome<TailEffect> tail_effect(const document::Document& document,
                                              const Evaluation& evaluation);

} // namespace evenfall::tail
