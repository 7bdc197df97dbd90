#pragma once

#include "base/outcome.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace evenfall::words {

/// One text of a catalogue and what it is called in another language.
struct PoEntry {
    int line = 0; ///< of the file, from 1
    std::string english;
    std::string plural;              ///< the English of more than one; empty where there is one form
    std::vector<std::string> others; ///< one for each form of the language
};

/// Reads a catalogue in the PO format of GNU gettext: msgid, msgid_plural, msgstr and msgstr[n], comments,
/// texts continued over lines, the escapes \n, \t, \" and \\. The first entry, with an empty msgid, is the
/// head. Left out are entries that are marked fuzzy or have an empty msgstr. Refused: lines that are none of
/// these, with their number.
[[nodiscard]] Outcome<std::vector<PoEntry>> read_po(std::string_view text);

} // namespace evenfall::words
