#pragma once

#include "base/problem.hpp"
#include "preset/document.hpp"

namespace evenfall::preset {

/// What ties the fields of one reading together: those its kind needs are there and no others, its segment is one of the lure's, its
/// date is a date.
void check_log(Problems& problems, const Document& document);

}  // namespace evenfall::preset
