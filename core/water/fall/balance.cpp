#include "water/fall/balance.hpp"

#include "base/root.hpp"
#include "base/trade.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace evenfall::fall {

using units::rad_from_deg;

namespace {

constexpr double widest_rad = rad_from_deg(89.99);

/// A symmetrical body has a root where it is level. Where the moment turns it away from there, it falls a
/// little nose-down or nose-up: so far aside of such a root the others are looked for.
constexpr double aside_rad = 1e-4;

template <class Moment>
double balanced_between(Moment& moment, double from, double to, double at_from, double at_to) {
    return root_between([&](double pitch) { return moment(pitch); }, from, to, at_from, at_to, {1e-11});
}

/// The root that a change of sign tells, and those beside it where the moment turns the other way there.
template <class Moment>
std::vector<double> all_between(Moment& moment, double from, double to, double at_from, double at_to) {
    const double root = balanced_between(moment, from, to, at_from, at_to);
    std::vector<double> all{root};
    const double before = root - aside_rad;
    const double after = root + aside_rad;
    if (const double at = before > from ? moment(before) : at_from; (at < 0.0) != (at_from < 0.0))
        all.insert(all.begin(), balanced_between(moment, from, before, at_from, at));
    if (const double at = after < to ? moment(after) : at_to; (at < 0.0) != (at_to < 0.0))
        all.push_back(balanced_between(moment, after, to, at, at_to));
    return all;
}

} // namespace

std::optional<double> continued_root(const SteadySums& sums, double pitch_rad, bool rises) {
    MomentByPitch moment(sums);
    double from = std::clamp(pitch_rad, -widest_rad, widest_rad);
    double at_from = moment(from);
    constexpr double same_rad = 1e-10;
    if (std::abs(at_from) <= same_rad * std::hypot(sums.righting_n_m, sums.forward_n_m)) {
        // It is there already, or at a root that turns the other way: then either side of it will do.
        const double beside = moment(from - aside_rad);
        if ((beside > 0.0) != rises) return from;
        from -= aside_rad;
        at_from = beside;
    }
    const double way = (at_from > 0.0) != rises ? 1.0 : -1.0;
    for (double step = rad_from_deg(0.5); step < rad_from_deg(40.0); step *= 1.7) {
        const double to = std::clamp(from + way * step, -widest_rad, widest_rad);
        if (to == from) return std::nullopt;
        const double at_to = moment(to);
        if ((at_to < 0.0) != (at_from < 0.0)) return balanced_between(moment, from, to, at_from, at_to);
        from = to;
        at_from = at_to;
    }
    return std::nullopt;
}

PitchScan::PitchScan(MomentAt moment) : moment_(std::move(moment)), known_(2 * most_deg + 1) {}

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
        return all_between(moment_, pitch_at(deg - 1), pitch_at(deg), last, now);
    if (deg - 2 < -most_deg) return {};
    const double before = at(deg - 2);
    const bool turns =
        (before < 0.0) == (last < 0.0) && std::abs(last) < std::abs(before) && std::abs(last) < std::abs(now);
    if (!turns) return {};
    const double bend = before - 2.0 * last + now;
    const double between = rad_from_deg(deg - 1 + 0.5 * (before - now) / bend);
    const double there = moment_(between);
    if ((there < 0.0) == (last < 0.0)) return {};
    return {balanced_between(moment_, pitch_at(deg - 2), between, before, there),
            balanced_between(moment_, between, pitch_at(deg), there, now)};
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
