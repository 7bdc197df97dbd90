#pragma once

#include "base/outcome.hpp"
#include "document/document.hpp"

namespace evenfall::starter {

/// A line tie at the nose, and hooks on hangers under the belly: the largest of the table with which no joint
/// has a warning, at most a fifth of the length long. Refused ("/hooks") where none fits.
[[nodiscard]] Outcome<document::Document> with_hooks(const document::Document& jointed, int hooks);

} // namespace evenfall::starter
