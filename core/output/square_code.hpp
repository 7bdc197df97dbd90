#pragma once

// Text as a two-dimensional code that phone cameras read (ISO/IEC 18004), made by a library.

#include "base/outcome.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace evenfall {

/// Squares, row by row from the upper left corner, without the required quiet zone of four squares round
/// them.
struct SquareCode {
    int side = 0;           ///< squares along one side: 21 to 177
    std::vector<bool> dark; ///< side × side values

    [[nodiscard]] bool at(int column, int row) const {
        return dark[static_cast<std::size_t>(row) * static_cast<std::size_t>(side) +
                    static_cast<std::size_t>(column)];
    }
};

/// The largest code that a phone reads from a tablet or paper at arm's length: 117 squares along a side
/// (version 25) are half a millimetre each on 60 mm. Common practice, no source; it holds 1,273 characters.
inline constexpr int largest_side_for_cameras = 117;

/// The smallest code that holds the text, with as much error correction as fits. Refused as too_large where
/// it would need more than `largest_side` squares along a side.
[[nodiscard]] Outcome<SquareCode> square_code(std::string_view text,
                                              int largest_side = largest_side_for_cameras);

/// Adjacent dark squares in a row, drawn as one shape so that no hairlines show between them.
struct DarkRun {
    int column = 0;
    int row = 0;
    int length = 0;
};
[[nodiscard]] std::vector<DarkRun> dark_runs(const SquareCode& code);

/// The code as SVG path data (SVG 2 §9.3), one unit per square, its corner at (border, border).
[[nodiscard]] std::string path_of(const SquareCode& code, int border);

} // namespace evenfall
