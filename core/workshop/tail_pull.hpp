#pragma once

#include "answers/answers.hpp"
#include "ledger/fold.hpp"

namespace evenfall::tail {

/// What the tail by its shape does to a lure: its own lines of the ledger, and the answers of the same lure
/// without it, slot and all. What it pulls is the difference to the lure's own answers.
struct Pull {
    ledger::Sum own;
    Answers without;
};

/// Evaluates the lure a second time, so it is asked where it is looked at only. The document must have a
/// tail.
[[nodiscard]] Outcome<Pull> pull(const document::Document& document, const Evaluation& evaluation);

} // namespace evenfall::tail
