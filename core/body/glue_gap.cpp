#include "body/glue_gap.hpp"

#include "base/limits.hpp"

#include <cmath>
#include <numbers>

namespace evenfall::glue {

Outcome<double> gap_m3(const EyeHole& h) {
    using units::Unit;
    Problems problems;
    units::check_limit({"/wire_mm", "The wire", h.wire_m, 0.2e-3, 3e-3, Unit::mm, 1}, problems);
    units::check_limit({"/bit_mm", "The hole of a twisted eye", h.bit_m, 2.0 * h.wire_m, 0.02, Unit::mm, 2},
                       problems);
    if (h.pitch_m != 0.0)
        units::check_limit({"/pitch_mm", "The twist's pitch", h.pitch_m, 2.0 * h.wire_m, 0.1, Unit::mm, 2},
                           problems);
    units::check_limit({"/glued_mm", "The glued depth", h.glued_m, 1e-3, 0.1, Unit::mm, 0}, problems);
    if (!problems.empty()) return problems;
    const double slope = h.pitch_m > 0.0 ? std::numbers::pi * h.wire_m / h.pitch_m : 0.0;
    const double legs = 2.0 * h.wire_m * h.wire_m * std::sqrt(1.0 + slope * slope);
    return std::numbers::pi / 4.0 * h.glued_m * (h.bit_m * h.bit_m - legs);
}

} // namespace evenfall::glue
