#pragma once

#include <string>

namespace evenfall::shell::state {

/// A file name without extension from a lure's name: lower-case letters, digits and hyphens; "lure" where
/// nothing is left.
[[nodiscard]] std::string file_stem(const std::string& lure);

} // namespace evenfall::shell::state
