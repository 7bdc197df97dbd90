#pragma once

#include "answers/answers.hpp"
#include "water/swim/chain.hpp"

namespace evenfall::swim {

/// The finished lure as a chain in its fishing water: masses from the ledger, the water's part from the lines
/// and parts that the fall takes, swings from the joints (joint_answers.hpp).
///
/// Refused beyond what the model was tried on, each limit with its own sentence: number and length of
/// segments, height and width, the place of the line tie, weight in water, swing of the joints.
[[nodiscard]] Outcome<Chain> chain_of(const document::Document& document, const Evaluation& evaluation);

} // namespace evenfall::swim
