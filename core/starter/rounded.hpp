#pragma once

#include <cmath>

namespace evenfall::starter {

/// To 0.1 mm, the accuracy of knife and ruler.
[[nodiscard]] inline double tenth_mm(double m) {
    return std::round(m * 1e4) / 1e4;
}

} // namespace evenfall::starter
