#pragma once

// Numbers as a carver reads them. No locale is used: the decimal point is a point.

#include "base/unit_set.hpp"

#include <string>
#include <string_view>

namespace evenfall::units {

/// A value of the core in `unit` with `decimals` (0 to 9) behind the point, without the unit's symbol:
/// 0.00825, mm, 2 → "8.25". Rounds half away from zero. A value below zero has a true minus sign (U+2212),
/// zero has none. What has no digits to show (not finite, or 10⁹ or more in that unit) is "–".
/// Unit::inch_fraction has no decimals: it answers inch_text.
[[nodiscard]] std::string number_text(double core, Unit unit, int decimals);

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

/// Shortest plain decimal of a number of at most six decimals: "12", "6.35", "-0.5".
[[nodiscard]] std::string plain_number(double value);

/// As decimals: as many as the number has.
inline constexpr int plain = -1;

enum class Rounding { nearest, up, down };

/// A quantity of the core in the units that are set, without their symbol. `decimals` are those of the metric
/// unit (mm, m, g, mm/s, °C); in another unit there are as many as are about as fine. The metric number is
/// always rounded to the nearest: limits are whole there. Where inches are set as fractions, a length below
/// 1/8 in that is no 64th is told in thousandths, because for a wall or a gap a 64th is too coarse: "0.039".
[[nodiscard]] std::string number_text(double core, Quantity quantity, const UnitSet& units, int decimals,
                                      Rounding rounding = Rounding::nearest);

/// The number with a unit's symbol behind it: "12.3 mm", "3°"; a number without unit as it is.
[[nodiscard]] std::string with_symbol(std::string number, Unit unit);

} // namespace evenfall::units
