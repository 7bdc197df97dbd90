#pragma once

#include "document/text_model.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace evenfall::document {

/// A text as a number between nought and one, by arithmetic coding (Witten, Neal and Cleary 1987, from
/// memory): every bit takes of what is left of that stretch the share that the model gave it, so that a bit
/// that was foreseen costs next to nothing. Any text, also an empty one; at least one byte.
[[nodiscard]] std::vector<unsigned char> coded_text(std::string_view text, TextModel model);

/// The text of this length again, by the same model. Absent where the bytes end too early or too late for it;
/// bytes that were changed give another text, or none.
[[nodiscard]] std::optional<std::string> decoded_text(const std::vector<unsigned char>& bytes,
                                                      std::size_t length, TextModel model);

} // namespace evenfall::document
