#pragma once

#include "base/outcome.hpp"

namespace evenfall::glue {

/// A twisted eye glued into its hole.
struct EyeHole {
    double bit_m = 2.0e-3;  ///< diameter of the hole, twice the wire to 20 mm
    double wire_m = 0.9e-3; ///< 0.2 to 3 mm
    double pitch_m = 0.0;   ///< of the twist; 0 = straight legs
    double glued_m = 0.020; ///< depth, 1 to 100 mm
};

/// Volume of glue round the two legs [m³]: π/4·D²·ℓ − 2·π/4·d²·ℓ·√(1 + (πd/p)²); the centre line of each leg
/// is a helix of radius d/2. By plain geometry. Refuses by name: "/wire_mm", "/bit_mm", "/pitch_mm",
/// "/glued_mm".
[[nodiscard]] Outcome<double> gap_m3(const EyeHole& hole);

} // namespace evenfall::glue
