#pragma once

// Small motions of a towed chain about the straight line: M·q'' + C·q' + K·q = 0 with q = (y, headings), in
// closed form, without the joints' friction. Written on its own, to hold the full equations against.

#include "water/swim/motion.hpp"

#include <Eigen/Dense>
#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>
#include <complex>
#include <vector>

namespace evenfall::testing {

struct SmallMotions {
    Eigen::MatrixXd mass, damping, stiffness;

    /// Growth and frequency of each way of moving [1/s], the fastest growing first.
    [[nodiscard]] std::vector<std::complex<double>> roots() const {
        const auto n = mass.rows();
        Eigen::MatrixXd a = Eigen::MatrixXd::Zero(2 * n, 2 * n);
        a.topRightCorner(n, n).setIdentity();
        const auto solver = mass.partialPivLu();
        a.bottomLeftCorner(n, n) = -solver.solve(stiffness);
        a.bottomRightCorner(n, n) = -solver.solve(damping);
        const Eigen::VectorXcd values = a.eigenvalues();
        std::vector<std::complex<double>> out(values.begin(), values.end());
        std::sort(out.begin(), out.end(), [](const auto& p, const auto& q) {
            return p.real() != q.real() ? p.real() > q.real() : p.imag() > q.imag();
        });
        return out;
    }

    /// The same with coordinate 0, the tie's way to the side, held.
    [[nodiscard]] SmallMotions held() const {
        const auto n = mass.rows() - 1;
        return {mass.bottomRightCorner(n, n), damping.bottomRightCorner(n, n),
                stiffness.bottomRightCorner(n, n)};
    }
};

inline Eigen::MatrixXd dense(const swim::Matrix& m, std::size_t n) {
    Eigen::MatrixXd out(2 * n, 2 * n);
    for (std::size_t r = 0; r < 2 * n; ++r)
        for (std::size_t c = 0; c < 2 * n; ++c)
            out(static_cast<int>(r), static_cast<int>(c)) = m[r][c];
    return out;
}

/// Places to the side of the hinges of a chain, by q.
inline std::vector<Eigen::VectorXd> hinge_places(const std::vector<double>& lengths_m) {
    const auto n = static_cast<int>(lengths_m.size());
    std::vector<Eigen::VectorXd> places;
    Eigen::VectorXd at = Eigen::VectorXd::Unit(n + 1, 0);
    for (int i = 0; i < n; ++i) {
        places.push_back(at);
        at += lengths_m[static_cast<std::size_t>(i)] * Eigen::VectorXd::Unit(n + 1, i + 1);
    }
    return places;
}

/// The water's part alone, of any number of segments.
inline SmallMotions water_motions(const std::vector<double>& lengths_m, const Eigen::MatrixXd& added,
                                  const Eigen::MatrixXd& shed, double u) {
    const auto n = static_cast<int>(lengths_m.size());
    const auto places = hinge_places(lengths_m);
    Eigen::MatrixXd b = Eigen::MatrixXd::Zero(2 * n, n + 1), d = Eigen::MatrixXd::Zero(2 * n, n + 1);
    for (int i = 0; i < n; ++i) {
        b.row(i) = places[static_cast<std::size_t>(i)].transpose();
        b(n + i, i + 1) = 1.0;
        d(i, i + 1) = 1.0;
    }
    return {b.transpose() * added * b,
            u * (b.transpose() * added * d - d.transpose() * added * b + b.transpose() * shed * b),
            u * u * (b.transpose() * shed * d - d.transpose() * added * d)};
}

/// `matrices` apart, so that a case may be asked with others than the chain's own.
inline SmallMotions small_motions(const swim::Chain& chain, const swim::Matrices& matrices,
                                  const swim::Closures& closures, double speed_m_s, double line_m) {
    using Eigen::MatrixXd;
    using Eigen::VectorXd;
    const auto n = static_cast<int>(chain.segments.size());
    const double u = speed_m_s;
    const auto unit = [&](int k) { return VectorXd(VectorXd::Unit(n + 1, k)); };
    std::vector<double> lengths;
    for (const swim::Segment& segment : chain.segments)
        lengths.push_back(segment.length_m);
    const std::vector<VectorXd> place = hinge_places(lengths);
    MatrixXd shed = MatrixXd::Zero(2 * n, 2 * n);
    for (const swim::Matrix& s : matrices.shed)
        shed += dense(s, static_cast<std::size_t>(n));
    SmallMotions out = water_motions(lengths, dense(matrices.added, static_cast<std::size_t>(n)), shed, u);
    double total = 0.0;
    for (int i = 0; i < n; ++i) {
        const swim::Segment& s = chain.segments[static_cast<std::size_t>(i)];
        const VectorXd &a = place[static_cast<std::size_t>(i)], e = unit(i + 1);
        out.mass += s.mass_kg * a * a.transpose() + s.moment_kg_m * (a * e.transpose() + e * a.transpose()) +
                    s.inertia_kg_m2 * e * e.transpose();
        out.damping -= u * s.surge_kg * (a * e.transpose() - e * a.transpose());
        out.stiffness += u * u * s.surge_kg * e * e.transpose();
        double g0 = 0.0, g1 = 0.0, g2 = 0.0, drag = closures.along * s.form_kg_m * u * u;
        for (const swim::Slice& k : s.slices) {
            const double g = 0.5 * closures.along * k.skin / std::sqrt(u);
            g0 += g, g1 += g * k.s_m, g2 += g * k.s_m * k.s_m;
            drag += 2.0 * g * u * u;
        }
        for (const swim::Drag& k : s.parts) {
            const double g = closures.parts * k.drag_kg_m;
            g0 += g, g1 += g * k.s_m, g2 += g * k.s_m * k.s_m;
            drag += g * u * u;
        }
        out.damping += u * (g0 * a * a.transpose() + g1 * (a * e.transpose() + e * a.transpose()) +
                            g2 * e * e.transpose());
        out.stiffness += u * u * (g0 * a * e.transpose() + g1 * e * e.transpose());
        out.stiffness -= drag * a * e.transpose();
        for (int j = 0; j < i; ++j)
            out.stiffness += drag * chain.segments[static_cast<std::size_t>(j)].length_m * unit(j + 1) *
                             unit(j + 1).transpose();
        total += drag;
    }
    out.stiffness(0, 0) += total / line_m;
    return out;
}

} // namespace evenfall::testing
