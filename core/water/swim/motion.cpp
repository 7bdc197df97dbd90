#include "water/swim/motion.hpp"

#include "base/trade.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

namespace evenfall::swim {

namespace {

constexpr double pin_friction = 0.25;                      ///< wet steel on steel; 0.15 to 0.5
constexpr double slow_joint = 0.02;                        ///< σ over U/L
constexpr double stop_give_rad = 0.25 * units::degree_rad; ///< in which a stop takes the water's moment
constexpr double bounce = 0.3;                             ///< of a stop: speed after over before
// Time steps: of the way through a length, of the stop's own swing, of what friction takes to stop a joint.
constexpr double steps_a_length = 250.0;
constexpr double step_of_stop = 0.6;
constexpr double step_of_friction = 0.42;

/// Damping of a swing over its critical damping, by which it comes out of half a swing with `bounce`.
double damping_share() {
    const double fall = -std::log(bounce);
    return fall / std::hypot(std::numbers::pi, fall);
}

/// tanh, which takes time where it is 1 to the last digit.
double sign_of_turning(double x) {
    return x > 20.0 ? 1.0 : x < -20.0 ? -1.0 : std::tanh(x);
}

} // namespace

Motion::Motion(const Chain& chain, const Closures& closures, const Tow& tow)
    : segments_(chain.segments.size()), speed_m_s_(tow.speed_m_s), matrices_(matrices_of(chain, closures)) {
    inertia_ = matrices_.added;
    for (std::size_t i = 0; i < segments_; ++i) {
        const Segment& s = chain.segments[i];
        wood_[i] = {s.length_m, s.mass_kg, s.moment_kg_m, s.surge_kg, closures.along * s.form_kg_m};
        inertia_[i][i] += s.mass_kg;
        inertia_[i][segments_ + i] += s.moment_kg_m;
        inertia_[segments_ + i][i] += s.moment_kg_m;
        inertia_[segments_ + i][segments_ + i] += s.inertia_kg_m2;
    }
    set_slices(chain, closures);
    line_n_m_ = drag_n() / tow.line_m;
    set_joints(chain, tow);
}

void Motion::set_slices(const Chain& chain, const Closures& closures) {
    const double root_speed = std::sqrt(speed_m_s_);
    for (std::size_t i = 0; i < segments_; ++i) {
        double drag = wood_[i].form_kg_m * speed_m_s_;
        for (const Slice& s : chain.segments[i].slices) {
            s_m_.push_back(s.s_m);
            cross_kg_m_.push_back(closures.cross * closures.drag * s.cross_kg_m);
            skin_.push_back(closures.along * s.skin);
            drag += skin_.back() * root_speed;
        }
        for (const Drag& part : chain.segments[i].parts) {
            hooks_.push_back({i, part.s_m, closures.parts * part.drag_kg_m});
            drag += hooks_.back().drag_kg_m * speed_m_s_;
        }
        first_[i + 1] = s_m_.size();
        drag_n_[i] = drag * speed_m_s_;
    }
}

void Motion::set_joints(const Chain& chain, const Tow& tow) {
    const double zeta = damping_share();
    const double slow = slow_joint * speed_m_s_ / chain.length_m;
    step_s_ = chain.length_m / (steps_a_length * speed_m_s_);
    double drag_behind = drag_n();
    for (std::size_t i = 1; i < segments_; ++i) {
        drag_behind -= drag_n_[i - 1];
        const swim::Joint& joint = chain.joints[i - 1];
        const double length = wood_[i].length_m;
        const double height =
            2.0 * std::sqrt(matrices_.added[i][i] / (chain.water_kg_m3 * std::numbers::pi * length));
        const double stiffness =
            0.5 * chain.water_kg_m3 * speed_m_s_ * speed_m_s_ * height * length * length / stop_give_rad;
        const double inertia = inertia_[segments_ + i][segments_ + i];
        const double friction = tow.joint_friction_n_m + pin_friction * joint.pin_radius_m * drag_behind;
        joints_[i] = {-joint.stop_rad[0], joint.stop_rad[1],
                      stiffness,          2.0 * zeta * std::sqrt(stiffness * inertia),
                      friction,           slow};
        step_s_ = std::min(step_s_, step_of_stop * std::sqrt(inertia / stiffness));
    }
    // Friction is stopped by a shorter step, down to a quarter; joints that bind more are let creep instead,
    // so that the work is bounded.
    const double shortest = 0.25 * step_s_;
    for (std::size_t i = 1; i < segments_; ++i) {
        if (!(joints_[i].friction_n_m > 0.0)) continue;
        const double inertia = inertia_[segments_ + i][segments_ + i];
        const double stops_s = step_of_friction * slow * inertia / joints_[i].friction_n_m;
        step_s_ = std::min(step_s_, std::max(shortest, stops_s));
        joints_[i].slow_rad_s *= std::max(1.0, shortest / stops_s);
    }
}

double Motion::drag_n() const {
    return std::accumulate(drag_n_.begin(), drag_n_.end(), 0.0);
}

double Motion::joint_n_m(std::size_t i, double swing_rad, double rate_rad_s) const {
    const Joint& joint = joints_[i];
    double moment = -joint.friction_n_m * sign_of_turning(rate_rad_s / joint.slow_rad_s);
    if (swing_rad > joint.high_rad)
        moment += std::min(0.0, -joint.stiffness_n_m * (swing_rad - joint.high_rad) -
                                    joint.damping_n_m_s * rate_rad_s);
    else if (swing_rad < joint.low_rad)
        moment += std::max(0.0, -joint.stiffness_n_m * (swing_rad - joint.low_rad) -
                                    joint.damping_n_m_s * rate_rad_s);
    return moment;
}

// One look at the rates. The number of segments is known to the compiler, which unrolls: this is where all
// the time goes.
template <std::size_t n>
class Motion::Look {
public:
    Look(const Motion& of, const State& state) : of_(of), state_(state) {}

    void rates(State& out) {
        set_motions();
        add_wood_and_water();
        add_shed();
        add_drag();
        add_joints();
        set_forces();
        set_mass();
        solve();
        for (std::size_t k = 0; k <= n; ++k) {
            out[k] = state_[n + 1 + k];
            out[n + 1 + k] = force_[k];
        }
    }

private:
    void set_motions() {
        double vx = -of_.speed_m_s_, vy = state_[n + 1], gx = 0.0, gy = 0.0;
        for (std::size_t i = 0; i < n; ++i) {
            const double turning = state_[n + 2 + i];
            cos_[i] = std::cos(state_[1 + i]);
            sin_[i] = std::sin(state_[1 + i]);
            z_[i] = cos_[i] * vy - sin_[i] * vx;
            z_[n + i] = turning;
            u_[i] = cos_[i] * vx + sin_[i] * vy;
            across_[i] = cos_[i] * gy - sin_[i] * gx;
            along_[i] = cos_[i] * gx + sin_[i] * gy;
            const double round = of_.wood_[i].length_m * turning;
            vx -= round * sin_[i];
            vy += round * cos_[i];
            gx -= round * turning * cos_[i];
            gy -= round * turning * sin_[i];
        }
    }

    void add_wood_and_water() {
        double turned[n]; // what turning alone adds to the rate of W
        for (std::size_t i = 0; i < n; ++i)
            turned[i] = across_[i] - z_[n + i] * u_[i];
        for (std::size_t i = 0; i < n; ++i) {
            double momentum = 0.0, rate = 0.0, rate_about = 0.0;
            for (std::size_t k = 0; k < 2 * n; ++k)
                momentum += of_.matrices_.added[i][k] * z_[k];
            for (std::size_t k = 0; k < n; ++k) {
                rate += of_.matrices_.added[i][k] * turned[k];
                rate_about += of_.matrices_.added[n + i][k] * turned[k];
            }
            const Wood& wood = of_.wood_[i];
            const double turning = z_[n + i];
            const double munk = momentum - wood.surge_kg * z_[i];
            on_n_[i] = -wood.mass_kg * across_[i] - wood.surge_kg * u_[i] * turning - rate;
            on_t_[i] = -(wood.mass_kg + wood.surge_kg) * along_[i] +
                       (wood.moment_kg_m * turning + munk) * turning -
                       wood.form_kg_m * std::abs(u_[i]) * u_[i];
            moment_[i] = -wood.moment_kg_m * across_[i] - munk * u_[i] - rate_about;
        }
    }

    void add_shed() {
        for (std::size_t i = 0; i < n; ++i) {
            if (u_[i] >= 0.0) continue;
            const Matrix& shed = of_.matrices_.shed[i];
            double lost = 0.0;
            for (std::size_t r = 0; r < 2 * n; ++r) {
                double sum = 0.0;
                for (std::size_t k = 0; k < 2 * n; ++k)
                    sum += shed[r][k] * z_[k];
                lost += sum * z_[r];
                (r < n ? on_n_[r] : moment_[r - n]) += u_[i] * sum;
            }
            on_t_[i] -= 0.5 * lost;
        }
    }

    void add_drag() {
        for (std::size_t i = 0; i < n; ++i) {
            const double u2 = u_[i] * u_[i];
            double force = 0.0, about = 0.0, skin = 0.0;
            for (std::size_t k = of_.first_[i]; k < of_.first_[i + 1]; ++k) {
                const double w = z_[i] + of_.s_m_[k] * z_[n + i];
                const double friction = of_.skin_[k] * std::sqrt(std::sqrt(u2 + w * w));
                const double f = (of_.cross_kg_m_[k] * std::abs(w) + 0.5 * friction) * w;
                force += f;
                about += of_.s_m_[k] * f;
                skin += friction;
            }
            on_n_[i] -= force;
            moment_[i] -= about;
            on_t_[i] -= skin * u_[i];
        }
        for (const Hook& hook : of_.hooks_) {
            const std::size_t i = hook.segment;
            const double w = z_[i] + hook.s_m * z_[n + i];
            const double pull = hook.drag_kg_m * std::sqrt(u_[i] * u_[i] + w * w);
            on_n_[i] -= pull * w;
            moment_[i] -= hook.s_m * pull * w;
            on_t_[i] -= pull * u_[i];
        }
    }

    void add_joints() {
        for (std::size_t i = 1; i < n; ++i) {
            const double moment = of_.joint_n_m(i, state_[1 + i] - state_[i], z_[n + i] - z_[n + i - 1]);
            moment_[i] += moment;
            moment_[i - 1] -= moment;
        }
    }

    /// On y and on the headings: what acts behind a hinge moves with it.
    void set_forces() {
        double fx = 0.0, fy = 0.0;
        for (std::size_t i = n; i-- > 0;) {
            force_[i + 1] = moment_[i] + of_.wood_[i].length_m * (cos_[i] * fy - sin_[i] * fx);
            fx += cos_[i] * on_t_[i] - sin_[i] * on_n_[i];
            fy += sin_[i] * on_t_[i] + cos_[i] * on_n_[i];
        }
        force_[0] = fy - of_.line_n_m_ * state_[0];
    }

    /// Bᵀ·inertia·B + Σ (m + a)·TᵀT, its lower half; B: W of each segment by the rates of y and of the
    /// headings ahead of it, T: the same of its speed along.
    void set_mass() {
        double b[n][n + 1], t[n][n + 1], c[2 * n][n + 1];
        for (std::size_t i = 0; i < n; ++i) {
            b[i][0] = cos_[i];
            t[i][0] = sin_[i];
            for (std::size_t j = 0; j < i; ++j) {
                const double length = of_.wood_[j].length_m;
                b[i][j + 1] = length * (cos_[i] * cos_[j] + sin_[i] * sin_[j]);
                t[i][j + 1] = length * (sin_[i] * cos_[j] - cos_[i] * sin_[j]);
            }
        }
        for (std::size_t r = 0; r < 2 * n; ++r) { // inertia·B
            c[r][0] = 0.0;
            for (std::size_t j = 0; j < n; ++j)
                c[r][j + 1] = of_.inertia_[r][n + j];
            for (std::size_t i = 0; i < n; ++i) {
                for (std::size_t j = 0; j <= i; ++j)
                    c[r][j] += of_.inertia_[r][i] * b[i][j];
            }
        }
        for (std::size_t row = 0; row <= n; ++row) {
            for (std::size_t col = 0; col <= row; ++col) {
                double sum = col > 0 ? c[n + col - 1][row] : 0.0;
                for (std::size_t i = col; i < n; ++i)
                    sum += b[i][col] * c[i][row];
                for (std::size_t i = row; i < n; ++i)
                    sum += (of_.wood_[i].mass_kg + of_.wood_[i].surge_kg) * t[i][row] * t[i][col];
                mass_[row][col] = sum;
            }
        }
    }

    /// Cholesky; the accelerations take the place of the forces.
    void solve() {
        for (std::size_t row = 0; row <= n; ++row) {
            for (std::size_t col = 0; col < row; ++col) {
                double sum = mass_[row][col];
                for (std::size_t k = 0; k < col; ++k)
                    sum -= mass_[row][k] * mass_[col][k];
                mass_[row][col] = sum * mass_[col][col];
            }
            double sum = mass_[row][row], right = force_[row];
            for (std::size_t k = 0; k < row; ++k) {
                sum -= mass_[row][k] * mass_[row][k];
                right -= mass_[row][k] * force_[k];
            }
            mass_[row][row] = 1.0 / std::sqrt(sum);
            force_[row] = right * mass_[row][row];
        }
        for (std::size_t row = n + 1; row-- > 0;) {
            double sum = force_[row];
            for (std::size_t k = row + 1; k <= n; ++k)
                sum -= mass_[k][row] * force_[k];
            force_[row] = sum * mass_[row][row];
        }
    }

    const Motion& of_;
    const State& state_;
    double cos_[n]{}, sin_[n]{};      ///< of the headings
    double z_[2 * n]{}, u_[n]{};      ///< W, then turning; speed along
    double across_[n]{}, along_[n]{}; ///< acceleration of the fore hinge by turning alone, on n and t
    double on_n_[n]{}, on_t_[n]{}, moment_[n]{}; ///< force on each segment, and moment about its fore hinge
    double force_[n + 1]{}, mass_[n + 1][n + 1]{};
};

template <std::size_t n>
void Motion::advance_by(State& state, double step_s) const {
    State rate, sum, at = state;
    Look<n>(*this, at).rates(sum);
    const auto stage = [&](double weight) {
        Look<n>(*this, at).rates(rate);
        for (std::size_t k = 0; k < 2 * n + 2; ++k)
            sum[k] += weight * rate[k];
    };
    const auto go = [&](const State& by, double share) {
        for (std::size_t k = 0; k < 2 * n + 2; ++k)
            at[k] = state[k] + share * step_s * by[k];
    };
    go(sum, 0.5);
    stage(2.0);
    go(rate, 0.5);
    stage(2.0);
    go(rate, 1.0);
    stage(1.0);
    for (std::size_t k = 0; k < 2 * n + 2; ++k)
        state[k] += step_s / 6.0 * sum[k];
}

State Motion::rates(const State& state) const {
    State out{};
    switch (segments_) {
    case 2:
        Look<2>(*this, state).rates(out);
        break;
    case 3:
        Look<3>(*this, state).rates(out);
        break;
    case 4:
        Look<4>(*this, state).rates(out);
        break;
    case 5:
        Look<5>(*this, state).rates(out);
        break;
    default:
        Look<most_segments>(*this, state).rates(out);
        break;
    }
    return out;
}

void Motion::advance(State& state, double step_s) const {
    switch (segments_) {
    case 2:
        return advance_by<2>(state, step_s);
    case 3:
        return advance_by<3>(state, step_s);
    case 4:
        return advance_by<4>(state, step_s);
    case 5:
        return advance_by<5>(state, step_s);
    default:
        return advance_by<most_segments>(state, step_s);
    }
}

} // namespace evenfall::swim
