#pragma once

#include <string>

namespace evenfall::shell::state {

/// A file's name without its ending from a lure's name: small letters, digits and hyphens; "lure" where
/// nothing is left.
[[nodiscard]] std::string file_stem(const std::string& lure);

} // namespace evenfall::shell::state
