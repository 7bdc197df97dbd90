#pragma once

#include "evenfall.hpp"

#include <string>

namespace evenfall::cli {

// How answers are worded for reading; "–" stands where there is nothing to say.

[[nodiscard]] std::string grams(double kg, int decimals = 2);
[[nodiscard]] std::string signed_grams(double kg); ///< "+1.42", "−0.80"
[[nodiscard]] std::string millimetres(double m, int decimals = 1);
[[nodiscard]] std::string degrees(const std::optional<double>& rad);
[[nodiscard]] std::string fall_mm_s(const std::optional<Fall>& fall);
[[nodiscard]] std::string fall_s_ft(const std::optional<Fall>& fall);
/// What a lure does that has no fall to tell: floats, hangs still, or sinks without a steady way.
[[nodiscard]] std::string no_fall_words(MassInWater in_water);
[[nodiscard]] std::string fall_words(const Answers& answers); ///< "159 mm/s, 1.92 s/ft (145 to 174 mm/s)"
[[nodiscard]] std::string warnings_text(const Answers& answers);

} // namespace evenfall::cli
