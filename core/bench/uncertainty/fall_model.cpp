#include "bench/uncertainty/fall_model.hpp"

#include "base/trade.hpp"
#include "bench/uncertainty/uncertainty.hpp"
#include "water/hang.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace evenfall::bench {

FallModel::FallModel(std::shared_ptr<const fall::HydroBody> hull, const fall::MassProperties& usual,
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

std::optional<double> FallModel::in_water_for(const ledger::Sum& sum, double drag, double speed_m_s) {
    if (!(speed_m_s > 0.0)) return std::nullopt;
    set_weight(sum, present_kg(sum), drag);
    return descent_.in_water_for(speed_m_s, present_kg(sum));
}

template <class Weight>
std::optional<FallModel::WeightAndSpeed> FallModel::fall_in_time(const Weight& weight_for,
                                                                 const ledger::Sum& sum, double depth_m,
                                                                 double time_s) const {
    // Secant rule in the logarithm of the speed, by which the time is nearly a straight line of slope −1.
    std::optional<double> kg = present_kg(sum);
    const auto excess_at = [&](double log_speed) -> std::optional<double> {
        const double speed = std::exp(log_speed);
        kg = weight_for(speed, *kg);
        if (!kg) return std::nullopt;
        const double length = acceleration_length_m(sum, *kg, speed);
        return std::log(time_s / time_from_rest_s(depth_m, speed, length));
    };
    constexpr double usual_length_m = 0.15;
    double s = std::log(time_from_rest_s(depth_m, 1.0, usual_length_m) / time_s);
    double slope = 1.0;
    auto at_s = excess_at(s);
    for (int i = 0; at_s && std::abs(*at_s) >= 1e-11 && i < 12; ++i) {
        const double step = std::clamp(-*at_s / slope, -1.0, 1.0);
        const auto next = excess_at(s + step);
        if (!next) return std::nullopt;
        const double secant = (*next - *at_s) / step;
        s += step;
        at_s = next;
        if (secant > 0.4 && secant < 2.5) slope = secant;
    }
    if (!at_s || !(std::abs(*at_s) < 1e-9)) return std::nullopt;
    return WeightAndSpeed{*kg, std::exp(s)};
}

std::optional<double> FallModel::in_water_for_time(const ledger::Sum& sum, double drag, double depth_m,
                                                   double time_s) {
    set_weight(sum, present_kg(sum), drag);
    // Whether a fall near the hang pitch is the main one need only be asked once.
    const auto near_hang = [&](double speed, double) { return descent_.in_water_near_hang(speed); };
    const auto found = fall_in_time(near_hang, sum, depth_m, time_s);
    if (found && descent_.falls_with(found->in_water_kg, found->speed_m_s)) return found->in_water_kg;
    const auto any = [&](double speed, double near_kg) { return descent_.in_water_for(speed, near_kg); };
    const auto other = fall_in_time(any, sum, depth_m, time_s);
    return other ? std::optional(other->in_water_kg) : std::nullopt;
}

double FallModel::acceleration_length_m(const ledger::Sum& sum, double in_water_kg, double speed_m_s) const {
    const double heavy = water_.density_kg_m3 * (sum.displaced_m3 + heave_m3_) + in_water_kg;
    return heavy * speed_m_s * speed_m_s / (units::standard_gravity_m_s2 * in_water_kg);
}

} // namespace evenfall::bench
