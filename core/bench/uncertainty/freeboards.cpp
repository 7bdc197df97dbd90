#include "bench/uncertainty/freeboards.hpp"

#include "base/root.hpp"

#include <algorithm>
#include <utility>

namespace evenfall::bench {

Freeboards::Freeboards(const afloat::FloatingHull& hull, const Vec3& g_m, double water_kg_m3)
    : hull_(&hull), g_m_(g_m), water_kg_m3_(water_kg_m3), whole_kg_(water_kg_m3 * hull.volume_m3()),
      lightest_kg_(-whole_kg_) {
    known_.push_back({-1e-6 * whole_kg_, 0.0, {}}); // awash
}

std::optional<double> Freeboards::freeboard_at(double in_water_kg) {
    const auto at = std::partition_point(known_.begin(), known_.end(),
                                         [&](const Known& k) { return k.in_water_kg < in_water_kg; });
    const std::optional<afloat::Rest>& beside = at == known_.begin() ? at->rest : (at - 1)->rest;
    auto rest = afloat::upright_rest({hull_, whole_kg_ + in_water_kg, g_m_, water_kg_m3_},
                                     beside ? &*beside : nullptr);
    if (!rest) return std::nullopt;
    const double freeboard_m = rest->freeboard_m;
    known_.insert(at, {in_water_kg, freeboard_m, std::move(rest)});
    return freeboard_m;
}

std::optional<Freeboards::Weight> Freeboards::in_water_for(double freeboard_m) {
    // Freeboard grows as the lure gets lighter: between awash and 98 % dry, or 60 % dry where so light a lure
    // has no upright rest.
    for (const double driest : {-0.98 * whole_kg_, -0.6 * whole_kg_}) {
        if (driest < lightest_kg_) continue;
        lightest_kg_ = driest;
        while (known_.front().in_water_kg < driest)
            known_.erase(known_.begin());
        if (known_.front().in_water_kg > driest && !freeboard_at(driest)) continue;
        if (known_.front().freeboard_m < freeboard_m) return std::nullopt; // no weight has more freeboard
        bool lost = false;
        const double kg = between_known(freeboard_m, lost);
        if (lost) continue;
        // The slope from a rest a little lighter. Where the freeboard jumps, it takes no weight at all.
        const double lighter = std::max(kg - 1e-3 * whole_kg_, 0.5 * (kg + driest));
        const auto more_m = freeboard_at(lighter);
        if (!more_m || !(*more_m > freeboard_m)) return std::nullopt;
        return Weight{kg, (lighter - kg) / (*more_m - freeboard_m)};
    }
    return std::nullopt;
}

double Freeboards::between_known(double freeboard_m, bool& lost) {
    const auto heavier = std::partition_point(known_.begin() + 1, known_.end(),
                                              [&](const Known& k) { return k.freeboard_m > freeboard_m; });
    if (heavier == known_.end()) return known_.back().in_water_kg;
    constexpr double within_m = 1e-9; // a millionth of what a rule is good to
    const Known light = *(heavier - 1);
    const Known heavy = *heavier;
    const auto excess_m = [&](double in_water_kg) {
        const auto there = freeboard_at(in_water_kg);
        lost = lost || !there;
        return there ? *there - freeboard_m : 0.0;
    };
    return root_between(excess_m, light.in_water_kg, heavy.in_water_kg, light.freeboard_m - freeboard_m,
                        heavy.freeboard_m - freeboard_m, {1e-12 * whole_kg_, within_m});
}

} // namespace evenfall::bench
