#pragma once

#include <string_view>
#include <vector>

namespace evenfall::document {

/// The known word nearest to a mistyped one, or empty when none is within 2 letters (fewer for short words).
/// Words longer than 40 bytes have no near one.
[[nodiscard]] std::string_view nearest_spelling(std::string_view word,
                                                const std::vector<std::string_view>& known);

} // namespace evenfall::document
