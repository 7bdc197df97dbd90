#pragma once

#include "base/outcome.hpp"

#include <string_view>

namespace evenfall::materials {

/// Dynamic viscosity of water at one atmosphere.
///
///   temperature_c  water temperature [°C], 0 to 40
///   salinity_g_kg  absolute salinity [g/kg], 0 to 40
///   where          pointer for problems, as in water_properties.hpp
///   returns        dynamic viscosity [Pa·s], 0.65e-3 to 1.93e-3
///
/// Error: fresh water within 0.02 % of IAPWS R12-08 (test against the frozen table); with salt ±1.5 % as the
/// paper states. The speed of fall changes by a tenth of that at most. Source: Sharqawy, Lienhard and Zubair
/// 2010, Desalination and Water Treatment 16, 354–380, eqs. 22 and 23 (the last terms of the fresh-water part
/// from memory, hence the check against IAPWS).
[[nodiscard]] Outcome<double> water_viscosity_pa_s(double temperature_c, double salinity_g_kg,
                                                   std::string_view where = "/water");

} // namespace evenfall::materials
