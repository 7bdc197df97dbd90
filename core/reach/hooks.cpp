#include "reach/hooks.hpp"

#include "materials/tackle.hpp"
#include "workshop/hook_swing.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::reach {

bool is_hook(const document::Part& part) {
    return part.stage == Stage::rigged && part.reach_m.value_or(0.0) > 0.0 && part.mass_kg > 0.0;
}

int nearest_hook(const document::Part& part) {
    const auto table = materials::hooks();
    const auto off = [&](const materials::Hook& h) { return std::abs(std::log(part.mass_kg / h.mass_kg)); };
    return static_cast<int>(std::min_element(table.begin(), table.end(),
                                             [&](const auto& a, const auto& b) { return off(a) < off(b); }) -
                            table.begin());
}

void change_hook(document::Part& part, int sizes) {
    const auto table = materials::hooks();
    const int was = nearest_hook(part);
    const materials::Hook& from = table[static_cast<std::size_t>(was)];
    const materials::Hook& to = table[static_cast<std::size_t>(was + sizes)];
    part.mass_kg *= to.mass_kg / from.mass_kg;
    if (part.mass_sigma_kg) *part.mass_sigma_kg *= to.mass_kg / from.mass_kg;
    const double longer_m = *part.reach_m * (to.reach_m / from.reach_m - 1.0);
    *part.reach_m += longer_m;
    part.at_m.z -= joints::hanger_share * longer_m;
    const std::string old_size = "size " + std::string(from.size);
    if (part.name.ends_with(old_size))
        part.name.replace(part.name.size() - from.size.size(), from.size.size(), to.size);
}

} // namespace evenfall::reach
