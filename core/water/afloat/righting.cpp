#include "water/afloat/righting.hpp"

#include "base/root.hpp"
#include "base/trade.hpp"
#include "water/afloat/descent.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace evenfall::afloat {

namespace {

/// Imbalance left at a point of the curve before the last, linear correction. E is stationary in depth and
/// pitch, so the remaining error of the arm is of second order: below 1e-7 m.
constexpr double curve_balance = 3e-4;

/// A point of the curve and its depth, from which the next one starts.
struct CurveState {
    RightingPoint point;
    double depth_m = 0.0;
};

CurveState curve_state_at(const Afloat& afloat, TrimMode trim, double heel_rad, double pitch_guess_rad,
                          double depth_guess_m) {
    CurveState h;
    h.point.heel_rad = heel_rad;
    const Vec3 up = up_of({pitch_guess_rad, heel_rad});
    FloatState s;
    if (trim == TrimMode::free) {
        const DescentEnd a = trimmed(afloat, state_at(afloat, up, depth_guess_m), curve_balance);
        h.point.is_trimmed = a.arrived;
        s = a.state;
    }
    if (trim == TrimMode::fixed || !h.point.is_trimmed) {
        s = state_at(afloat, up, afloat.hull->depth_for(up, afloat.wanted_m3(), depth_guess_m));
    }
    h.point.pitch_rad = attitude_of(s.up).pitch_rad;
    h.depth_m = s.depth_m;
    double turn = s.turn[1];
    if (trim == TrimMode::free && h.point.is_trimmed && s.cut.area_m2 > 0.0 && s.stiff_along > 0.0) {
        const double sink = -s.over / s.cut.area_m2;
        const double along = -(s.turn[0] - sink * s.cut.along_m3) / s.stiff_along;
        turn += -sink * s.cut.across_m3 + along * s.stiff_mixed;
        h.point.pitch_rad -= along; // `along` points towards nose-down: the nose goes down as up turns aft
        h.depth_m += sink + along * s.cut.along_m3 / s.cut.area_m2;
    }
    // dE/dφ turns up by −cos θ towards `across`.
    h.point.arm_m = -s.cut.level.tilt * turn / afloat.wanted_m3();
    return h;
}

/// Extrapolates three evenly spaced values by one step, by their parabola.
double extrapolated(double a, double b, double c) {
    return a - 3.0 * b + 3.0 * c;
}

double balanced_pitch(const Afloat& afloat) {
    const auto upright = upright_rest(afloat);
    return upright ? upright->pitch_rad : 0.0;
}

/// Heel between two points of the curve at which the arm is zero.
double zero_arm_between(const Afloat& afloat, TrimMode trim, const CurveState& from, const CurveState& to) {
    const auto arm = [&](double heel) {
        return curve_state_at(afloat, trim, heel, to.point.pitch_rad, to.depth_m).point.arm_m;
    };
    return root_between(arm, from.point.heel_rad, to.point.heel_rad, from.point.arm_m, to.point.arm_m,
                        {1e-7, 1e-11});
}

/// The greatest arm of the trimmed points: evaluated at the top of the parabola through the highest point and
/// its neighbours.
void find_peak(const Afloat& afloat, TrimMode trim, const std::vector<CurveState>& held,
               RightingCurve& curve) {
    std::size_t top = held.size();
    for (std::size_t k = 0; k < held.size(); ++k) {
        if (held[k].point.is_trimmed && (top == held.size() || held[k].point.arm_m > held[top].point.arm_m))
            top = k;
    }
    if (top == held.size()) return;
    curve.peak_arm_m = std::max(0.0, held[top].point.arm_m);
    curve.peak_heel_rad = held[top].point.heel_rad;
    if (top == 0 || top + 1 == held.size()) return;
    if (!held[top - 1].point.is_trimmed || !held[top + 1].point.is_trimmed) return;
    const double before = held[top - 1].point.arm_m;
    const double after = held[top + 1].point.arm_m;
    const double bend = before - 2.0 * curve.peak_arm_m + after;
    if (!(bend < 0.0)) return;
    const double step = held[top].point.heel_rad - held[top - 1].point.heel_rad;
    const double heel = curve.peak_heel_rad + 0.5 * step * (before - after) / bend;
    const CurveState there = curve_state_at(afloat, trim, heel, held[top].point.pitch_rad, held[top].depth_m);
    if (!there.point.is_trimmed || there.point.arm_m <= curve.peak_arm_m) return;
    curve.peak_arm_m = there.point.arm_m;
    curve.peak_heel_rad = heel;
}

} // namespace

RightingPoint righting_arm(const Afloat& afloat, TrimMode trim, double heel_rad, double start_pitch_rad) {
    const Vec3 up = up_of({start_pitch_rad, heel_rad});
    const FloatState s = with_right_volume(afloat, up, dot(up, afloat.hull->centroid_m()), nullptr);
    return curve_state_at(afloat, trim, heel_rad, start_pitch_rad, s.depth_m).point;
}

RightingCurve righting_curve(const Afloat& afloat, TrimMode trim, int steps) {
    RightingCurve curve;
    if (afloat.sinks() || !(afloat.mass_kg > 0.0) || steps < 4) return curve;
    // Smaller arms are rounding, not a zero crossing: at 0 and 180° a symmetric lure has none at all.
    const double nothing = 1e-7 * afloat.hull->length_m();
    std::vector<CurveState> held;
    bool is_whole = true; // every point since the list angle is trimmed
    for (int k = 0; k <= steps; ++k) {
        const double heel = std::numbers::pi * k / steps;
        double pitch = 0.0;
        double depth = 0.0;
        const std::size_t n = held.size();
        const auto is_held = [&](const CurveState& h) { return h.point.is_trimmed; };
        if (n >= 3 && std::all_of(held.end() - 3, held.end(), is_held)) {
            depth = extrapolated(held[n - 3].depth_m, held[n - 2].depth_m, held[n - 1].depth_m);
            pitch = extrapolated(held[n - 3].point.pitch_rad, held[n - 2].point.pitch_rad,
                                 held[n - 1].point.pitch_rad);
        } else if (n > 0) {
            depth = held[n - 1].depth_m;
            pitch = held[n - 1].point.pitch_rad;
        } else {
            depth = with_right_volume(afloat, {0.0, 0.0, 1.0}, afloat.hull->centroid_m().z, nullptr).depth_m;
        }
        if (trim == TrimMode::fixed) pitch = n > 0 ? held[0].point.pitch_rad : balanced_pitch(afloat);
        held.push_back(curve_state_at(afloat, trim, heel, std::clamp(pitch, -1.4, 1.4), depth));
        const CurveState& now = held.back();
        curve.points.push_back(now.point);
        if (k == 0) continue;
        const CurveState& before = held[held.size() - 2];
        if (!is_held(now) || !is_held(before)) {
            is_whole = is_whole && !curve.list_rad;
            continue;
        }
        const bool rises = now.point.arm_m > nothing && before.point.arm_m <= nothing;
        const bool falls = now.point.arm_m < -nothing && before.point.arm_m >= -nothing;
        if (rises && !curve.list_rad) {
            curve.list_rad = before.point.arm_m < -nothing ? zero_arm_between(afloat, trim, before, now)
                                                           : before.point.heel_rad;
        } else if (falls && curve.list_rad && !curve.vanishing_rad) {
            curve.vanishing_rad = before.point.arm_m > nothing ? zero_arm_between(afloat, trim, before, now)
                                                               : before.point.heel_rad;
        }
    }
    if (curve.list_rad && !curve.vanishing_rad && is_whole) curve.vanishing_rad = std::numbers::pi;
    find_peak(afloat, trim, held, curve);
    return curve;
}

std::vector<Attitude> headings_of(const RightingCurve& curve) {
    std::vector<Attitude> out;
    if (curve.points.empty()) return out;
    const auto attitude = [](const RightingPoint& p) { return Attitude{p.pitch_rad, p.heel_rad}; };
    out.push_back(attitude(curve.points.front()));
    for (std::size_t k = 0; k + 1 < curve.points.size(); ++k) {
        const RightingPoint& a = curve.points[k];
        const RightingPoint& b = curve.points[k + 1];
        if (!(a.arm_m < 0.0 && b.arm_m >= 0.0)) continue;
        const double share = -a.arm_m / (b.arm_m - a.arm_m);
        out.push_back({a.pitch_rad + share * (b.pitch_rad - a.pitch_rad),
                       a.heel_rad + share * (b.heel_rad - a.heel_rad)});
    }
    out.push_back(attitude(curve.points.back()));
    return out;
}

double UnderWater::arm_m(double heel_rad) const {
    return bg_m * std::sin(heel_rad);
}

UnderWater under_water(const Afloat& afloat) {
    UnderWater u;
    u.bg_m = afloat.hull->centroid_m().z - afloat.g_m.z;
    u.righting_nm_per_deg = afloat.mass_kg * units::standard_gravity_m_s2 * u.bg_m * units::degree_rad;
    return u;
}

namespace {

/// GM at heel 0 for another height of G or another mass, each computed from the last solution.
class UprightGm {
public:
    explicit UprightGm(const Afloat& afloat) : afloat_(afloat) {
        last_.up = {0.0, 0.0, 1.0};
        last_.depth_m = afloat.hull->centroid_m().z;
    }

    /// Absent where there is no such rest.
    std::optional<double> operator()(double lower_m, double heavier_kg) {
        Afloat other = afloat_;
        other.g_m.z -= lower_m;
        other.mass_kg += heavier_kg;
        if (other.sinks()) return under_water(other).bg_m;
        const DescentEnd a = trimmed(other, with_right_volume(other, last_.up, last_.depth_m, nullptr), 1e-8);
        if (!a.arrived) return std::nullopt;
        last_ = a.state;
        return a.state.stiff_across / other.wanted_m3();
    }

    /// The last solution.
    [[nodiscard]] const FloatState& state() const { return last_; }

private:
    Afloat afloat_;
    FloatState last_;
};

/// x in [low, high] at which gm(x) rises through zero, given its values there. Absent where gm is not to be
/// had somewhere between.
template <class Gm>
std::optional<double> zero_of(Gm gm, double low, double gm_low, double high, double gm_high,
                              double tolerance) {
    bool lost = false;
    const auto found = [&](double x) {
        const std::optional<double> at_x = gm(x);
        lost = lost || !at_x;
        return at_x.value_or(0.0);
    };
    const double x = root_between(found, low, high, gm_low, gm_high, {tolerance, 1e-10});
    return lost ? std::nullopt : std::optional(x);
}

/// Least x in (0, high] with gm(x) ≥ 0: takes the first of `tries` even steps that has it, then finds the
/// zero before it.
template <class Gm>
std::optional<double> least_for_stability(Gm gm, double gm_at_nothing, double high, int tries,
                                          double tolerance) {
    double low = 0.0;
    double gm_low = gm_at_nothing;
    for (int k = 1; k <= tries; ++k) {
        const double x = high * k / tries;
        const std::optional<double> at_x = gm(x);
        if (!at_x) continue;
        if (*at_x >= 0.0) return zero_of(gm, low, gm_low, x, *at_x, tolerance);
        low = x;
        gm_low = *at_x;
    }
    return std::nullopt;
}

/// True where a state without heel and with positive GM comes to rest upright when released. With everything
/// in the middle plane that state is the rest itself.
bool ends_upright(const Afloat& afloat, const FloatState& from) {
    if (afloat.hull->is_mirrored() && std::abs(afloat.g_m.y) < 1e-9) return true;
    return posture_of(minimised(afloat, from, {}).state.up) == Posture::upright;
}

} // namespace

UprightAdvice upright_advice(const Afloat& afloat) {
    UprightAdvice advice;
    if (afloat.sinks() || !(afloat.mass_kg > 0.0)) return advice;
    UprightGm upright_gm(afloat);
    const std::optional<double> gm = upright_gm(0.0, 0.0);
    if (!gm) return advice;
    const FloatState& unheeled = upright_gm.state();
    if (stands(posture_of(unheeled.up))) return advice;
    advice.is_known = true;
    advice.gm_m = *gm;
    advice.g_off_m = unheeled.turn[1] / afloat.wanted_m3();
    if (*gm > 0.0) {
        advice.is_stable = ends_upright(afloat, unheeled);
        if (advice.is_stable) advice.heavier_kg = 0.0;
        return advice;
    }
    constexpr double close_m = 1e-8;
    constexpr double close_kg = 1e-8;
    // At constant pitch GM grows by as much as G comes down; the pitch changes too, hence the search.
    const auto lowered = [&](double x) { return upright_gm(x, 0.0); };
    const auto lower = least_for_stability(lowered, *gm, -2.0 * *gm + 1e-5, 2, close_m);
    advice.lower_g_m = lower.value_or(-*gm);
    const double spare_kg = afloat.hull->volume_m3() * afloat.water_kg_m3 - afloat.mass_kg;
    UprightGm heavier_gm(afloat);
    const auto loaded = [&](double x) { return heavier_gm(0.0, x); };
    advice.heavier_kg = least_for_stability(loaded, *gm, spare_kg, 8, close_kg);
    return advice;
}

} // namespace evenfall::afloat
