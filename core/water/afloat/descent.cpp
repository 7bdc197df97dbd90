#include "water/afloat/descent.hpp"

#include "base/trade.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace evenfall::afloat {

namespace {

constexpr int most_steps = 60;
constexpr double longest_turn_rad = 1.0;

// Imbalance: error of volume as a share of the wanted volume, or of moment as an arm over the lure's length,
// whichever is greater.
constexpr double near =
    1e-3; ///< below this, progress is judged by the imbalance instead of E, whose change is only its square
constexpr double good_enough = 2e-5; ///< accepted where no step improves it: the integrals of sections that
                                     ///< just touch the water are no more accurate

struct NewtonStep {
    double depth_m = 0.0;
    double along_rad = 0.0;
    double across_rad = 0.0;
};

/// Gradient in the rotations, with the depth adjusted to them.
std::array<double, 2> reduced_turn(const FloatState& s, double area_m2) {
    const double k = s.over / area_m2;
    return {s.turn[0] + k * s.cut.along_m3, s.turn[1] + k * s.cut.across_m3};
}

/// Waterplane area used as divisor: a body fully under or out of the water has none.
double safe_area(const Afloat& afloat, const FloatState& s) {
    const double least = 1e-3 * std::cbrt(afloat.hull->volume_m3()) * std::cbrt(afloat.hull->volume_m3());
    return std::max(s.cut.area_m2, least);
}

NewtonStep limited(const NewtonStep& step, double longest_depth_m) {
    const double turn = std::hypot(step.along_rad, step.across_rad);
    const double k = std::min(1.0, std::min(longest_turn_rad / std::max(turn, 1e-300),
                                            longest_depth_m / std::max(std::abs(step.depth_m), 1e-300)));
    return {k * step.depth_m, k * step.along_rad, k * step.across_rad};
}

FloatState moved(const Afloat& afloat, const FloatState& s, const NewtonStep& step) {
    const double turn = std::hypot(step.along_rad, step.across_rad);
    Vec3 up = s.up;
    if (turn > 0.0) {
        const Vec3 towards =
            (step.along_rad / turn) * s.cut.level.along + (step.across_rad / turn) * s.cut.level.across;
        up = turned(s.up, towards, turn);
    }
    return state_at(afloat, up, s.depth_m + step.depth_m);
}

/// Newton step on E with positive second derivatives (by absolute value), so that it goes downhill.
NewtonStep newton_step(const Afloat& afloat, const FloatState& s, bool may_heel) {
    const double area = safe_area(afloat, s);
    const std::array<double, 2> g = reduced_turn(s, area);
    // Below this stiffness a step would be far too long.
    const double floor = 1e-4 * afloat.wanted_m3() * length_scale_m(afloat);
    NewtonStep step;
    if (may_heel) {
        const double middle = 0.5 * (s.stiff_along + s.stiff_across);
        const double half = 0.5 * (s.stiff_along - s.stiff_across);
        const double reach = std::hypot(half, s.stiff_mixed);
        const double angle = reach > 0.0 ? 0.5 * std::atan2(s.stiff_mixed, half) : 0.0;
        const double c = std::cos(angle);
        const double n = std::sin(angle);
        const double first = (c * g[0] + n * g[1]) / std::max(std::abs(middle + reach), floor);
        const double second = (c * g[1] - n * g[0]) / std::max(std::abs(middle - reach), floor);
        step.along_rad = -(c * first - n * second);
        step.across_rad = -(n * first + c * second);
    } else {
        // Beyond nose or tail the heel changes by half a turn, so a step goes most of the way there but never
        // past.
        const double pitch = attitude_of(s.up).pitch_rad;
        constexpr double plumb = 0.5 * std::numbers::pi;
        step.along_rad = std::clamp(-g[0] / std::max(std::abs(s.stiff_along), floor), 0.65 * (pitch - plumb),
                                    0.65 * (pitch + plumb));
    }
    step.depth_m = (-s.over + s.cut.along_m3 * step.along_rad + s.cut.across_m3 * step.across_rad) / area;
    return limited(step, 0.3 * std::cbrt(afloat.hull->volume_m3()));
}

double imbalance(const Afloat& afloat, const FloatState& s, bool may_heel) {
    const std::array<double, 2> g = reduced_turn(s, safe_area(afloat, s));
    const double turn = may_heel ? std::max(std::abs(g[0]), std::abs(g[1])) : std::abs(g[0]);
    return std::max(std::abs(s.over), turn / length_scale_m(afloat)) / afloat.wanted_m3();
}

/// True where the second derivatives are positive: Newton's method leads to a minimum.
bool is_convex_at(const FloatState& s, bool may_heel) {
    if (!may_heel) return s.stiff_along > 0.0;
    return s.stiff_along > 0.0 && s.stiff_along * s.stiff_across > s.stiff_mixed * s.stiff_mixed;
}

template <class OnStep>
DescentEnd walk(const Afloat& afloat, const FloatState& start, bool may_heel, double close_enough,
                OnStep on_step) {
    DescentEnd a{start, false, 0};
    double off = imbalance(afloat, start, may_heel);
    // Rounding error of E; smaller differences mean nothing.
    const double noise = 1e-13 * afloat.wanted_m3() * length_scale_m(afloat);
    for (int k = 0; k < most_steps; ++k) {
        if (off <= close_enough) {
            a.arrived = true;
            return a;
        }
        NewtonStep step = newton_step(afloat, a.state, may_heel);
        FloatState next = moved(afloat, a.state, step);
        ++a.cuts;
        bool accepted = false;
        if (off < near && is_convex_at(a.state, may_heel)) {
            accepted = imbalance(afloat, next, may_heel) < 0.7 * off;
            if (!accepted && off <= good_enough) {
                a.arrived = true;
                return a;
            }
        }
        for (int halving = 0; !accepted; ++halving) {
            accepted = next.energy <= a.state.energy + noise;
            if (accepted) break;
            if (halving == 12) return a;
            step = {0.4 * step.depth_m, 0.4 * step.along_rad, 0.4 * step.across_rad};
            next = moved(afloat, a.state, step);
            ++a.cuts;
        }
        a.state = next;
        off = imbalance(afloat, next, may_heel);
        if (on_step(a.state)) return a;
    }
    a.arrived = off <= good_enough;
    return a;
}

} // namespace

double length_scale_m(const Afloat& afloat) {
    return afloat.hull->length_m();
}

FloatState with_right_volume(const Afloat& afloat, const Vec3& up, double depth_guess_m, int* cuts) {
    // A thousandth is accurate enough to start from; the iteration does the rest.
    const double wanted = afloat.wanted_m3();
    Span bracket = afloat.hull->span(up);
    double depth = std::clamp(depth_guess_m, bracket.low_m, bracket.high_m);
    FloatState s = state_at(afloat, up, depth);
    for (int round = 0; round < 40; ++round) {
        if (cuts != nullptr) ++*cuts;
        if (std::abs(s.over) <= 1e-3 * wanted || bracket.high_m - bracket.low_m < 1e-12) break;
        (s.over > 0.0 ? bracket.high_m : bracket.low_m) = depth;
        const double newton = s.cut.area_m2 > 0.0 ? depth - s.over / s.cut.area_m2 : bracket.low_m;
        depth = newton > bracket.low_m && newton < bracket.high_m ? newton
                                                                  : 0.5 * (bracket.low_m + bracket.high_m);
        s = state_at(afloat, up, depth);
    }
    return s;
}

DescentEnd minimised(const Afloat& afloat, const FloatState& start,
                     const std::function<bool(const FloatState&)>& on_step) {
    return walk(afloat, start, true, 1e-9, [&](const FloatState& s) { return on_step && on_step(s); });
}

DescentEnd trimmed(const Afloat& afloat, const FloatState& start, double close_enough) {
    constexpr double least_tilt = 0.0523; // sine of 3°
    DescentEnd a = walk(afloat, start, false, close_enough,
                        [&](const FloatState& s) { return s.cut.level.tilt < least_tilt; });
    if (a.state.cut.level.tilt < least_tilt) a.arrived = false;
    return a;
}

DescentTrace descent(const Afloat& afloat, const Vec3& start_up) {
    DescentTrace d;
    const double scale = afloat.water_kg_m3 * units::standard_gravity_m_s2;
    const FloatState start =
        with_right_volume(afloat, start_up, dot(start_up, afloat.hull->centroid_m()), &d.cuts);
    d.energy_j.push_back(scale * start.energy);
    const DescentEnd a = minimised(afloat, start, [&](const FloatState& s) {
        d.energy_j.push_back(scale * s.energy);
        return false;
    });
    d.up = a.state.up;
    d.depth_m = a.state.depth_m;
    d.arrived = a.arrived;
    d.cuts += a.cuts;
    return d;
}

} // namespace evenfall::afloat
