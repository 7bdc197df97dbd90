#include "water/fall/balance.hpp"

#include "base/root.hpp"
#include "base/trade.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::fall {

using units::rad_from_deg;

namespace {

constexpr double widest_rad = rad_from_deg(89.99);

double balanced_between(const SteadySums& sums, double from, double to, double at_from, double at_to) {
    MomentByPitch moment(sums);
    return root_between([&](double pitch) { return moment(pitch); }, from, to, at_from, at_to, {1e-11});
}

} // namespace

std::optional<double> continued_root(const SteadySums& sums, double pitch_rad, bool rises) {
    MomentByPitch moment(sums);
    double from = std::clamp(pitch_rad, -widest_rad, widest_rad);
    double at_from = moment(from);
    if (at_from == 0.0) {
        // A symmetrical body has a root where it is level. Where the moment turns it away from there, it
        // falls a little nose-down or nose-up, and either will do.
        constexpr double aside = 1e-4;
        const double beside = moment(from - aside);
        if ((beside > 0.0) != rises) return from;
        from -= aside;
        at_from = beside;
    }
    const double way = (at_from > 0.0) != rises ? 1.0 : -1.0;
    for (double step = rad_from_deg(0.5); step < rad_from_deg(40.0); step *= 1.7) {
        const double to = std::clamp(from + way * step, -widest_rad, widest_rad);
        if (to == from) return std::nullopt;
        const double at_to = moment(to);
        if ((at_to < 0.0) != (at_from < 0.0)) return balanced_between(sums, from, to, at_from, at_to);
        from = to;
        at_from = at_to;
    }
    return std::nullopt;
}

PitchScan::PitchScan(const SteadySums& sums) : moment_(sums), sums_(sums), known_(2 * most_deg + 1) {}

double PitchScan::pitch_at(int deg) {
    return std::clamp(rad_from_deg(deg), -widest_rad, widest_rad);
}

double PitchScan::at(int deg) {
    std::optional<double>& known = known_[static_cast<std::size_t>(deg + most_deg)];
    if (!known) known = moment_(pitch_at(deg));
    return *known;
}

std::vector<double> PitchScan::roots_up_to(int deg) {
    const double now = at(deg);
    const double last = at(deg - 1);
    if ((last < 0.0) != (now < 0.0))
        return {balanced_between(sums_, pitch_at(deg - 1), pitch_at(deg), last, now)};
    if (deg - 2 < -most_deg) return {};
    const double before = at(deg - 2);
    const bool turns =
        (before < 0.0) == (last < 0.0) && std::abs(last) < std::abs(before) && std::abs(last) < std::abs(now);
    if (!turns) return {};
    const double bend = before - 2.0 * last + now;
    const double between = rad_from_deg(deg - 1 + 0.5 * (before - now) / bend);
    const double there = moment_(between);
    if ((there < 0.0) == (last < 0.0)) return {};
    return {balanced_between(sums_, pitch_at(deg - 2), between, before, there),
            balanced_between(sums_, between, pitch_at(deg), there, now)};
}

std::vector<double> PitchScan::roots() {
    std::vector<double> all;
    for (int deg = 1 - most_deg; deg <= most_deg; ++deg) {
        for (const double root : roots_up_to(deg))
            all.push_back(root);
    }
    return all;
}

} // namespace evenfall::fall
