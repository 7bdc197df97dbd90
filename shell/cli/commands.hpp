#pragma once

#include "cli/files.hpp"
#include "cli/options.hpp"
#include "evenfall.hpp"

#include <string>

namespace evenfall::cli {

// One function per verb: declares what may be typed behind it, and what runs it.

void new_lure(Options& options);
void weigh(Options& options);
void lead(Options& options);
void fall(Options& options);
void swim_verb(Options& options); ///< “swim” is a namespace of the core
void log(Options& options);
void chance(Options& options);
void joints(Options& options);
void link(Options& options);
void open(Options& options);
void resin(Options& options);
void tail(Options& options);
void stock(Options& options);
void glue(Options& options);
void board(Options& options);
void woods(Options& options);
void metals(Options& options);
void reach(Options& options);
void sheet(Options& options);
void trace(Options& options);

void print(const std::string& text);
/// The same for what people read, in their language.
void print(const std::string& text, const output::Numbers& in);

/// The document in a file or on standard input.
[[nodiscard]] Outcome<document::Document> load(const std::string& path);

/// Writes the document over a file in one piece, or to standard output for "-". Refuses what load() would
/// refuse, and writes nothing then. Who changes what the file has holds it before it is loaded.
[[nodiscard]] Problems keep(HeldFile& file, const document::Document& document);
[[nodiscard]] Problems keep(const std::string& path, const document::Document& document);

} // namespace evenfall::cli
