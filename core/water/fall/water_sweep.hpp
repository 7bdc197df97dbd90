#pragma once

#include "base/outcome.hpp"
#include "document/document.hpp"
#include "water/fall/descent.hpp"

#include <optional>
#include <vector>

namespace evenfall::fall {

/// The finished lure in one other water.
struct SweepPoint {
    double temperature_c = 0.0;
    double salinity_g_kg = 0.0;
    double in_water_kg = 0.0;         ///< of a lure whose size stays constant: the usual value
    double swelled_in_water_kg = 0.0; ///< of one that expands with temperature like wood: an alternative
    std::optional<double>
        vertical_m_s; ///< of the main steady fall, down positive; absent where it suspends or only tumbles
};

struct Sweep {
    std::vector<SweepPoint> by_temperature; ///< at the fishing water's salinity, 0 to 40 °C
    std::vector<SweepPoint> by_salinity;    ///< at the fishing water's temperature, 0 to 40 g/kg
    /// Temperatures at that salinity at which it suspends, ascending: none, one, or two on either side of
    /// water's densest.
    std::vector<double> still_at_c;
};

/// Volume expansion of sealed wood per kelvin: 6e-5, the sum along, across and around the grain (Wood
/// Handbook, thermal expansion of oven-dry wood, from memory: 4e-6, 23e-6 and 31e-6 for light wood); lead and
/// epoxy are of the same order. Moisture changes wood far more, but slowly and not in sealed wood.
inline constexpr double wood_growth_1_k = 6e-5;

/// Effect of temperature and salinity on a lure of this shape and weight. Warm water is less dense and less
/// viscous: the lure gets heavier in it and meets less friction, and both make it fall faster. Soaking, gas
/// and currents are not included.
///
///   points   in each list, 2 to 201
///   fails    water outside 0 to 40 °C or 0 to 40 g/kg, or points outside its range
[[nodiscard]] Outcome<Sweep> water_sweep(const FallingLure& lure, const document::Water& fishing,
                                         int points = 21);

} // namespace evenfall::fall
