#pragma once

#include "document/document.hpp"

#include <string>

namespace evenfall::output {

/// The log as comma-separated values (RFC 4180: CRLF, quotes doubled, a header row), one reading per line,
/// units as in the document's keys. Text in a note that a spreadsheet would take for a formula gets an
/// apostrophe in front.
[[nodiscard]] std::string log_csv(const document::Document& document);

} // namespace evenfall::output
