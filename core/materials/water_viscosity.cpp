#include "materials/water_viscosity.hpp"

#include "materials/water_properties.hpp"

namespace evenfall::materials {

Outcome<double> water_viscosity_pa_s(double temperature_c, double salinity_g_kg, std::string_view where) {
    if (auto problems = water_problems(temperature_c, salinity_g_kg, where); !problems.empty())
        return problems;
    const double t = temperature_c;
    const double s = salinity_g_kg / 1000.0; // kg/kg
    const double shifted = t + 64.993;
    const double fresh = 4.2844e-5 + 1.0 / (0.157 * shifted * shifted - 91.296);
    const double a = 1.541 + t * (1.998e-2 - t * 9.52e-5);
    const double b = 7.974 + t * (-7.561e-2 + t * 4.724e-4);
    return fresh * (1.0 + s * (a + b * s));
}

} // namespace evenfall::materials
