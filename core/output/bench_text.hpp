#pragma once

#include "document/log.hpp"

#include <string>
#include <vector>

namespace evenfall::output {

/// "Held under water on the scale", as a heading.
[[nodiscard]] std::string reading_name(document::ReadingKind kind);

/// Instructions for a reading, step by step: set-up, what to subtract, what to watch for, with safety notes.
[[nodiscard]] std::vector<std::string> reading_steps(document::ReadingKind kind);

} // namespace evenfall::output
