#include "water/fall/motion.hpp"

#include "base/trade.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

namespace evenfall::fall {

namespace {

constexpr double g = units::standard_gravity_m_s2;

double end_effect_at(const EndEffect& ends, double at) {
    return ends.usual + at * (at < 0.0 ? ends.usual - ends.low : ends.high - ends.usual);
}

// Distance forward of B, and below it, of a point in the lure's axes.
double forward(const MassProperties& weights, double x_m) {
    return weights.b_m.x - x_m;
}
double down(const MassProperties& weights, double z_m) {
    return weights.b_m.z - z_m;
}

/// v·(p·|v| + f·√|v|): drag with the sign of its speed.
double signed_drag(double v, double p, double f) {
    const double size = std::abs(v);
    return v * (p * size + f * std::sqrt(size));
}

} // namespace

double part_drag(const DragItem& item, const materials::WaterProperties& water, const ModelFactors& closure) {
    const double most = closure.parts < 0.0 ? item.cd_area_low_m2 : item.cd_area_high_m2;
    const double area = item.cd_area_m2 + std::abs(closure.parts) * (most - item.cd_area_m2);
    return 0.5 * water.density_kg_m3 * closure.drag * area;
}

InertiaMatrix inertia_matrix(const HydroBody& hull, const MassProperties& weights,
                             const materials::WaterProperties& water) {
    const double rho = water.density_kg_m3;
    const double b = weights.b_m.x;
    const double heave = rho * hull.heave_m3;
    const double heave_pitch = rho * (hull.heave_x_m4 - b * hull.heave_m3);
    const double pitch = rho * (hull.heave_xx_m5 - 2.0 * b * hull.heave_x_m4 + b * b * hull.heave_m3);
    const double g_down = weights.mass_kg * down(weights, weights.g_m.z);
    const double g_forward = -weights.mass_kg * forward(weights, weights.g_m.x) + heave_pitch;
    return {{{weights.mass_kg + rho * hull.surge_m3, 0.0, g_down},
             {0.0, weights.mass_kg + heave, g_forward},
             {g_down, g_forward, weights.pitch_inertia_kg_m2 + pitch}}};
}

SteadySums steady_sums(const HydroBody& hull, const MassProperties& weights, std::span<const DragItem> items,
                       const materials::WaterProperties& water, const ModelFactors& closure) {
    SteadySums s;
    const double half_rho = 0.5 * water.density_kg_m3 * closure.drag;
    const double root_nu = std::sqrt(water.viscosity_pa_s / water.density_kg_m3);
    const double across = half_rho * end_effect_at(hull.ends, closure.ends);
    s.cross_p = across * hull.pressure.sum;
    s.cross_f = across * root_nu * hull.friction.sum;
    s.cross_p_arm = across * (weights.b_m.x * hull.pressure.sum - hull.pressure.x_m);
    s.cross_f_arm = across * root_nu * (weights.b_m.x * hull.friction.sum - hull.friction.x_m);
    s.along_p = half_rho * closure.along * hull.along_pressure_m2;
    s.along_f = half_rho * closure.along * root_nu * hull.along_friction_m3_2;
    s.along_arm = down(weights, hull.along_z_m);
    for (const DragItem& item : items) {
        const double k = part_drag(item, water, closure);
        s.parts += k;
        s.parts_forward += k * forward(weights, item.at_m.x);
        s.parts_down += k * down(weights, item.at_m.z);
    }
    s.weight_n = g * (weights.mass_kg - water.density_kg_m3 * weights.displaced_m3);
    s.righting_n_m = g * weights.mass_kg * down(weights, weights.g_m.z);
    s.forward_n_m = g * weights.mass_kg * forward(weights, weights.g_m.x);
    s.munk_kg = closure.munk * water.density_kg_m3 * (hull.heave_m3 - hull.surge_m3);
    return s;
}

SteadySums::Speeds SteadySums::speeds(double pitch_rad, const Speeds& near) const {
    const double sine = std::sin(pitch_rad);
    const double gx = std::abs(weight_n * sine);
    const double gz = std::abs(weight_n * std::cos(pitch_rad));
    // Newton's method on the magnitudes of both speeds. Either term alone gives an upper bound for each, and
    // the drag is the gradient of a convex function of the speeds, so it converges quickly; a magnitude never
    // drops below a tenth in one step.
    const double u_near = std::abs(near.along_m_s);
    const double w_near = std::abs(near.across_m_s);
    double u = gx > 0.0 && u_near > 0.0 ? u_near : std::sqrt(gx / (along_p + parts));
    double w = gz > 0.0 && w_near > 0.0 ? w_near : std::sqrt(gz / (cross_p + parts));
    for (int i = 0; i < 40; ++i) {
        const double v = std::sqrt(u * u + w * w);
        if (!(v > 0.0)) break;
        const double root_u = std::sqrt(u);
        const double root_w = std::sqrt(w);
        const double along = along_p * u + along_f * root_u + parts * v;
        const double across = cross_p * w + cross_f * root_w + parts * v;
        const double fx = u * along - gx;
        const double fz = w * across - gz;
        // A speed without a driving force is zero from the start and stays so.
        const double j11 = gx > 0.0 ? along + along_p * u + 0.5 * along_f * root_u + parts * u * u / v : 1.0;
        const double j22 = gz > 0.0 ? across + cross_p * w + 0.5 * cross_f * root_w + parts * w * w / v : 1.0;
        const double j12 = parts * u * w / v;
        const double det = j11 * j22 - j12 * j12;
        if (!(det > 0.0)) break;
        const double du = (fx * j22 - fz * j12) / det;
        const double dw = (fz * j11 - fx * j12) / det;
        u = std::max(u - du, 0.1 * u);
        w = std::max(w - dw, 0.1 * w);
        // Convergence is quadratic: the error after this step is below rounding.
        if (std::abs(du) <= 1e-7 * u && std::abs(dw) <= 1e-7 * w) break;
    }
    return {weight_n * sine > 0.0 ? -u : u, weight_n < 0.0 ? -w : w};
}

double SteadySums::Speeds::vertical_m_s(double pitch_rad) const {
    return -along_m_s * std::sin(pitch_rad) + across_m_s * std::cos(pitch_rad);
}

double SteadySums::moment_n_m(double pitch_rad, const Speeds& s) const {
    const double u = s.along_m_s;
    const double w = s.across_m_s;
    const double v = std::sqrt(u * u + w * w);
    const double weights = -righting_n_m * std::sin(pitch_rad) - forward_n_m * std::cos(pitch_rad);
    const double across = signed_drag(w, cross_p_arm, cross_f_arm);
    const double along = -along_arm * signed_drag(u, along_p, along_f);
    const double small_parts = v * (parts_forward * w - parts_down * u);
    return weights + across + along + small_parts + munk_kg * u * w;
}

Motion::Motion(const HydroBody& hull, const MassProperties& weights, std::span<const DragItem> items,
               const materials::WaterProperties& water, const ModelFactors& closure)
    : sums_(steady_sums(hull, weights, items, water, closure)) {
    const double rho = water.density_kg_m3;
    const double half_rho = 0.5 * rho * closure.drag;
    const double root_nu = std::sqrt(water.viscosity_pa_s / rho);
    const double across = half_rho * end_effect_at(hull.ends, closure.ends);
    slices_.reserve(hull.slices.size());
    for (const HydroBody::Slice& s : hull.slices) {
        slices_.push_back(
            {forward(weights, s.x_m), across * s.pressure_m2, across * root_nu * s.friction_m3_2});
    }
    for (const DragItem& item : items) {
        items_.push_back(
            {forward(weights, item.at_m.x), down(weights, item.at_m.z), part_drag(item, water, closure)});
    }
    inertia_ = inertia_matrix(hull, weights, water);
    Eigen::Matrix3d m;
    for (std::size_t i = 0; i < 3; ++i) {
        for (std::size_t k = 0; k < 3; ++k)
            m(static_cast<int>(i), static_cast<int>(k)) = inertia_[i][k];
    }
    const Eigen::Matrix3d inverse = m.inverse();
    for (std::size_t i = 0; i < 3; ++i) {
        for (std::size_t k = 0; k < 3; ++k)
            inverse_[i][k] = inverse(static_cast<int>(i), static_cast<int>(k));
    }
    munk_loss_kg_ = (1.0 - closure.munk) * rho * (hull.heave_m3 - hull.surge_m3);
}

Load Motion::drag(const MotionState& s) const {
    const double u = s.along_m_s;
    const double w = s.across_m_s;
    const double q = s.pitching_rad_s;
    Load load;
    const double along = signed_drag(u + sums_.along_arm * q, sums_.along_p, sums_.along_f);
    load.along_n = -along;
    load.moment_n_m = -sums_.along_arm * along - munk_loss_kg_ * u * w;
    if (q == 0.0) { // then strips and parts are the sums of a steady fall
        const double v = std::sqrt(u * u + w * w);
        load.along_n -= sums_.parts * v * u;
        load.across_n = -signed_drag(w, sums_.cross_p, sums_.cross_f) - sums_.parts * v * w;
        load.moment_n_m += signed_drag(w, sums_.cross_p_arm, sums_.cross_f_arm) +
                           v * (sums_.parts_forward * w - sums_.parts_down * u);
        return load;
    }
    for (const Slice& slice : slices_) {
        const double here = signed_drag(w - slice.forward_m * q, slice.p, slice.f);
        load.across_n -= here;
        load.moment_n_m += slice.forward_m * here;
    }
    for (const Item& item : items_) {
        const double u_here = u + item.down_m * q;
        const double w_here = w - item.forward_m * q;
        const double k = item.k * std::sqrt(u_here * u_here + w_here * w_here);
        load.along_n -= k * u_here;
        load.across_n -= k * w_here;
        load.moment_n_m += k * (item.forward_m * w_here - item.down_m * u_here);
    }
    return load;
}

Motion::Rates Motion::rates_and_loss(const MotionState& s) const {
    const double u = s.along_m_s;
    const double w = s.across_m_s;
    const double q = s.pitching_rad_s;
    const double sine = std::sin(s.pitch_rad);
    const double cosine = std::cos(s.pitch_rad);
    const Load resistance = drag(s);
    const double along_momentum = inertia_[0][0] * u + inertia_[0][2] * q;
    const double across_momentum = inertia_[1][1] * w + inertia_[1][2] * q;
    const double x = -sums_.weight_n * sine + resistance.along_n - q * across_momentum;
    const double z = sums_.weight_n * cosine + resistance.across_n + q * along_momentum;
    const double n = -sums_.righting_n_m * sine - sums_.forward_n_m * cosine + resistance.moment_n_m -
                     (w * along_momentum - u * across_momentum);
    Rates rates;
    for (std::size_t i = 0; i < 3; ++i)
        rates.rate[i] = inverse_[i][0] * x + inverse_[i][1] * z + inverse_[i][2] * n;
    rates.lost_w = -(resistance.along_n * u + resistance.across_n * w + resistance.moment_n_m * q);
    return rates;
}

std::array<double, 3> Motion::rates(const MotionState& state) const {
    return rates_and_loss(state).rate;
}

double Motion::kinetic_j(const MotionState& s) const {
    const std::array<double, 3> v{s.along_m_s, s.across_m_s, s.pitching_rad_s};
    double twice = 0.0;
    for (std::size_t i = 0; i < 3; ++i) {
        for (std::size_t k = 0; k < 3; ++k)
            twice += v[i] * inertia_[i][k] * v[k];
    }
    return 0.5 * twice;
}

double Motion::work_j(double depth_m, double pitch_rad) const {
    return sums_.weight_n * depth_m - sums_.forward_n_m * std::sin(pitch_rad) +
           sums_.righting_n_m * (std::cos(pitch_rad) - 1.0);
}

} // namespace evenfall::fall
