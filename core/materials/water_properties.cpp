#include "materials/water_properties.hpp"

#include "materials/water_density.hpp"
#include "materials/water_viscosity.hpp"

#include <cmath>

namespace evenfall::materials {

namespace {

Problem refusal(double value, std::string_view where, const char* key, const Sentence& limit,
                const Sentence& sentence) {
    const ProblemCode code = std::isfinite(value) ? ProblemCode::out_of_range : ProblemCode::not_a_number;
    return {code, std::string(where) + key, limit, sentence};
}

} // namespace

Problems water_problems(double temperature_c, double salinity_g_kg, std::string_view where) {
    Problems problems;
    // Written so that NaN fails too.
    if (!(temperature_c >= 0.0 && temperature_c <= warmest_water_c)) {
        const Sentence limit = range_text(0.0, warmest_water_c, units::Quantity::temperature);
        problems.push_back(refusal(temperature_c, where, "/temperature_C", limit,
                                   "The water temperature must be from " + limit + "."));
    }
    if (!(salinity_g_kg >= 0.0 && salinity_g_kg <= saltiest_water_g_kg)) {
        problems.push_back(refusal(salinity_g_kg, where, "/salinity_g_kg", "0 to 40 g/kg",
                                   "The salt in the water must be from 0 to 40 g per kg."));
    }
    return problems;
}

Outcome<WaterProperties> water_properties(double temperature_c, double salinity_g_kg,
                                          std::string_view where) {
    const auto density = water_density_kg_m3(temperature_c, salinity_g_kg, where);
    if (!density) return density.problems();
    const auto viscosity = water_viscosity_pa_s(temperature_c, salinity_g_kg, where);
    if (!viscosity) return viscosity.problems();
    return WaterProperties{*density, *viscosity};
}

} // namespace evenfall::materials
