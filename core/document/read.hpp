#pragma once

#include "base/outcome.hpp"
#include "document/document.hpp"

#include <string>

namespace evenfall {

/// JSON text → document. Strict: unknown keys, wrong types, unknown versions, numbers out of range are
/// refused by name.
[[nodiscard]] Outcome<document::Document> read_document(const std::string& json_text);

} // namespace evenfall
