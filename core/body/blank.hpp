#pragma once

#include "base/problem.hpp"
#include "body/lines.hpp"
#include "document/blank.hpp"

namespace evenfall::shape {

/// The body's own box: what a board has to hold, saw allowance not counted. Metres.
struct BodyBox {
    double length_m = 0.0;
    double low_z_m = 0.0;
    double high_z_m = 0.0;
    double half_width_m = 0.0;
};
/// Height and width are looked for at the lines' stations and at 16 places between any two of them; between
/// those places a smooth body rises by less than a hundredth of a millimetre.
[[nodiscard]] BodyBox body_box(const Lines& lines);

/// A sentence for each way in which the board is too small for body and saw allowance; empty where it fits.
[[nodiscard]] Problems blank_warnings(const document::Blank& blank, const Lines& lines);

} // namespace evenfall::shape
