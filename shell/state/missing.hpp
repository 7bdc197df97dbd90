#pragma once

#include "evenfall.hpp"

#include <string>

namespace evenfall::shell::state {

/// "Still missing: lead, hooks, coats." of a lure that is not all there yet; "" where it is.
[[nodiscard]] std::string missing_words(const document::Document& document);

/// Whether the balance can be judged: a lure without a hole for lead is not expected to float right side up.
[[nodiscard]] bool balance_counts(const document::Document& document);

/// The warnings to be shown: those about the balance only where it counts.
[[nodiscard]] Problems warnings_shown(const document::Document& document, Problems warnings);

} // namespace evenfall::shell::state
