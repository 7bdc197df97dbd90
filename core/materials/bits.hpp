#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace evenfall::bits {

/// The four ways in which twist drills are sized and sold.
enum class System { fraction, number, letter, metric };
inline constexpr int system_count = 4;

struct Bit {
    System system = System::metric;
    double diameter_m = 0.0;

    /// As it is called at the bench: "7/64 in", "#36", "letter F", "2.7 mm".
    [[nodiscard]] std::string name() const;
};

/// All bits of one system, thinnest first.
///
/// fraction  n/64 in, 1/64 to 1/2
/// number    #80 to #1 (ASME B94.11M sizes, read in a public table)
/// letter    A to Z (the same)
/// metric    0.5 to 3 mm by 0.05, to 10 mm by 0.1, to 13 mm by 0.5 (ISO 235 and common sets; from memory)
[[nodiscard]] std::vector<Bit> all(System system);

/// The thinnest bit of a system that is not thinner than this; absent beyond its largest.
[[nodiscard]] std::optional<Bit> next_up(System system, double diameter_m);

/// The bit of a system that is nearest to this, thicker or thinner.
[[nodiscard]] Bit nearest(System system, double diameter_m);

/// The bit of each system for something of this diameter that is glued in: the next one up from diameter +
/// room for glue, and at most `loosest_m` above it (a looser hole wants filler, not glue). In the order of
/// System.
struct GlueRoom {
    double least_m = 0.2e-3;   ///< common practice, no source
    double loosest_m = 0.6e-3; ///< common practice, no source
};
[[nodiscard]] std::array<std::optional<Bit>, system_count> for_glue(double diameter_m,
                                                                    const GlueRoom& room = {});

} // namespace evenfall::bits
