#pragma once

#include "base/problem.hpp"
#include "body/lines.hpp"
#include "document/board.hpp"

namespace evenfall::shape {

/// The smallest box round the body: what the board must contain, without saw allowance.
struct BodyBox {
    double length_m = 0.0;
    double low_z_m = 0.0;
    double high_z_m = 0.0;
    double half_width_m = 0.0;
};
/// Height and width are sampled at the stations of the lines and at 16 places between each two of them;
/// between samples a smooth body rises by less than 0.01 mm.
[[nodiscard]] BodyBox body_box(const Lines& lines);

/// One problem for each direction in which the board is too small for body and saw allowance; empty where it
/// fits.
[[nodiscard]] Problems board_warnings(const document::Board& board, const Lines& lines);

} // namespace evenfall::shape
