#pragma once

// The motion of a towed chain once more, as plainly as it can be written: dense matrices, one force after the
// other, and what they do to the energy. Slow; to hold core/water/swim/motion.cpp against.

#include "water/swim/motion.hpp"

#include <Eigen/Dense>
#include <cmath>
#include <vector>

namespace evenfall::testing {

class PlainSwim {
public:
    using Vector = Eigen::VectorXd;
    using Matrix = Eigen::MatrixXd;
    using Plane = Eigen::Vector2d;

    /// Joint moments, line and matrices are asked of `motion`; all else is worked out here.
    PlainSwim(const swim::Chain& chain, const swim::Closures& closures, const swim::Motion& motion)
        : chain_(chain), closures_(closures), motion_(motion), n_(static_cast<int>(chain.segments.size())),
          added_(dense(motion.matrices().added)) {}

    struct Power {
        double energy_j = 0.0;      ///< of wood in the tow's frame, and of water
        double energy_rate_w = 0.0; ///< by the accelerations
        double power_w = 0.0;       ///< of all forces that are not the water's own energy
        double shed_w = 0.0;        ///< of shedding, against the water
        double shed_energy_w = 0.0; ///< what is left behind in the wake
    };

    [[nodiscard]] Vector accelerations(const Vector& q, const Vector& rate) const {
        Work w = work(q, rate);
        return w.mass.ldlt().solve(w.force);
    }

    [[nodiscard]] double energy_j(const Vector& q, const Vector& rate) const {
        const Work w = work(q, rate);
        double energy = 0.5 * w.z.dot(added_ * w.z);
        for (int i = 0; i < n_; ++i) {
            const swim::Segment& s = segment(i);
            const Plane v = w.jacobian[at(i)] * rate;
            energy += 0.5 * s.mass_kg * v.squaredNorm() +
                      s.moment_kg_m * rate(i + 1) * w.normal[at(i)].dot(v) +
                      0.5 * s.inertia_kg_m2 * rate(i + 1) * rate(i + 1) +
                      0.5 * s.surge_kg * w.along(i) * w.along(i);
        }
        return energy;
    }

    [[nodiscard]] Power power(const Vector& q, const Vector& rate) const {
        const Work w = work(q, rate);
        const Vector second = w.mass.ldlt().solve(w.force);
        Power p;
        p.energy_j = energy_j(q, rate);
        const double h = 1e-5;
        const auto energy_at = [&](double t) {
            return energy_j(q + t * rate + 0.5 * t * t * second, rate + t * second);
        };
        p.energy_rate_w =
            (8.0 * (energy_at(h) - energy_at(-h)) - (energy_at(2 * h) - energy_at(-2 * h))) / (12.0 * h);
        // What the water pushes back with its own momentum is taken from its energy, but for the pull of the
        // tow along x.
        double pull = 0.0;
        const Vector back = -added_ * (w.by_rate * second + w.by_turning);
        for (int i = 0; i < n_; ++i) {
            const Plane r2 = w.jacobian[at(i)] * second + w.turning[at(i)];
            pull += w.normal[at(i)].x() * back(i) + w.reactive[at(i)].x() -
                    segment(i).surge_kg * w.tangent[at(i)].dot(r2) * w.tangent[at(i)].x();
        }
        p.power_w = motion_.speed_m_s() * pull + rate.dot(w.lossy);
        p.shed_w = w.shed_w;
        p.shed_energy_w = w.shed_energy_w;
        return p;
    }

private:
    struct Work {
        std::vector<Plane> tangent, normal, turning, reactive;
        std::vector<Matrix> jacobian; ///< of the fore hinges
        Vector z, along;              ///< motions; speed along
        Matrix by_rate;               ///< B
        Vector by_turning;            ///< z0
        Matrix mass;
        Vector force, lossy; ///< on q; of drag, shedding, joints and line alone
        double shed_w = 0.0, shed_energy_w = 0.0;
    };

    static std::size_t at(int i) { return static_cast<std::size_t>(i); }
    const swim::Segment& segment(int i) const { return chain_.segments[at(i)]; }
    [[nodiscard]] Matrix dense(const swim::Matrix& m) const {
        Matrix out(2 * n_, 2 * n_);
        for (int r = 0; r < 2 * n_; ++r)
            for (int c = 0; c < 2 * n_; ++c)
                out(r, c) = m[at(r)][at(c)];
        return out;
    }

    [[nodiscard]] Work kinematics(const Vector& q, const Vector& rate) const {
        Work w;
        Matrix jacobian = Matrix::Zero(2, n_ + 1);
        jacobian(1, 0) = 1.0;
        Plane turning = Plane::Zero();
        w.z = Vector::Zero(2 * n_), w.along = Vector::Zero(n_), w.by_turning = Vector::Zero(2 * n_);
        w.by_rate = Matrix::Zero(2 * n_, n_ + 1);
        for (int i = 0; i < n_; ++i) {
            const double theta = q(i + 1);
            const Plane t(std::cos(theta), std::sin(theta)), n(-std::sin(theta), std::cos(theta));
            const Plane v = jacobian * rate - Plane(motion_.speed_m_s(), 0.0);
            w.tangent.push_back(t), w.normal.push_back(n), w.turning.push_back(turning);
            w.jacobian.push_back(jacobian);
            w.z(i) = n.dot(v), w.z(n_ + i) = rate(i + 1), w.along(i) = t.dot(v);
            w.by_rate.row(i) = n.transpose() * jacobian;
            w.by_rate(n_ + i, i + 1) = 1.0;
            w.by_turning(i) = n.dot(turning) - rate(i + 1) * w.along(i);
            jacobian.col(i + 1) += segment(i).length_m * n;
            turning -= segment(i).length_m * rate(i + 1) * rate(i + 1) * t;
        }
        return w;
    }

    [[nodiscard]] Work work(const Vector& q, const Vector& rate) const {
        Work w = kinematics(q, rate);
        const Vector momentum = added_ * w.z;
        w.mass = w.by_rate.transpose() * added_ * w.by_rate;
        w.force = -w.by_rate.transpose() * added_ * w.by_turning;
        w.lossy = Vector::Zero(n_ + 1);
        for (int i = 0; i < n_; ++i) {
            const swim::Segment& s = segment(i);
            const Matrix& j = w.jacobian[at(i)];
            const Plane &t = w.tangent[at(i)], &n = w.normal[at(i)], &g = w.turning[at(i)];
            const Vector e = Vector::Unit(n_ + 1, i + 1);
            const double turn = rate(i + 1), a = s.surge_kg, munk = momentum(i) - a * w.z(i);
            w.mass += j.transpose() * (s.mass_kg * Matrix::Identity(2, 2) + a * t * t.transpose()) * j +
                      s.moment_kg_m * (j.transpose() * n * e.transpose() + e * n.transpose() * j) +
                      s.inertia_kg_m2 * e * e.transpose();
            w.force += j.transpose() * (-s.mass_kg * g + s.moment_kg_m * turn * turn * t) -
                       s.moment_kg_m * n.dot(g) * e;
            w.reactive.push_back(munk * turn * t - a * w.along(i) * turn * n);
            w.force += j.transpose() * (w.reactive.back() - a * t.dot(g) * t) - munk * w.along(i) * e;
            if (w.along(i) < 0.0) add_shed(w, i);
            add_drag(w, i, e);
        }
        for (int i = 1; i < n_; ++i) {
            const double moment = motion_.joint_n_m(at(i), q(i + 1) - q(i), rate(i + 1) - rate(i));
            w.lossy(i + 1) += moment;
            w.lossy(i) -= moment;
        }
        w.lossy(0) -= motion_.line_n_m() * q(0);
        w.force += w.lossy;
        return w;
    }

    void add_shed(Work& w, int i) const {
        const Matrix shed = dense(motion_.matrices().shed[at(i)]);
        const double u = w.along(i), lost = w.z.dot(shed * w.z);
        w.lossy += w.by_rate.transpose() * shed * w.z * u -
                   w.jacobian[at(i)].transpose() * w.tangent[at(i)] * 0.5 * lost;
        w.shed_w += u * lost - 0.5 * lost * u;
        w.shed_energy_w += 0.5 * std::abs(u) * lost;
    }

    void add_drag(Work& w, int i, const Vector& e) const {
        const Matrix& j = w.jacobian[at(i)];
        const Plane &t = w.tangent[at(i)], &n = w.normal[at(i)];
        const double u = w.along(i);
        const auto push = [&](double s, double on_n, double on_t) {
            w.lossy += j.transpose() * (on_n * n + on_t * t) + e * (s * on_n);
        };
        for (const swim::Slice& k : segment(i).slices) {
            const double across = w.z(i) + k.s_m * w.z(n_ + i);
            const double root = std::sqrt(std::hypot(u, across)) * closures_.along * k.skin;
            push(k.s_m,
                 -closures_.cross * closures_.drag * k.cross_kg_m * std::abs(across) * across -
                     0.5 * root * across,
                 -root * u);
        }
        for (const swim::Drag& k : segment(i).parts) {
            const double across = w.z(i) + k.s_m * w.z(n_ + i);
            const double pull = closures_.parts * k.drag_kg_m * std::hypot(u, across);
            push(k.s_m, -pull * across, -pull * u);
        }
        push(0.0, 0.0, -closures_.along * segment(i).form_kg_m * std::abs(u) * u);
    }

    const swim::Chain& chain_;
    const swim::Closures& closures_;
    const swim::Motion& motion_;
    int n_;
    Matrix added_;
};

} // namespace evenfall::testing
