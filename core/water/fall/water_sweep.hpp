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
    double in_water_kg = 0.0; ///< of a lure whose size stays: the usual figure
    double swelled_in_water_kg =
        0.0; ///< of one that grows with warmth like wood: where the truth may lie instead
    std::optional<double>
        vertical_m_s; ///< of the main steady fall, down positive; absent where it hangs still or only tumbles
};

struct Sweep {
    std::vector<SweepPoint> by_temperature; ///< at the fishing water's salinity, 0 to 40 °C
    std::vector<SweepPoint> by_salinity;    ///< at the fishing water's temperature, 0 to 40 g/kg
    /// Temperatures at that salinity at which it hangs still, ascending: none, one, or two either side of
    /// water's densest.
    std::vector<double> still_at_c;
};

/// Growth of sealed wood in volume per kelvin: 6e-5, as along, across and around the grain together (Wood
/// Handbook, thermal expansion of oven-dry wood, from memory: 4e-6, 23e-6 and 31e-6 for light wood), lead and
/// epoxy being of the same order. Moisture moves wood far more, but slowly and not in sealed wood.
inline constexpr double wood_growth_1_k = 6e-5;

/// Where a lure of this shape and weight goes as the water warms or turns salt. Warm water is thinner
/// (viscosity) and lighter: the lure grows heavier in it and meets less friction, both of which make it fall
/// faster. Soaking, gas and currents aside.
///
///   points   in each list, 2 to 201
///   fails    water outside 0 to 40 °C or 0 to 40 g/kg, or points outside its range
[[nodiscard]] Outcome<Sweep> water_sweep(const Descent& lure, const document::Water& fishing, int points = 21);

} // namespace evenfall::fall
