#pragma once

#include "document/document.hpp"
#include "ledger/line.hpp"

#include <string>

namespace evenfall::ledger {

/// Whether any line is of the rigged lure alone: hooks, rings, a tail.
[[nodiscard]] bool has_rigging(const Ledger& ledger);

/// What of it there is: "hooks and tail", "hooks", "the tail".
[[nodiscard]] std::string rigging_words(const document::Document& document);

/// The ledger of a lure with something hung on for a test: what hangs on counts from the first stage on.
/// Test weights are lines of parts that the document does not have; they hang at `weights_at_m`, and turn the
/// lure nowhere when that is its G. Materials are known to the document's check.
[[nodiscard]] Ledger with_hung_on(Ledger ledger, const document::HungList& with, const Vec3& weights_at_m);

} // namespace evenfall::ledger
