#pragma once

// The equations of motion of a chain towed at a steady speed, seen from above.
//
// The tow's frame: the line tie is held at x = 0 by a line that does not stretch, and is free sideways; water
// streams at +U along x. State: y of the tie and the heading of each segment (its tail to +y positive), then
// their rates. Segment i has t = (cos θ, sin θ) along it and n = (−sin θ, cos θ) across; its fore hinge moves
// against the water at u along t and W along n, so that a slice at s goes across at w = W + s·θ'.
//
//   wood    mass m, moments c and H about the fore hinge: force −m·r'' − c(θ''·n − θ'²·t), moment −H·θ'' − c
//   n·r'' water   with P = added·z, z = (W…, θ'…), and the surge mass a: −d/dt P across and about the hinge,
//           (P_W − a·W)θ'·t − a·u·θ'·n − a(t·r'')t along, and the moment −(P_W − a·W)·u of Munk: Lagrange's
//           equations of ½ zᵀ·added·z + ½ Σ a·u² (Lighthill 1971, elongated bodies, from memory)
//   shed    u·shed·z on z, and −½ zᵀ·shed·z on t (matrices.hpp); not where it goes tail first
//   across  −N|w|w − ½R√V·w on each slice, V = √(u² + w²) (Taylor 1952, from memory)
//   along   −R√V·u on each slice, −S|u|u of form; hooks −K·V against their motion
//   joints  friction M·tanh(δ'/σ) against δ', of the pin by the drag of all behind it and of its own; beyond
//           its stop a joint is pushed back, never pulled, as stiffly as the water turns its segment in a
//           quarter degree, and bounces by 0.3
//   line    −T/ℓ·y, T the drag of the straight chain
//
// Left out: roll, pitch, bending, the wake's memory but for `shed`.

#include "water/swim/matrices.hpp"

#include <array>
#include <vector>

namespace evenfall::swim {

/// y, then headings; then their rates. Of a chain of n segments 2n + 2 numbers.
using State = std::array<double, 2 * most_segments + 2>;

class Motion {
public:
    /// 2 to most_segments segments with slices; speed, line and lengths > 0.
    Motion(const Chain& chain, const Closures& closures, const Tow& tow);

    [[nodiscard]] std::size_t segments() const { return segments_; }
    [[nodiscard]] double speed_m_s() const { return speed_m_s_; }
    [[nodiscard]] const Matrices& matrices() const { return matrices_; }
    /// Drag of a segment of the straight chain [N].
    [[nodiscard]] double drag_n(std::size_t segment) const { return drag_n_[segment]; }
    [[nodiscard]] double drag_n() const;
    [[nodiscard]] double line_n_m() const { return line_n_m_; } ///< T/ℓ

    /// What joint `i` ahead of segment i (from 1) turns that segment with, at a swing and its rate.
    [[nodiscard]] double joint_n_m(std::size_t i, double swing_rad, double rate_rad_s) const;

    [[nodiscard]] State rates(const State& state) const;
    /// The longest time step that keeps the stops and the friction stable with room.
    [[nodiscard]] double step_s() const { return step_s_; }
    /// Goes on by one time step (Runge and Kutta's classical fourth order).
    void advance(State& state, double step_s) const;

private:
    template <std::size_t n>
    class Look;
    template <std::size_t n>
    void advance_by(State& state, double step_s) const;
    void set_slices(const Chain& chain, const Closures& closures);
    void set_joints(const Chain& chain, const Tow& tow);

    struct Wood {
        double length_m, mass_kg, moment_kg_m, surge_kg, form_kg_m;
    };
    struct Joint {
        double low_rad, high_rad, stiffness_n_m, damping_n_m_s, friction_n_m;
        double slow_rad_s; ///< σ: a joint that turns more slowly sticks by less
    };
    struct Hook {
        std::size_t segment;
        double s_m, drag_kg_m;
    };

    std::size_t segments_ = 0;
    double speed_m_s_ = 0.0;
    double line_n_m_ = 0.0;
    double step_s_ = 0.0;
    Matrices matrices_;
    Matrix inertia_{}; ///< added mass and wood
    std::array<Wood, most_segments> wood_{};
    std::array<Joint, most_segments> joints_{}; ///< by the segment behind it; the first is none
    std::array<double, most_segments> drag_n_{};
    std::vector<Hook> hooks_;
    // Slices, fore to aft; those of segment i begin at first_[i].
    std::array<std::size_t, most_segments + 1> first_{};
    std::vector<double> s_m_, cross_kg_m_, skin_;
};

} // namespace evenfall::swim
