#include "materials/water_density.hpp"

#include "materials/water_properties.hpp"

#include <cmath>

namespace evenfall::materials {

namespace {

// Reference-composition sea water of practical salinity 35 (Millero et al. 2008, Deep-Sea Research I 55,
// 50–72).
constexpr double absolute_at_practical_35 = 35.16504;
constexpr double t68_per_t90 = 1.00024;

} // namespace

double eos80_density_kg_m3(double practical_salinity, double t68_c) {
    const double s = practical_salinity;
    const double t = t68_c;
    const double fresh =
        999.842594 +
        t * (6.793952e-2 + t * (-9.095290e-3 + t * (1.001685e-4 + t * (-1.120083e-6 + t * 6.536332e-9))));
    const double a = 8.24493e-1 + t * (-4.0899e-3 + t * (7.6438e-5 + t * (-8.2467e-7 + t * 5.3875e-9)));
    const double b = -5.72466e-3 + t * (1.0227e-4 + t * -1.6546e-6);
    const double c = 4.8314e-4;
    return fresh + s * (a + b * std::sqrt(s) + c * s);
}

Outcome<double> water_density_kg_m3(double temperature_c, double salinity_g_kg, std::string_view where) {
    if (auto problems = water_problems(temperature_c, salinity_g_kg, where); !problems.empty())
        return problems;
    return eos80_density_kg_m3(salinity_g_kg * 35.0 / absolute_at_practical_35, temperature_c * t68_per_t90);
}

} // namespace evenfall::materials
