#pragma once

#include <string>

namespace CLI {
class App;
}

namespace evenfall::cli {

// Made from the same declarations that the options are read by.

/// For bash: completes verbs, options and file names.
[[nodiscard]] std::string completion_script(const CLI::App& program);

/// For man, in roff.
[[nodiscard]] std::string manual_page(const CLI::App& program);

} // namespace evenfall::cli
