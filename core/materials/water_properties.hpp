#pragma once

#include "base/outcome.hpp"

#include <string_view>

namespace evenfall::materials {

// Water at one atmosphere, by temperature [°C, ITS-90] and absolute salinity [g of salt per kg of sea water].
// Absolute salinity is not practical salinity: sea water of practical salinity 35 holds 35.165 g/kg.

inline constexpr double warmest_water_c = 40.0;     ///< 0 to 40 °C
inline constexpr double saltiest_water_g_kg = 40.0; ///< 0 to 40 g/kg

struct WaterProperties {
    double density_kg_m3 = 0.0;
    double viscosity_pa_s = 0.0; ///< dynamic
};

/// Density and viscosity together (accuracy: water_density.hpp and water_viscosity.hpp).
///
///   where    pointer of the water in the document: "/water" or "/tub"
///   fails    outside 0 to 40 °C or 0 to 40 g/kg, NaN included: a problem at where + "/temperature_C", limit
///            "0 to 40 °C", and at where + "/salinity_g_kg", limit "0 to 40 g/kg". No clamping.
[[nodiscard]] Outcome<WaterProperties> water_properties(double temperature_c, double salinity_g_kg,
                                                        std::string_view where = "/water");

/// The problems of such a water; empty where it is within the limits.
[[nodiscard]] Problems water_problems(double temperature_c, double salinity_g_kg, std::string_view where);

} // namespace evenfall::materials
