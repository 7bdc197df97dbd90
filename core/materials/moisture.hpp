#pragma once

#include "base/outcome.hpp"

namespace evenfall::materials {

/// Specific gravity at `percent` of moisture from the green one, and the reverse: Gx = Gb/[1 − 0.265 Gb(1 −
/// x/30)] (Wood Handbook FPL-GTR-282, 2021, eq. 4-13). Moisture in % of oven-dry mass, 0 to 30.
[[nodiscard]] double gravity_at(double green, double percent);
[[nodiscard]] double green_gravity(double gravity, double percent);

/// Density [kg/m³] at `to_percent` of a board weighed and measured at `from_percent`; moisture in % of
/// oven-dry mass, 0 to 30. Specific gravity from ρ = 1000·Gx(1 + x/100), from that the green one and back to
/// the new moisture by gravity_at (eqs. 4-13 and 4-14): swelling is included. Refuses by name:
/// "/density_g_cm3" (0.03 to 1.5 g/cm³), "/from_percent", "/to_percent".
[[nodiscard]] Outcome<double> density_at_moisture(double density_kg_m3, double from_percent,
                                                  double to_percent);

} // namespace evenfall::materials
