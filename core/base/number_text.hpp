#pragma once

// Numbers as a carver types and reads them. No locale: both "8.25" and "8,25" are eight and a quarter
// everywhere.

#include "base/outcome.hpp"
#include "base/unit.hpp"

#include <string>
#include <string_view>

namespace evenfall::units {

inline constexpr std::size_t max_number_text = 64; ///< bytes

/// A typed number → the core's unit.
///
///   text        blanks around are ignored      "8"  "8.25"  "8,25"  ".5"  "-3"  "7/64"  "1 3/8"  "1-3/8"
///   each with or
///                                              without a unit behind it: "1 3/8\"", "0.9s/ft", "-3deg", "12
///                                              °C"
///   usual       unit where none is typed; its quantity is the one that is wanted
///   path        where the text came from, for the problem
///   returns     SI (temperature °C, salinity g/kg), always finite; decimals of up to 18 digits to the
///   nearest double or its neighbour
///
/// A comma is a decimal comma, never a thousands mark: "1,000" is one. A sign goes before the whole: "-1 3/8"
/// is −1.375. Fails       wrong_type for text that is no number, unknown_name for a unit that is none of ours
/// or of another
///             quantity, out_of_range for a division by nothing and for a rate of fall of zero seconds,
///             too_large beyond `max_number_text`. No limits of the field itself: those are the document's.
[[nodiscard]] Outcome<double> read_number(std::string_view text, Unit usual, std::string_view path = {});

/// A value of the core in `unit` with `decimals` (0 to 9) behind the point, without the unit's symbol:
/// 0.00825, mm, 2 → "8.25". Rounds half away from zero. A value below zero has a true minus sign (U+2212),
/// zero has none. What has no digits to show (not finite, or 10⁹ or more in that unit) is "–".
/// Unit::inch_fraction has no decimals: it answers inch_text.
[[nodiscard]] std::string number_text(double core, Unit unit, int decimals);

/// The finest division on the rule at hand.
enum class InchStep {
    half = 2,
    quarter = 4,
    eighth = 8,
    sixteenth = 16,
    thirty_second = 32,
    sixty_fourth = 64
};

/// A length in inches to the nearest step, in lowest terms: 0.034925 m → "1 3/8"; 0 → "0"; −0.0127 → "−1/2".
[[nodiscard]] std::string inch_text(double length_m, InchStep step = InchStep::sixty_fourth);

} // namespace evenfall::units
