#pragma once

#include <nlohmann/json.hpp>

#include <string>

namespace evenfall::document {

using Tree = nlohmann::ordered_json;

/// JSON text on one line without spaces. Numbers are written as plain_number does; NaN and infinity as null.
[[nodiscard]] std::string compact_text(const Tree& tree);

/// JSON text for reading by eye: two spaces of indent, what fits on a line of `width` stays on it, points of
/// a curve are filled into lines. Ends with a line break.
[[nodiscard]] std::string laid_out_text(const Tree& tree, std::size_t width = 180);

/// The words of the flags that are set in an object.
template <class Flags, class T>
[[nodiscard]] Tree flag_words(const Flags& all, const T& object) {
    Tree words = Tree::array();
    for (const auto& flag : all) {
        if (object.*flag.member) words.push_back(std::string(flag.word));
    }
    return words;
}

} // namespace evenfall::document
