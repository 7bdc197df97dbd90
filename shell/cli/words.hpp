#pragma once

#include "evenfall.hpp"
#include "output.hpp"

#include <string>
#include <string_view>

namespace evenfall::cli {

// How answers are worded for reading; "–" stands where there is nothing to say. `in` has the units that are
// set.

using output::Numbers;

[[nodiscard]] std::string degrees(const std::optional<double>& rad);
[[nodiscard]] std::string fall_speed(const std::optional<Fall>& fall, const Numbers& in);
[[nodiscard]] std::string fall_s_ft(const std::optional<Fall>& fall);
/// What a lure does that has no fall to tell: floats, hangs still, or sinks without a steady way.
[[nodiscard]] std::string no_fall_words(Behaviour behaviour);
/// output::near_neutral_sentence in a line of its own, by the document without its log; empty where there is
/// none.
[[nodiscard]] std::string near_neutral_text(document::Document document, const Numbers& in);
[[nodiscard]] std::string both_speeds(double m_s, const Numbers& in); ///< "159 mm/s, 1.92 s/ft"
[[nodiscard]] std::string fall_words(const Answers& answers,
                                     const Numbers& in); ///< "159 mm/s, 1.92 s/ft (145 to 174 mm/s)"
[[nodiscard]] std::string warnings_text(const Answers& answers, const Numbers& in);

/// Text of others, a file's name for one, on its way to the terminal: nothing in it can colour, clear or move
/// what stands there.
[[nodiscard]] std::string for_terminal(std::string_view text);

/// The words of a choice of the document, between commas.
template <class Words>
[[nodiscard]] std::string all_words(const Words& words) {
    std::string text;
    for (const auto& word : words)
        text += (text.empty() ? "" : ", ") + std::string(word.word);
    return text;
}

/// The value that one of them stands for; false where none of them was typed.
template <class Words, class E>
[[nodiscard]] bool find_word(const Words& words, const std::string& text, E& into) {
    for (const auto& word : words) {
        if (word.word != text) continue;
        into = word.value;
        return true;
    }
    return false;
}

} // namespace evenfall::cli
