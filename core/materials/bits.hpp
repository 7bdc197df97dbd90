#pragma once

#include "base/sentence.hpp"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace evenfall::bits {

/// The four size systems of twist drills.
enum class System { fraction, number, letter, metric };
inline constexpr int system_count = 4;

struct Bit {
    System system = System::metric;
    double diameter_m = 0.0;

    /// Its name in the shop: "7/64 in", "#36", "letter F", "2.7 mm".
    [[nodiscard]] std::string name() const;
};

using BitOfEachSystem = std::array<std::optional<Bit>, system_count>; ///< absent where none fits

/// All bits of one system, thinnest first.
///
///   fraction  n/64 in, 1/64 to 1/2
///   number    #80 to #1 (ASME B94.11M sizes, read in a public table)
///   letter    A to Z (the same)
///   metric    0.5 to 3 mm by 0.05, to 10 mm by 0.1, to 13 mm by 0.5 (ISO 235 and common sets; from memory)
[[nodiscard]] const std::vector<Bit>& all(System system);

/// The thinnest bit of a system that is at least this thick; absent above its largest.
[[nodiscard]] std::optional<Bit> next_up(System system, double diameter_m);

/// The same of every system.
[[nodiscard]] BitOfEachSystem next_up(double diameter_m);

/// The bit of a system nearest to this diameter, thicker or thinner.
[[nodiscard]] Bit nearest(System system, double diameter_m);

/// The name that a bit is bought by where inches rule: the fraction, and where that is 0.05 mm off or more
/// the fraction, number or letter that is nearest. "near" stands before one that is as far off.
[[nodiscard]] std::string inch_name(double diameter_m);

/// "7/64 in, #36, 2.7 mm": those that are there, the metric one only where lengths are metric. Empty where
/// none is.
[[nodiscard]] std::string names(const BitOfEachSystem& bits, const units::UnitSet& units);

/// For a sentence: its diameter where lengths are metric, else its inch_name.
[[nodiscard]] Sentence bit_text(double diameter_m, int decimals = 2);

/// Clearance between a hole and what is glued into it.
struct GlueRoom {
    double least_m = 0.2e-3;   ///< common practice, no source
    double loosest_m = 0.6e-3; ///< common practice, no source
};

/// For each System, the smallest bit of at least diameter + `least_m`; absent where that bit is wider than
/// diameter + `loosest_m` (a looser hole needs filler, not glue).
[[nodiscard]] BitOfEachSystem for_glue(double diameter_m, const GlueRoom& room = {});

/// For each System, the smallest bit for a pin that is pressed in: at least as thick as the pin less 0.01 mm,
/// which no pin and no bit is true to (common practice, no source); absent where that bit is half as thick
/// again.
[[nodiscard]] BitOfEachSystem for_pin(double diameter_m);

} // namespace evenfall::bits
