#include "water/fall/balance.hpp"

#include "base/trade.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace evenfall::fall {

using units::rad_from_deg;

namespace {

/// The root that a change of sign tells, and those beside it where the moment turns the other way there.
template <class Moment>
std::vector<double> all_between(Moment& moment, double from, double to, double at_from, double at_to) {
    const double root = balance::root_of(moment, from, to, at_from, at_to);
    std::vector<double> all{root};
    const double before = root - balance::aside_rad;
    const double after = root + balance::aside_rad;
    if (const double at = before > from ? moment(before) : at_from; (at < 0.0) != (at_from < 0.0))
        all.insert(all.begin(), balance::root_of(moment, from, before, at_from, at));
    if (const double at = after < to ? moment(after) : at_to; (at < 0.0) != (at_to < 0.0))
        all.push_back(balance::root_of(moment, after, to, at, at_to));
    return all;
}

} // namespace

PitchScan::PitchScan(MomentAt moment) : moment_(std::move(moment)), known_(2 * most_deg + 1) {}

double PitchScan::pitch_at(int deg) {
    return std::clamp(rad_from_deg(deg), -balance::widest_rad, balance::widest_rad);
}

double PitchScan::at(int deg) {
    std::optional<double>& known = known_[static_cast<std::size_t>(deg + most_deg)];
    if (!known) known = moment_(pitch_at(deg));
    return *known;
}

std::vector<double> PitchScan::roots_up_to(int deg) {
    const double now = at(deg);
    const double last = at(deg - 1);
    if ((last < 0.0) != (now < 0.0)) return all_between(moment_, pitch_at(deg - 1), pitch_at(deg), last, now);
    if (deg - 2 < -most_deg) return {};
    const double before = at(deg - 2);
    const bool turns =
        (before < 0.0) == (last < 0.0) && std::abs(last) < std::abs(before) && std::abs(last) < std::abs(now);
    if (!turns) return {};
    const double bend = before - 2.0 * last + now;
    const double between = rad_from_deg(deg - 1 + 0.5 * (before - now) / bend);
    const double there = moment_(between);
    if ((there < 0.0) == (last < 0.0)) return {};
    return {balance::root_of(moment_, pitch_at(deg - 2), between, before, there),
            balance::root_of(moment_, between, pitch_at(deg), there, now)};
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
