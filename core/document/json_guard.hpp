#pragma once

#include "base/outcome.hpp"
#include "document/document.hpp"
#include "document/json_text.hpp"

#include <cstddef>
#include <string_view>

namespace evenfall::document {

/// No document nests deeper: the deepest is a point of a curve in a section in a shape.
inline constexpr std::size_t max_json_depth = 16;
/// Keys of one object: each is compared with those before it, and no object of ours has nearly as many.
inline constexpr std::size_t max_json_keys = 256;

/// Untrusted text → a tree, in one pass that stops at the first fault: the text is at most `max_bytes` long,
/// well-formed JSON, every number within a double's range, nested no deeper than max_json_depth, no more than
/// max_json_keys keys and none twice in one object. Refuses with one problem that says where: by line and
/// column, or by path.
[[nodiscard]] Outcome<Tree> parse_guarded(std::string_view text, std::size_t max_bytes = max_document_bytes);

} // namespace evenfall::document
