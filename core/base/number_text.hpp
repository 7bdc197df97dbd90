#pragma once

// Numbers as a carver types and reads them. No locale is used: "8.25" and "8,25" both mean eight and a
// quarter.

#include "base/outcome.hpp"
#include "base/unit.hpp"

#include <string>
#include <string_view>

namespace evenfall::units {

inline constexpr std::size_t max_number_text = 64; ///< bytes

/// Converts typed text to a value in the core's unit.
///
///   text     number, with or without a unit; spaces around it are ignored: "8"  "8.25"  "8,25"  ".5"  "-3"
///            "7/64"  "1 3/8"  "1-3/8"  "1 3/8\""  "0.9s/ft"  "-3deg"
///   usual    unit assumed where none is typed; its quantity is the one required
///   path     where the text came from, for the problem
///   returns  SI (temperature °C, salinity g/kg), always finite; text of up to 18 digits gives the nearest
///            double or its neighbour
///
/// A comma is a decimal comma, never a thousands separator: "1,000" is one. The sign goes before the whole
/// number: "-1 3/8" is −1.375.
///
/// Fails with wrong_type (not a number), unknown_name (unknown unit, or a unit of another quantity),
/// out_of_range (division by zero, or a rate of fall of zero seconds), too_large (longer than
/// `max_number_text`). Does not check the limits of the field: the document does.
[[nodiscard]] Outcome<double> read_number(std::string_view text, Unit usual, std::string_view path = {});

/// A value of the core in `unit` with `decimals` (0 to 9) behind the point, without the unit's symbol:
/// 0.00825, mm, 2 → "8.25". Rounds half away from zero. A value below zero has a true minus sign (U+2212),
/// zero has none. What has no digits to show (not finite, or 10⁹ or more in that unit) is "–".
/// Unit::inch_fraction has no decimals: it answers inch_text.
[[nodiscard]] std::string number_text(double core, Unit unit, int decimals);

/// The same as it is read on the bench, with the unit's symbol: "31.20 g", "4.30 s", "2.0°", "512 kg/m³".
[[nodiscard]] std::string reading_text(double core, Unit unit);

/// A value's text with a plus where the value is above zero and shows so.
[[nodiscard]] std::string with_plus(double value, std::string text);

/// Finest division of the ruler in use.
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
