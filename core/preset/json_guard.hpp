#pragma once

#include "base/outcome.hpp"

#include <cstddef>
#include <nlohmann/json.hpp>

#include <cstddef>
#include <string_view>

namespace evenfall::preset {

/// No document nests deeper: the deepest is a point of a curve in a section in a shape.
inline constexpr std::size_t max_json_depth = 16;

/// Untrusted text → a tree, in one pass that stops at the first fault: the text is at most max_document_bytes long,
/// well-formed JSON, every number within a double's range, nested no deeper than max_json_depth, no key twice in one
/// object. Refuses with one problem, with line and column where that helps.
[[nodiscard]] Outcome<nlohmann::json> parse_guarded(std::string_view text);

}  // namespace evenfall::preset
