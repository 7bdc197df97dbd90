#pragma once

#include "base/problem.hpp"
#include "document/document.hpp"

#include <string>

namespace evenfall {

/// Document → JSON text, indented, values rounded far below a bench's reading; reads back to an equal
/// document.
[[nodiscard]] std::string write_document(const document::Document& document);

} // namespace evenfall

namespace evenfall::document {

/// The document on one line with everything left out that reads back as its default: the text inside a share
/// link.
[[nodiscard]] std::string write_compact(const Document& document);

/// Refuses a document that write_document() would write at greater length than is read: a link may unfold to
/// one, and an edit may come to one.
[[nodiscard]] Problems too_long_to_open(const Document& document);

/// Do two documents say the same, to a millionth of every trade unit?
[[nodiscard]] bool same(const Document& a, const Document& b);

} // namespace evenfall::document
