#pragma once

// The pitches at which drag leaves no moment over: where a lure falls steadily.

#include "base/root.hpp"
#include "base/trade.hpp"
#include "water/fall/motion.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <optional>
#include <vector>

namespace evenfall::fall {

/// The moment left at one pitch after the other [N·m]; each search for the speeds begins at the last ones.
class MomentByPitch {
public:
    explicit MomentByPitch(const SteadySums& sums) : sums_(sums) {}
    double operator()(double pitch_rad) {
        speeds_ = sums_.speeds(pitch_rad, speeds_);
        return sums_.moment_n_m(pitch_rad, speeds_);
    }

private:
    const SteadySums& sums_;
    SteadySums::Speeds speeds_;
};

/// What turning by 1e-10 rad takes of the weight's moment [N·m]: nothing.
[[nodiscard]] inline double nothing_of(const SteadySums& sums) {
    return 1e-10 * std::hypot(sums.righting_n_m, sums.forward_n_m);
}

/// The moment left by pitch. It may keep what it found last.
using MomentAt = std::function<double(double pitch_rad)>;

namespace balance {

inline constexpr double widest_rad = units::rad_from_deg(89.99);

/// A symmetrical body has a root where it is level. Where the moment turns it away from there, it falls a
/// little nose-down or nose-up: so far aside of such a root the others are looked for.
inline constexpr double aside_rad = 1e-4;

template <class Moment>
double root_of(Moment& moment, double from, double to, double at_from, double at_to) {
    return root_between([&](double pitch) { return moment(pitch); }, from, to, at_from, at_to, {1e-11});
}

} // namespace balance

/// The root of a moment that continues the one at `pitch`, where the moment falls (or `rises`) with pitch;
/// absent where there is none within 84°, the range of the steps. `nothing_n_m`: so small a moment is none.
template <class Moment>
[[nodiscard]] std::optional<double> continued_root(Moment moment, double nothing_n_m, double pitch_rad,
                                                   bool rises = false) {
    double from = std::clamp(pitch_rad, -balance::widest_rad, balance::widest_rad);
    double at_from = moment(from);
    if (std::abs(at_from) <= nothing_n_m) {
        // It is there already, or at a root that turns the other way: then either side of it will do.
        const double beside = moment(from - balance::aside_rad);
        if ((beside > 0.0) != rises) return from;
        from -= balance::aside_rad;
        at_from = beside;
    }
    const double way = (at_from > 0.0) != rises ? 1.0 : -1.0;
    for (double step = units::rad_from_deg(0.5); step < units::rad_from_deg(40.0); step *= 1.7) {
        const double to = std::clamp(from + way * step, -balance::widest_rad, balance::widest_rad);
        if (to == from) return std::nullopt;
        const double at_to = moment(to);
        if ((at_to < 0.0) != (at_from < 0.0)) return balance::root_of(moment, from, to, at_from, at_to);
        from = to;
        at_from = at_to;
    }
    return std::nullopt;
}

/// A fall whose pitch is within this of the hang pitch continues it.
inline constexpr double near_hang_rad = units::rad_from_deg(10.0);

/// The root of changed sums that continues the one at `pitch`.
[[nodiscard]] inline std::optional<double> continued_root(const SteadySums& sums, double pitch_rad,
                                                          bool rises = false) {
    return continued_root(MomentByPitch(sums), nothing_of(sums), pitch_rad, rises);
}

/// A scan of a moment in steps of 1° from −89.99° to 89.99°; each change of sign is refined to 1e-11 rad.
/// Two roots within one step show as a minimum of |moment|; the parabola through it then tells where to look
/// between them. Moments are worked out as they are asked for.
class PitchScan {
public:
    explicit PitchScan(MomentAt moment);

    /// Every root, ascending.
    [[nodiscard]] std::vector<double> roots();

    /// The root nearest to a pitch of those that are `fit`. The scan goes outwards from there, and no farther
    /// than it must.
    template <class Fit>
    [[nodiscard]] std::optional<double> nearest(double pitch_rad, const Fit& fit);

private:
    static constexpr int most_deg = 90;
    [[nodiscard]] static double pitch_at(int deg);
    [[nodiscard]] double at(int deg);
    /// Those that the steps up to this degree show: they lie in the two degrees below it.
    [[nodiscard]] std::vector<double> roots_up_to(int deg);

    MomentAt moment_;
    std::vector<std::optional<double>> known_;
};

template <class Fit>
std::optional<double> PitchScan::nearest(double pitch_rad, const Fit& fit) {
    std::optional<double> best;
    const auto off = [&](double root) { return std::abs(root - pitch_rad); };
    const auto take = [&](int deg) {
        for (const double root : roots_up_to(deg)) {
            if ((!best || off(root) < off(*best)) && fit(root)) best = root;
        }
    };
    // A root of the steps up to `low` may lie as near as `low` itself, one of those up to `high` two below
    // it.
    int low = std::clamp(static_cast<int>(std::floor(units::deg_from_rad(pitch_rad))), -most_deg, most_deg);
    int high = low + 1;
    while (low > -most_deg || high <= most_deg) {
        const double low_off = low > -most_deg ? std::max(0.0, pitch_rad - pitch_at(low)) : 1e9;
        const double high_off = high <= most_deg ? std::max(0.0, pitch_at(high - 2) - pitch_rad) : 1e9;
        if (best && off(*best) <= std::min(low_off, high_off)) break;
        if (low_off < high_off)
            take(low--);
        else
            take(high++);
    }
    return best;
}

} // namespace evenfall::fall
