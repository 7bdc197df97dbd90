#pragma once

#include <string_view>

namespace evenfall {

/// The project's version, "1.2.0": that of CMakeLists.txt. Page and program both show it.
[[nodiscard]] std::string_view version();

} // namespace evenfall
