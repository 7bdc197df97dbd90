#include "joints/hook_swing.hpp"

#include "materials/solids.hpp"

#include <cmath>

namespace evenfall::joints {

std::vector<HookFoul> hook_fouls(const preset::Document& document) {
    std::vector<HookFoul> out;
    for (std::size_t i = 0; i < document.parts.size(); ++i) {
        const preset::Part& hook = document.parts[i];
        const double reach = hook.reach_m.value_or(0.0);
        if (reach <= 0.0) continue;
        const auto add = [&](Fouls what, std::size_t other, double over_m) {
            if (over_m > 0.0) out.push_back({static_cast<int>(i), what, static_cast<int>(other), over_m});
        };
        for (std::size_t k = 0; k < document.parts.size(); ++k) {
            const preset::Part& other = document.parts[k];
            const double apart = std::abs(other.at_m.x - hook.at_m.x);
            if (k > i && other.reach_m.value_or(0.0) > 0.0) add(Fouls::hook, k, reach + *other.reach_m - apart);
            if (materials::is_soft(other.material) && other.at_m.x > hook.at_m.x) add(Fouls::tail, k, reach - apart);
        }
        if (document.tail && document.tail->x_m > hook.at_m.x) {
            const double over_m = reach - (document.tail->x_m - hook.at_m.x);
            if (over_m > 0.0) out.push_back({static_cast<int>(i), Fouls::tail, -1, over_m});
        }
        for (std::size_t k = 0; k < document.joints.size(); ++k) {
            add(Fouls::joint, k, reach - std::abs(document.joints[k].at_m - hook.at_m.x));
        }
    }
    return out;
}

}  // namespace evenfall::joints
