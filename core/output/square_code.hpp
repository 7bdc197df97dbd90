#pragma once

// Text as a two-dimensional code that phone cameras read (ISO/IEC 18004), made by a library.

#include "base/outcome.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace evenfall {

/// Squares, row by row from the upper left corner, without the quiet zone round them.
struct SquareCode {
    int side = 0;           ///< squares along one side: 21 to 177
    std::vector<bool> dark; ///< side × side values

    [[nodiscard]] bool at(int column, int row) const {
        return dark[static_cast<std::size_t>(row) * static_cast<std::size_t>(side) +
                    static_cast<std::size_t>(column)];
    }
};

/// The largest code there is (version 40) holds 2,953 characters.
inline constexpr int largest_code_side = 177;
/// Light squares that must lie round a code on each side (ISO/IEC 18004:2015 §6.3.8, from memory).
inline constexpr int quiet_squares = 4;

/// The smallest code that holds the text, with as much error correction as fits. Refused as too_large where
/// it would need more than `largest_side` squares along a side.
[[nodiscard]] Outcome<SquareCode> square_code(std::string_view text, int largest_side = largest_code_side);

/// The side of one square on paper [mm]: 0.5, which a phone reads at arm's length, and less where code and
/// quiet zone would be more than 74 mm wide: 0.4 for the largest, which it reads at a hand's length. Common
/// practice, no source.
[[nodiscard]] double printed_square_mm(const SquareCode& code);

/// Adjacent dark squares in a row, drawn as one shape so that no hairlines show between them.
struct DarkRun {
    int column = 0;
    int row = 0;
    int length = 0;
};
[[nodiscard]] std::vector<DarkRun> dark_runs(const SquareCode& code);

/// Squares along a side with the quiet zone.
[[nodiscard]] inline int whole_side(const SquareCode& code) {
    return code.side + 2 * quiet_squares;
}

/// The code as SVG path data (SVG 2 §9.3), one unit per square, within its quiet zone.
[[nodiscard]] std::string path_of(const SquareCode& code);

} // namespace evenfall
