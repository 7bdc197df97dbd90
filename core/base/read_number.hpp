#pragma once

// Numbers as a carver types them. No locale is used: "8.25" and "8,25" both mean eight and a quarter.

#include "base/outcome.hpp"
#include "base/unit.hpp"

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

} // namespace evenfall::units
