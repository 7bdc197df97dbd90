#include "water/swim/compare.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace evenfall::swim {

namespace {

constexpr double least_told = 0.08;

/// Of sorted values, the one below which this share lies; between two in proportion.
double quantile(const std::vector<double>& sorted, double share) {
    const double at = share * static_cast<double>(sorted.size() - 1);
    const auto k = std::min(static_cast<std::size_t>(at), sorted.size() - 1);
    const auto next = std::min(k + 1, sorted.size() - 1);
    return sorted[k] + (at - static_cast<double>(k)) * (sorted[next] - sorted[k]);
}

std::array<double, 3> low_mid_high(std::vector<double> ratios) {
    std::sort(ratios.begin(), ratios.end());
    return {quantile(ratios, 0.1), quantile(ratios, 0.5), quantile(ratios, 0.9)};
}

Told told(const std::array<double, 3>& ratio) {
    if (ratio[0] > 1.0 && ratio[1] > 1.0 + least_told) return Told::more;
    if (ratio[2] < 1.0 && ratio[1] < 1.0 - least_told) return Told::less;
    return Told::not_told;
}

} // namespace

Change compare(const Draws& before, const Draws& after) {
    Change c;
    std::vector<double> beats, swing;
    c.of = static_cast<int>(std::min(before.size(), after.size()));
    for (std::size_t i = 0; i < static_cast<std::size_t>(c.of); ++i) {
        const bool was = before[i].beats_per_m > 0.0, is = after[i].beats_per_m > 0.0;
        c.swims_before += was ? 1 : 0;
        c.swims_after += is ? 1 : 0;
        if (!was || !is) continue;
        beats.push_back(after[i].beats_per_m / before[i].beats_per_m);
        swing.push_back(after[i].tail_swing_m / before[i].tail_swing_m);
    }
    c.both_swim = static_cast<int>(beats.size());
    if (beats.empty()) return c;
    c.beats_ratio = low_mid_high(std::move(beats));
    c.swing_ratio = low_mid_high(std::move(swing));
    if (2 * c.both_swim < c.of) return c;
    c.beats = told(c.beats_ratio);
    c.swing = told(c.swing_ratio);
    return c;
}

} // namespace evenfall::swim
