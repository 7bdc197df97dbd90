#pragma once

// A lure's history as text, to be kept on the device with it: not the documents, but what each step changed
// in the text of the one beside it, so that a hundred steps are a few kilobytes. Pure.

#include "evenfall.hpp"
#include "output.hpp"
#include "state/history.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace evenfall::shell::state {

inline constexpr std::size_t most_kept_steps = 100;         ///< back, and as many forward
inline constexpr std::size_t most_kept_history = 48 * 1024; ///< bytes; the farthest steps are left out first

/// How one text becomes another: `cut` bytes from `from` on are replaced by `put`. Never divides a character
/// of UTF-8.
struct TextChange {
    std::size_t from = 0;
    std::size_t cut = 0;
    std::string put;
};
[[nodiscard]] TextChange change_between(std::string_view before, std::string_view after);
/// Absent where the change lies beyond the text.
[[nodiscard]] std::optional<std::string> changed(std::string_view text, const TextChange& change);

/// The current lure's own steps; "" where there are none.
[[nodiscard]] std::string write_history(const History& history);

/// A history around its current document. Absent where it is damaged, or of another document or version: then
/// the lure begins with none. Documents are read, not evaluated.
[[nodiscard]] std::optional<History> read_history(const document::Tree& tree,
                                                  const document::Document& current);

} // namespace evenfall::shell::state
