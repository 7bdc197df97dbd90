#include "joints/hook_swing.hpp"

#include <cmath>

namespace evenfall::joints {

namespace {

bool is_soft(const preset::Part& part) { return part.material == "plastisol" || part.material == "silicone"; }

}  // namespace

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
            if (is_soft(other) && other.at_m.x > hook.at_m.x) add(Fouls::tail, k, reach - apart);
        }
        for (std::size_t k = 0; k < document.joints.size(); ++k) {
            add(Fouls::joint, k, reach - std::abs(document.joints[k].at_m - hook.at_m.x));
        }
    }
    return out;
}

}  // namespace evenfall::joints
