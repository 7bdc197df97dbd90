#pragma once

#include "base/outcome.hpp"

#include <string_view>

namespace evenfall::materials {

/// Density of air-free water at one atmosphere.
///
///   temperature_c  water temperature [°C, ITS-90], 0 to 40
///   salinity_g_kg  absolute salinity [g/kg], 0 to 40
///   where          pointer for problems, as in water_properties.hpp
///   returns        density [kg/m³], 992.2 to 1032.1
///
/// Error: within 0.0085 kg/m³ of TEOS-10 over the whole range, 0.002 in fresh water (test against the frozen
/// TEOS-10 table): under 0.001 g for a lure of 100 cm³. Fresh water is densest near 4 °C: the inverse has two
/// branches. Source: EOS-80: Millero and Poisson 1981, Deep-Sea Research 28A, 625–629, in the form of UNESCO
/// technical paper 44 (Fofonoff and Millard 1983), with practical salinity = absolute × 35/35.16504 and t68 =
/// 1.00024 t90.
[[nodiscard]] Outcome<double> water_density_kg_m3(double temperature_c, double salinity_g_kg,
                                                  std::string_view where = "/water");

/// The EOS-80 polynomial: practical salinity [1] and temperature [°C, IPTS-68] → density at one atmosphere
/// [kg/m³]. Published for salinities 0 to 42 and −2 to 40 °C; the range is not checked here.
[[nodiscard]] double eos80_density_kg_m3(double practical_salinity, double t68_c);

} // namespace evenfall::materials
