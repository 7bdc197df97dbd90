#pragma once

#include "base/outcome.hpp"
#include "base/unit.hpp"

#include <string>

namespace evenfall::units {

/// One typed number of a sum that is no field of the document, and what it may be. Values and limits in the
/// core's unit.
struct Limited {
    const char* path = ""; ///< "/loss"
    const char* what = ""; ///< "Loss": begins the sentence
    double value = 0.0;
    double least = 0.0;
    double most = 0.0;
    Unit unit = Unit::one; ///< the sentence speaks in it
    int decimals = 0;
};

/// Adds not_a_number or out_of_range to `out` where the value is no number or off its limits.
void check_limit(const Limited& number, Problems& out);

} // namespace evenfall::units
