#pragma once

#include "document/document.hpp"

#include <string>

namespace evenfall::output {

/// The log as a table of comma-separated values (RFC 4180: CRLF, quotes doubled, a head row), one reading a
/// line, trade units as in the document's own keys. Text in a note that a spreadsheet would take for a
/// formula gets an apostrophe before it.
[[nodiscard]] std::string log_csv(const document::Document& document);

} // namespace evenfall::output
