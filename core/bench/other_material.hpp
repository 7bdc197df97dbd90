#pragma once

#include "document/document.hpp"

#include <string_view>

namespace evenfall::bench {

/// The lure in another wood at its own moisture. A density that the builder weighed, and what his readings
/// taught, belong to his own board and are left out.
[[nodiscard]] document::Document in_wood(document::Document document, std::string_view wood);

/// The lure with other ballast in all holes that the plan may fill, none of it in yet.
[[nodiscard]] document::Document with_metal(document::Document document, std::string_view metal);

} // namespace evenfall::bench
