#pragma once

#include "base/problem.hpp"
#include "document/field_of.hpp"

namespace evenfall::document {

// A factor of a correction, also where several corrections of one cause and group make it together.
inline constexpr double least_factor = field_of<&Correction::factor>.min;
inline constexpr double most_factor = field_of<&Correction::factor>.max;

/// What ties the fields of one reading together: those its kind needs are there and no others, its segment is
/// one of the lure's, its date is a date. And corrections of one cause and group: together they make a factor
/// within its limits.
void check_log(Problems& problems, const Document& document);

} // namespace evenfall::document
