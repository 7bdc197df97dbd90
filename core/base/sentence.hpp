#pragma once

#include <cstddef>
#include <string>

namespace evenfall {

// Parts of the sentences in problems: numbers rounded for reading, in shop units.

[[nodiscard]] std::string millimetres_text(double metres); ///< 0.0123 → "12.3 mm"
[[nodiscard]] std::string grams_text(double kilograms);    ///< 0.00642 → "6.42 g"
[[nodiscard]] std::string degrees_text(double radians);    ///< −0.0524 → "−3.0°"
[[nodiscard]] std::string
hole_text(std::size_t index, const std::string& name); ///< 1, "" → "Hole 2"; with a name "Hole 2 (front)"

/// "/holes/3/depth_mm"
[[nodiscard]] std::string pointer(const char* list, std::size_t index, const char* key);

} // namespace evenfall
