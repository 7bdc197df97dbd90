#pragma once

#include "base/outcome.hpp"
#include "base/unit.hpp"

#include <string>

namespace evenfall::units {

/// A typed number that is not a field of the document, with its limits. Value and limits in the core's unit.
struct LimitedNumber {
    const char* path = ""; ///< "/loss"
    const char* what = ""; ///< "Loss": the first word of the sentence
    double value = 0.0;
    double least = 0.0;
    double most = 0.0;
    Unit unit =
        Unit::one; ///< used in the sentence: a metric unit, which becomes the one that is set, or one for all
    int decimals = 0;
};

/// Adds not_a_number or out_of_range to `out` where the value is not finite or outside its limits.
void check_limit(const LimitedNumber& number, Problems& out);

} // namespace evenfall::units
