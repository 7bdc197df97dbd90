#pragma once

// The help: one entry for each figure that the page works out, and for ways of working. A figure that is
// tapped asks for its entry and hands over the numbers that it was made from; a search finds entries by
// their words.

#include "evenfall.hpp"
#include "help/topic.hpp"
#include "language.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace evenfall::shell::help {

/// Whole sentences for the reader. An entry of a way of working has neither source nor trust.
struct Entry {
    Topic topic = Topic::none;
    const char* id = ""; ///< lower case, "swing": names the entry outside the program
    const char* title = "";
    const char* what = ""; ///< what the figure is
    const char* how = "";  ///< how it is got
    const char* source =
        ""; ///< author and year, "common practice, no source", "from memory", or plain geometry
    const char* trust = "";                         ///< how far it can be trusted
    const char* find = "";                          ///< more words that it is looked for by
    std::optional<document::ReadingKind> reading{}; ///< its steps are told as well
};

[[nodiscard]] std::span<const Entry> entries();
/// The entry of a topic; nullptr for none.
[[nodiscard]] const Entry* entry_of(Topic topic);

/// A number with its name, in the reader's units.
struct Figure {
    std::string label;
    std::string value;
};
/// What was tapped: its own figure first, then those that went into it.
struct Asked {
    Topic topic = Topic::none;
    std::vector<Figure> figures;
};

/// An entry for the page's dialog, as JSON: id, title, what, how, figures [[label, value] …], steps, source,
/// trust. "" for a topic without one.
[[nodiscard]] std::string told(const Asked& asked, const units::UnitSet& units);

/// Entries that answer a question typed in plain words, the best first; all of them, in their order, for a
/// question without a word to go by. A word counts where it begins one of the entry's (three letters at
/// least), in English or in the reader's language, most in its title, then in its words to find, less in what
/// it is, least in the rest.
[[nodiscard]] std::vector<const Entry*> found(std::string_view question, const words::Speech& in = {});
/// Their ids and titles as JSON: [[id, title] …].
[[nodiscard]] std::string found_json(std::string_view question, const words::Speech& in = {});
/// The entry of an id, told without figures. "" where there is none.
[[nodiscard]] std::string told_by_id(std::string_view id, const units::UnitSet& units);

} // namespace evenfall::shell::help
