#pragma once

#include "base/problem.hpp"
#include "base/vec3.hpp"
#include "document/json_text.hpp"

#include <optional>

namespace evenfall::output {

using document::Tree;

// Core values → JSON in shop units, rounded to a millionth; absent or not finite gives null.

[[nodiscard]] Tree number(double trade);
[[nodiscard]] Tree grams(double kg);
[[nodiscard]] Tree millimetres(double m);
[[nodiscard]] Tree cubic_centimetres(double m3);
[[nodiscard]] Tree speed(double m_s); ///< mm/s
[[nodiscard]] Tree degrees(const std::optional<double>& rad);
[[nodiscard]] Tree point(const Vec3& at); ///< [x, y, z] mm
[[nodiscard]] Tree problem_list(const Problems& problems);

} // namespace evenfall::output
