#include "bench/uncertainty/fall_model.hpp"

#include "base/trade.hpp"
#include "bench/uncertainty/uncertainty.hpp"
#include "water/hang.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace evenfall::bench {

FallModel::FallModel(fall::HydroBody hull, const fall::MassProperties& usual,
                     std::vector<fall::DragItem> items, const materials::WaterProperties& water)
    : water_(water), usual_(usual), descent_(std::move(hull), usual, std::move(items), water),
      heave_m3_(descent_.hull().heave_m3) {}

void FallModel::set(const ledger::Sum& sum, double in_water_kg, double aft_m, double below_m, double drag) {
    fall::MassProperties w;
    w.displaced_m3 = sum.displaced_m3;
    w.mass_kg = water_.density_kg_m3 * sum.displaced_m3 + in_water_kg;
    w.b_m = sum.b_m();
    w.g_m = {w.b_m.x + aft_m, w.b_m.y, w.b_m.z - below_m};
    w.pitch_inertia_kg_m2 =
        usual_.mass_kg > 0.0 ? usual_.pitch_inertia_kg_m2 * w.mass_kg / usual_.mass_kg : 0.0;
    descent_.set(w, drag);
}

std::optional<double> FallModel::speed() const {
    const auto fall = descent_.main_fall();
    if (!fall || !(fall->vertical_m_s > 0.0)) return std::nullopt;
    return fall->vertical_m_s;
}

std::optional<double> FallModel::speed_m_s(const ledger::Sum& sum, double drag) {
    const double in_water = sum.in_water(water_.density_kg_m3).kg;
    if (!(in_water > 0.0)) return std::nullopt;
    const Vec3 off = sum.g_m() - sum.b_m();
    set(sum, in_water, off.x, water::bg_across_m(sum.b_m() - sum.g_m()), drag);
    return speed();
}

std::optional<FallSlopes> FallModel::slopes(const ledger::Sum& sum, double drag) {
    const double in_water = sum.in_water(water_.density_kg_m3).kg;
    if (!(in_water > 0.0)) return std::nullopt;
    const Vec3 off = sum.g_m() - sum.b_m();
    const double aft = off.x;
    const double below = water::bg_across_m(sum.b_m() - sum.g_m());
    set(sum, in_water, aft, below, drag);
    const auto usual = descent_.main_fall();
    if (!usual || !(usual->vertical_m_s > 0.0)) return std::nullopt;
    FallSlopes s;
    s.speed_m_s = usual->vertical_m_s;
    const double pitch = usual->pitch_rad;
    const fall::SteadySums sums = descent_.sums();
    constexpr double tilt_rad = 1e-5;
    const double moment = sums.moment_n_m(pitch);
    const double moment_per_rad =
        (sums.moment_n_m(pitch + tilt_rad) - sums.moment_n_m(pitch - tilt_rad)) / (2.0 * tilt_rad);
    // No slope where the steady fall ends.
    if (!(moment_per_rad < 0.0)) return s;
    // The speed after a small change: the lure pitches until the moment is what it was.
    const auto changed = [&](double kg, double a, double b, double d) {
        set(sum, kg, a, b, d);
        const fall::SteadySums then = descent_.sums();
        const double there = pitch - (then.moment_n_m(pitch) - moment) / moment_per_rad;
        return then.speeds(there).vertical_m_s(there) - s.speed_m_s;
    };
    // One-sided steps, small against the accuracy of the figures.
    const double kg = 1e-4 * in_water;
    constexpr double metres = 1e-6;
    constexpr double share = 1e-4;
    s.per_kg = changed(in_water + kg, aft, below, drag) / kg;
    s.per_aft_m = changed(in_water, aft + metres, below, drag) / metres;
    s.per_below_m = changed(in_water, aft, below + metres, drag) / metres;
    s.per_log_drag = changed(in_water, aft, below, drag * (1.0 + share)) / share;
    return s;
}

double FallModel::present_kg(const ledger::Sum& sum) const {
    return std::max(sum.in_water(water_.density_kg_m3).kg, 1e-4);
}

void FallModel::set_weight(const ledger::Sum& sum, double in_water_kg, double drag) {
    const Vec3 off = sum.g_m() - sum.b_m();
    set(sum, in_water_kg, off.x, water::bg_across_m(sum.b_m() - sum.g_m()), drag);
}

template <class Excess>
std::optional<double> FallModel::in_water_near_hang(const ledger::Sum& sum, double drag,
                                                    const Excess& excess) {
    // Secant rule in the logarithm of the mass, from the present one.
    double s = std::log(present_kg(sum));
    const auto excess_at = [&](double log_kg) -> std::optional<double> {
        const double kg = std::exp(log_kg);
        set_weight(sum, kg, drag);
        const std::optional<double> v = descent_.speed_near_hang_m_s();
        if (!v || !(*v > 0.0)) return std::nullopt;
        return excess(kg, *v);
    };
    auto at_s = excess_at(s);
    double slope = 0.52;
    for (int i = 0; at_s && std::abs(*at_s) >= 1e-11 && i < 12; ++i) {
        const double step = std::clamp(-*at_s / slope, -2.0, 2.0);
        const auto next = excess_at(s + step);
        if (!next) return std::nullopt;
        const double secant = (*next - *at_s) / step;
        s += step;
        at_s = next;
        if (secant > 0.2 && secant < 2.0) slope = secant;
    }
    // Whether it is the main fall there need only be asked once.
    if (!at_s || !(std::abs(*at_s) < 1e-9) || speed() != descent_.speed_near_hang_m_s()) return std::nullopt;
    return std::exp(s);
}

std::optional<double> FallModel::in_water_for(const ledger::Sum& sum, double drag, double speed_m_s) {
    if (!(speed_m_s > 0.0 && std::isfinite(speed_m_s))) return std::nullopt;
    const auto kg =
        in_water_near_hang(sum, drag, [&](double, double speed) { return std::log(speed / speed_m_s); });
    if (kg) return kg;
    set_weight(sum, present_kg(sum), drag);
    return descent_.in_water_for(speed_m_s, present_kg(sum));
}

std::optional<double> FallModel::in_water_for_time(const ledger::Sum& sum, double drag, double depth_m,
                                                   double time_s) {
    const auto kg = in_water_near_hang(sum, drag, [&](double in_water_kg, double speed) {
        return std::log(time_s /
                        time_from_rest_s(depth_m, speed, acceleration_length_m(sum, in_water_kg, speed)));
    });
    if (kg) return kg;
    // Where that finds nothing, by the speed: the acceleration length hardly depends on the weight.
    double length = 0.15;
    std::optional<double> found;
    set_weight(sum, present_kg(sum), drag);
    for (int i = 0; i < 12; ++i) {
        const double speed = time_from_rest_s(depth_m, 1.0, length) / time_s;
        found = descent_.in_water_for(speed, found.value_or(present_kg(sum)));
        if (!found) return std::nullopt;
        const double next = acceleration_length_m(sum, *found, speed);
        const bool settled = std::abs(next - length) < 1e-9 * length;
        length = next;
        if (settled) break;
    }
    return found;
}

double FallModel::acceleration_length_m(const ledger::Sum& sum, double in_water_kg, double speed_m_s) const {
    const double heavy = water_.density_kg_m3 * (sum.displaced_m3 + heave_m3_) + in_water_kg;
    return heavy * speed_m_s * speed_m_s / (units::standard_gravity_m_s2 * in_water_kg);
}

} // namespace evenfall::bench
