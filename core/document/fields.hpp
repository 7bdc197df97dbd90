#pragma once

// What a field of the JSON form is. The table of all fields is document/field_table.hpp; reader, writer,
// range check and JSON Schema all walk that one table (document/walk.hpp), so that they cannot drift apart.

#include "base/problem.hpp"
#include "document/document.hpp"

#include <array>
#include <cstddef>
#include <span>
#include <string>
#include <string_view>

namespace evenfall::document {

/// A number of the JSON form: its key, its trade unit and its limits in that unit.
struct NumberField {
    std::string_view key;
    std::string_view unit; ///< as shown: "mm"; empty for a plain number
    double per_si = 1.0;   ///< trade units in one SI unit: 1000 for mm
    double min = 0.0;      ///< trade unit, included
    double max = 0.0;      ///< trade unit, included
    std::string_view says; ///< what the field says of its owner; "{}" stands for value and unit
    bool required = false; ///< must the key be there?
};

/// A text of the JSON form, at most `max_text` bytes.
struct TextField {
    std::string_view key;
    std::string_view called; ///< "name", "note"
    bool lines = false;      ///< may hold line breaks
};

/// A list of [first, second] pairs.
struct PointsField {
    std::string_view key;
    std::string_view called; ///< "back line"; a point of it is "Point 3 of the back line"
    NumberField first;
    NumberField second;
    std::size_t min_count = 1;
    bool required = false;
};

/// A list of objects.
struct ListField {
    std::string_view key;
    std::string_view one;  ///< "Hole": entries are called "Hole 1", "Hole 2" …
    std::string_view many; ///< "holes"
    std::size_t max_count = 0;
};

/// One word of a choice.
template <class E>
struct Word {
    std::string_view word;
    E value;
};

/// A word or flag stored as one bool: "skin" in a coat's surfaces.
template <class Owner>
struct Flag {
    std::string_view word;
    bool Owner::*member;
};

/// The word that stands for a choice's value; empty where there is none.
template <class Words, class E>
[[nodiscard]] std::string_view word_of(const Words& words, E value) {
    for (const auto& known : words) {
        if (known.value == value) return known.word;
    }
    return {};
}

/// Numbers are kept to a millionth of their trade unit, far below a bench's reading, so that text and
/// document round-trip. NaN and infinity pass through.
[[nodiscard]] double round_trade(double trade);
[[nodiscard]] double to_trade(const NumberField& field, double si);
[[nodiscard]] double to_si(const NumberField& field, double trade);

using units::plain_number;

/// A value of the field, SI: "45 mm", "12 %", "2.4".
[[nodiscard]] Sentence with_unit(const NumberField& field, double si);

/// "0 to 40 mm".
[[nodiscard]] Sentence limit_text(const NumberField& field);

/// "1 point", "3 points".
[[nodiscard]] std::string counted(std::size_t count, std::string_view one);

/// Where a walk of the document stands: its JSON pointer, and what a carver calls the place ("Hole 2").
struct Place {
    std::string path;
    std::string subject;

    [[nodiscard]] std::string path_of(std::string_view key) const;
    [[nodiscard]] Place key(std::string_view key, std::string subject_there) const;
    /// "Hole 2": entry 1 of the list at `key`, whose entries are called "Hole".
    [[nodiscard]] Place entry(std::string_view key, std::string_view one, std::size_t index) const;
    /// "Point 3 of the back line".
    [[nodiscard]] Place point(std::string_view key, std::string_view called, std::size_t index) const;
    /// "The fill of hole 2": `called` "fill" at the place "Hole 2".
    [[nodiscard]] std::string owned(std::string_view called) const;
};

/// Bytes of the UTF-8 letter that begins at text[at]; 0 where none does (RFC 3629, section 4). `at` <
/// text.size().
[[nodiscard]] std::size_t letter_bytes(std::string_view text, std::size_t at);
/// What a text holds that has no place in a name, in words: "a control character"; nullptr where nothing.
/// Control characters could break a page or a printout, direction overrides could make a name read as
/// something else, invisible letters could make two names look alike, and codes that are no letters cannot be
/// written. What joins two letters into one sign may stand beside a letter that is seen.
[[nodiscard]] const char* unfit_in(std::string_view text, bool lines_allowed);
/// As many whole letters as go into `most_bytes`; those that are unfit for a name and broken UTF-8 left out;
/// `cut_mark` stands after them where there were more.
[[nodiscard]] std::string printable(std::string_view text, std::size_t most_bytes,
                                    std::string_view cut_mark = {});
/// Text of others made fit to quote in a sentence: printable, cut to 40 bytes.
[[nodiscard]] std::string quotable(std::string_view text);

/// A list with more or fewer points, or with more entries, than its field allows.
[[nodiscard]] Problem too_many_points(const Place& place, const PointsField& field, std::size_t count);
[[nodiscard]] Problem too_many_entries(const Place& place, const ListField& field, std::size_t count);

/// Problems of one walk, at most max_problems of them.
inline constexpr std::size_t max_problems = 20;
void add_problem(Problems& problems, Problem problem);

} // namespace evenfall::document
