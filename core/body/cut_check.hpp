#pragma once

#include "base/problem.hpp"
#include "body/lines.hpp"
#include "document/document.hpp"

#include <vector>

namespace evenfall::shape {

// Limits of a joint, in shop units.
inline constexpr double least_gap_mm = 0.2;
inline constexpr double greatest_gap_mm = 20.0;
inline constexpr double greatest_relief_deg = 60.0;
inline constexpr double least_wood_mm =
    1.0; ///< between the two faces of a segment, on the middle plane and at the skin

/// All problems of cutting these lines by these joints; empty where there are none.
[[nodiscard]] Problems cut_problems(const Lines& lines, const std::vector<document::Joint>& joints);

/// The problem of a relief whose flank does not meet the skin in one clear edge. Key: relief_fore_deg or
/// relief_aft_deg.
[[nodiscard]] Problem flank_problem(std::size_t joint, const char* key, std::size_t segment);

} // namespace evenfall::shape
