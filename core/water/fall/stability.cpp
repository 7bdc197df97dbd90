#include "water/fall/stability.hpp"

#include <Eigen/Dense>
#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>

namespace evenfall::fall {

namespace {

/// Drag v·(p·|v| + f·√|v|) by v. It has no slope at rest, where a disturbance still dies out by its own drag:
/// there the slope is that of a disturbance of size `small`.
double drag_slope(double v, double p, double f, double small) {
    const double size = std::max(std::abs(v), small);
    return 2.0 * p * size + 1.5 * f * std::sqrt(size);
}

/// Of force along, force across and moment [rows], by along, across and pitching [columns].
using LoadSlopes = std::array<std::array<double, 3>, 3>;

/// One part at (ξ, ζ) with drag k·|V|·V, its own speed being (u + ζq, w − ξq).
void add_part(LoadSlopes& to, double k, double forward, double down, double u, double w) {
    const double v = std::sqrt(u * u + w * w);
    const double per_u = u / v;
    const double per_w = w / v;
    const double per_q = per_u * down - per_w * forward;
    const double turn = forward * w - down * u;
    const std::array<double, 3> of_speed{per_u, per_w, per_q};
    const std::array<double, 3> along{1.0, 0.0, down};
    const std::array<double, 3> across{0.0, 1.0, -forward};
    const std::array<double, 3> turning{-down, forward, -forward * forward - down * down};
    for (std::size_t i = 0; i < 3; ++i) {
        to[0][i] -= k * (of_speed[i] * u + v * along[i]);
        to[1][i] -= k * (of_speed[i] * w + v * across[i]);
        to[2][i] += k * (of_speed[i] * turn + v * turning[i]);
    }
}

/// Strips across: each has the speed w − ξq. Their sums by ξ⁰, ξ¹ and ξ² are all that a small q needs.
void add_strips(LoadSlopes& to, const HydroBody& hull, const SteadySums& sums, double b_x_m, double w,
                double small) {
    const auto squared_arms = [&](const HydroBody::Moments& m, double whole) {
        if (!(m.sum > 0.0)) return 0.0;
        return whole / m.sum * (b_x_m * b_x_m * m.sum - 2.0 * b_x_m * m.x_m + m.xx_m2);
    };
    const double slope = drag_slope(w, sums.cross_p, sums.cross_f, small);
    const double slope_arm = drag_slope(w, sums.cross_p_arm, sums.cross_f_arm, small);
    const double slope_arms = drag_slope(w, squared_arms(hull.pressure, sums.cross_p),
                                         squared_arms(hull.friction, sums.cross_f), small);
    to[1][1] -= slope;
    to[1][2] += slope_arm;
    to[2][1] += slope_arm;
    to[2][2] -= slope_arms;
}

Eigen::Matrix4d matrix_of(const DisturbanceRates& rates) {
    Eigen::Matrix4d m;
    for (int i = 0; i < 4; ++i) {
        for (int k = 0; k < 4; ++k)
            m(i, k) = rates[static_cast<std::size_t>(i)][static_cast<std::size_t>(k)];
    }
    return m;
}

} // namespace

DisturbanceRates disturbance_rates(const HydroBody& hull, const MassProperties& weights,
                                   std::span<const DragItem> items, const materials::WaterProperties& water,
                                   const ModelFactors& closure, const SteadySums& sums,
                                   const MotionState& state) {
    const double u = state.along_m_s;
    const double w = state.across_m_s;
    const double sine = std::sin(state.pitch_rad);
    const double cosine = std::cos(state.pitch_rad);
    const double small = 1e-5 * std::sqrt(u * u + w * w);
    LoadSlopes load{};
    const double along = drag_slope(u, sums.along_p, sums.along_f, small);
    const double arm = sums.along_arm;
    load[0] = {-along, 0.0, -along * arm};
    load[2] = {-arm * along, 0.0, -arm * arm * along};
    add_strips(load, hull, sums, weights.b_m.x, w, small);
    for (const DragItem& item : items) {
        add_part(load, part_drag(item, water, closure), weights.b_m.x - item.at_m.x,
                 weights.b_m.z - item.at_m.z, u, w);
    }
    // The moment of ideal flow and the wake's share of it: −(w·p_ξ − u·p_ζ), and what the wake takes off.
    const InertiaMatrix m = inertia_matrix(hull, weights, water);
    const double munk =
        m[1][1] - m[0][0] - (1.0 - closure.munk) * water.density_kg_m3 * (hull.heave_m3 - hull.surge_m3);
    load[0][2] -= m[1][1] * w;
    load[1][2] += m[0][0] * u;
    load[2][0] += munk * w;
    load[2][1] += munk * u;
    load[2][2] -= w * m[0][2] - u * m[1][2];
    const std::array<double, 3> by_pitch{-sums.weight_n * cosine, -sums.weight_n * sine,
                                         -sums.righting_n_m * cosine + sums.forward_n_m * sine};

    Eigen::Matrix3d inertia;
    Eigen::Matrix<double, 3, 4> right;
    for (std::size_t i = 0; i < 3; ++i) {
        const auto row = static_cast<int>(i);
        for (std::size_t k = 0; k < 3; ++k) {
            inertia(row, static_cast<int>(k)) = m[i][k];
            right(row, static_cast<int>(k)) = load[i][k];
        }
        right(row, 3) = by_pitch[i];
    }
    const Eigen::Matrix<double, 3, 4> rates = inertia.inverse() * right;
    DisturbanceRates out{};
    for (std::size_t i = 0; i < 3; ++i) {
        for (std::size_t k = 0; k < 4; ++k)
            out[i][k] = rates(static_cast<int>(i), static_cast<int>(k));
    }
    out[3][2] = 1.0;
    return out;
}

bool decays(const DisturbanceRates& rates) {
    const Eigen::Matrix4d jacobian = matrix_of(rates);
    std::array<double, 4> c{}; // λ⁴ + c₀λ³ + c₁λ² + c₂λ + c₃
    Eigen::Matrix4d m = jacobian;
    for (std::size_t k = 0; k < 4; ++k) {
        if (k > 0) m = (jacobian * (m + c[k - 1] * Eigen::Matrix4d::Identity())).eval();
        c[k] = -m.trace() / static_cast<double>(k + 1);
    }
    return c[0] > 0.0 && c[3] > 0.0 && c[0] * c[1] * c[2] > c[2] * c[2] + c[0] * c[0] * c[3] && c[2] > 0.0;
}

std::array<std::complex<double>, 4> modes_of(const DisturbanceRates& rates) {
    const Eigen::EigenSolver<Eigen::Matrix4d> solver(matrix_of(rates), false);
    std::array<std::complex<double>, 4> modes;
    for (std::size_t i = 0; i < 4; ++i)
        modes[i] = solver.eigenvalues()(static_cast<int>(i));
    std::sort(modes.begin(), modes.end(), [](const auto& a, const auto& b) {
        return a.real() != b.real() ? a.real() > b.real() : a.imag() > b.imag();
    });
    return modes;
}

} // namespace evenfall::fall
