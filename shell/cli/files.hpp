#pragma once

#include "evenfall.hpp"

#include <cstddef>
#include <string>

namespace evenfall::cli {

/// The text of a file, or of standard input for "-". Stops one byte past `most_bytes`: the reader refuses by
/// size.
[[nodiscard]] Outcome<std::string> read_text_file(const std::string& path, std::size_t most_bytes);

/// Writes a whole file, or to standard output for "-". The old file stays until the new one is complete; who
/// may read it stays as it was, and a symbolic link goes on pointing at it.
[[nodiscard]] Problems write_text_file(const std::string& path, const std::string& text);

} // namespace evenfall::cli
