#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace evenfall::words {

/// Stands in a pattern for a number with its unit, or a date.
inline constexpr std::string_view number_mark = "{}";

/// A text with its numbers taken out: "Hole 2 is full at 18.0 mm" → "Hole {} is full at {}", "2", "18.0 mm".
struct Pattern {
    std::string key;
    std::vector<std::string> numbers;

    /// The text from byte `from` of the key up to byte `to`, with its numbers again.
    [[nodiscard]] std::string text(std::size_t from, std::size_t to) const;
};

/// `in_is_inch`: whether " in" behind a number is its unit; else it is the word ("2 in water").
[[nodiscard]] Pattern pattern_of(std::string_view text, bool in_is_inch);

/// A number, or several within a text, with this decimal sign: "18.0 mm" → "18,0 mm". What has two points
/// ("1.5.0") is no number.
[[nodiscard]] std::string with_decimal_sign(std::string_view text, char sign);

/// "mm", "s/ft", "°": nothing to translate.
[[nodiscard]] bool is_unit_symbol(std::string_view text);

} // namespace evenfall::words
