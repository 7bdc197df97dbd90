#pragma once

#include "cli/arguments.hpp"
#include "evenfall.hpp"

#include <string>

namespace evenfall::cli {

// One function per command. Each prints and returns the exit status.

[[nodiscard]] int weigh(const Arguments& arguments);
[[nodiscard]] int lead(const Arguments& arguments);
[[nodiscard]] int fall(const Arguments& arguments);
[[nodiscard]] int log(const Arguments& arguments);
[[nodiscard]] int chance(const Arguments& arguments);
[[nodiscard]] int joints(const Arguments& arguments);
[[nodiscard]] int link(const Arguments& arguments);
[[nodiscard]] int open(const Arguments& arguments);
[[nodiscard]] int resin(const Arguments& arguments);
[[nodiscard]] int tail(const Arguments& arguments);
[[nodiscard]] int stock(const Arguments& arguments);
[[nodiscard]] int glue(const Arguments& arguments);
[[nodiscard]] int block(const Arguments& arguments);
[[nodiscard]] int woods(const Arguments& arguments);
[[nodiscard]] int metals(const Arguments& arguments);
[[nodiscard]] int sheet(const Arguments& arguments);
[[nodiscard]] int trace(const Arguments& arguments);

/// What a code of the lure holds: the page's address with the share text behind "#", or the share text alone.
[[nodiscard]] std::string text_for_code(const document::Document& document, const std::string& page);

void print(const std::string& text);

/// Each problem on standard error: the sentence, then where. Returns bad_input.
int report(const Problems& problems);

/// The document in a file or on standard input.
[[nodiscard]] Outcome<document::Document> load(const std::string& path);

/// Writes the document over a file in one piece, or to standard output for "-". Refuses what load() would
/// refuse, and writes nothing then.
[[nodiscard]] Problems keep(const std::string& path, const document::Document& document);

} // namespace evenfall::cli
