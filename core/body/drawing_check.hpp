#pragma once

#include "base/problem.hpp"
#include "document/document.hpp"

namespace evenfall::shape {

// Limits of a drawing, in shop units.
inline constexpr double least_length_mm = 20.0;
inline constexpr double greatest_length_mm = 600.0;
inline constexpr double least_tail_length_mm = 2.0; ///< of a soft tail
inline constexpr double greatest_tail_length_mm = 300.0;
inline constexpr double greatest_height_mm =
    150.0; ///< of the back or belly line from the datum line, either way
inline constexpr double greatest_half_width_mm = 120.0;
inline constexpr double least_station_step_mm = 0.01; ///< between neighbouring stations of one curve

/// All problems of a drawn shape; empty where it can be built. Back and belly line may meet at nose and tail,
/// and the plan may come to a point there; in between, the body must have height and width.
[[nodiscard]] Problems drawing_problems(const document::Shape& shape);

/// The same for the three lines of a soft tail (tail_loft.hpp), reported under "/tail/…".
[[nodiscard]] Problems tail_drawing_problems(const document::Shape& lines);

} // namespace evenfall::shape
