#pragma once

#include "document/log.hpp"

#include <string>
#include <vector>

namespace evenfall::output {

/// "Held under water on the scale", as a heading.
[[nodiscard]] std::string reading_name(document::ReadingKind kind);

/// How a reading is taken, step by step: what to set up, what to subtract, what to watch for, with the
/// cautions of that work.
[[nodiscard]] std::vector<std::string> reading_steps(document::ReadingKind kind);

} // namespace evenfall::output
