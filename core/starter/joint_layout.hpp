#pragma once

#include "base/outcome.hpp"
#include "document/document.hpp"

namespace evenfall::starter {

/// Cuts a body without joints into `segments` with hinges and the pockets their eyes turn in: the stoutest
/// wire of three sizes and the widest relief with which no joint has a warning. Refused ("/segments") where
/// none does. Hinges weigh themselves.
[[nodiscard]] Outcome<document::Document> with_joints(const document::Document& body, int segments);

} // namespace evenfall::starter
