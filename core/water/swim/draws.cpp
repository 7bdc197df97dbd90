#include "water/swim/draws.hpp"

#include "base/root.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace evenfall::swim {

namespace {

constexpr double usual_sigma_ln = 0.16;
constexpr double most_sigma_ln = 0.30;

} // namespace

double widest_swing_rad(const Chain& chain) {
    double widest = 0.0;
    for (const Joint& joint : chain.joints)
        widest = std::max({widest, joint.stop_rad[0], joint.stop_rad[1]});
    return widest;
}

double model_sigma_ln(double widest_swing_rad) {
    const double beyond = (widest_swing_rad - usual_swing_rad) / (most_swing_rad - usual_swing_rad);
    return std::lerp(usual_sigma_ln, most_sigma_ln, std::clamp(beyond, 0.0, 1.0));
}

std::optional<Beats> beats_per_m(const Draws& draws, double sigma_ln) {
    std::vector<double> middles; // ln
    for (const Draw& d : draws) {
        if (d.beats_per_m > 0.0) middles.push_back(std::log(d.beats_per_m));
    }
    if (middles.empty()) return std::nullopt;
    const auto share_below = [&](double ln_beats) {
        double sum = 0.0;
        for (const double middle : middles)
            sum += 0.5 * std::erfc((middle - ln_beats) / (sigma_ln * std::numbers::sqrt2));
        return sum / static_cast<double>(middles.size());
    };
    const auto ends = std::minmax_element(middles.begin(), middles.end());
    const double room = 8.0 * sigma_ln;
    const auto below = [&](double share) {
        return std::exp(root_between([&](double x) { return share_below(x) - share; }, *ends.first - room,
                                     *ends.second + room, {1e-12, 0.0}));
    };
    return Beats{below(0.1), below(0.5), below(0.9)};
}

} // namespace evenfall::swim
