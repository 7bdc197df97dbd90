#pragma once

// Equations of motion of a body that sinks or rises in still water, free to move along and vertically and to
// pitch. Axes fixed in the body at its centre of buoyancy B: ξ forward, ζ down (towards the belly), nose-up
// positive.

#include "materials/water_properties.hpp"
#include "water/fall/drag_items.hpp"
#include "water/fall/hull.hpp"

#include <array>
#include <span>
#include <vector>

namespace evenfall::fall {

/// The whole lure at one stage, from the ledger.
struct MassProperties {
    double mass_kg = 0.0;
    double displaced_m3 = 0.0;
    Vec3 g_m;
    Vec3 b_m;
    double pitch_inertia_kg_m2 =
        0.0; ///< of the mass, about the level axis through B perpendicular to the long axis
};

/// Uncertain parts of the model, each at its usual value. The ends of each range are an own estimate,
/// explained beside it.
struct ModelFactors {
    /// −1 … 0 … 1: end effect on the drag across the body at its low, usual, high value: HydroBody::ends.
    double ends = 0.0;
    /// −1 … 0 … 1: drag of the parts at its low, usual, high value: drag_items.hpp.
    double parts = 0.0;
    /// Share of the ideal moment that turns a body broadside to its path (Munk). 1 in ideal flow; down to 0.7
    /// where a wake is shed along the back, as in a fall (from memory: slender bodies at incidence, 10 to 30
    /// % less).
    double munk = 1.0;
    /// Factor on the drag along the body: 0.6 to 1.4 (hull.hpp).
    double along = 1.0;
    /// Factor on all drag, of body and parts: from timed falls of this lure, 1 without them.
    double drag = 1.0;
};

/// Speeds in the body's axes and its pitch.
struct MotionState {
    double along_m_s = 0.0;      ///< u, forward
    double across_m_s = 0.0;     ///< w, towards the belly
    double pitching_rad_s = 0.0; ///< q, nose going up
    double pitch_rad = 0.0;      ///< θ
};

/// Force and moment about B in the body's axes.
struct Load {
    double along_n = 0.0;
    double across_n = 0.0;
    double moment_n_m = 0.0; ///< nose-up positive
};

/// Everything that a steady fall needs: with q = 0 strips and parts reduce to a few sums. Drag across =
/// (cross_p·w + cross_f·√w)·w + parts·V·w, and likewise along; all include ½ρ and κ.
struct SteadySums {
    double cross_p = 0.0, cross_f = 0.0;                       // ∑, [kg/m], [kg/(m·s)^½ …]
    double cross_p_arm = 0.0, cross_f_arm = 0.0;               // ∑ ξ
    double along_p = 0.0, along_f = 0.0, along_arm = 0.0;      // arm: ζ of the skin's centroid
    double parts = 0.0, parts_forward = 0.0, parts_down = 0.0; // ∑, ∑ ξ, ∑ ζ
    double weight_n = 0.0;                                     ///< weight in water; negative floats
    double righting_n_m = 0.0;                                 ///< m·g·(G below B)
    double forward_n_m = 0.0;                                  ///< m·g·(G forward of B)
    double munk_kg = 0.0; ///< (added mass across − along)·ModelFactors::munk

    /// The speeds at which drag balances the weight in water when the lure is held at a pitch from −90° to
    /// 90°. Unique; relative error 1e-12.
    struct Speeds {
        double along_m_s = 0.0;
        double across_m_s = 0.0;
        [[nodiscard]] double vertical_m_s(double pitch_rad) const; ///< down positive
    };
    [[nodiscard]] Speeds speeds(double pitch_rad) const { return speeds(pitch_rad, {}); }
    /// The same, found sooner from speeds at a pitch nearby.
    [[nodiscard]] Speeds speeds(double pitch_rad, const Speeds& near) const;

    /// The nose-up moment left at those speeds [N·m]: zero in a steady fall.
    [[nodiscard]] double moment_n_m(double pitch_rad, const Speeds& speeds) const;
    [[nodiscard]] double moment_n_m(double pitch_rad) const {
        return moment_n_m(pitch_rad, speeds(pitch_rad));
    }
};

/// Masses and added masses about B, for (u, w, q); symmetric.
using InertiaMatrix = std::array<std::array<double, 3>, 3>;
[[nodiscard]] InertiaMatrix inertia_matrix(const HydroBody& hull, const MassProperties& weights,
                                           const materials::WaterProperties& water);

/// Drag of a part over its own speed squared [kg/m]: ½ρ·CdA with these factors.
[[nodiscard]] double part_drag(const DragItem& item, const materials::WaterProperties& water,
                               const ModelFactors& closure);

[[nodiscard]] SteadySums steady_sums(const HydroBody& hull, const MassProperties& weights,
                                     std::span<const DragItem> items, const materials::WaterProperties& water,
                                     const ModelFactors& closure = {});

/// The full equations, for one lure in one water.
///
///   momenta    p = M·(u, w, q), M the masses and added masses about B
///   d/dt p_ξ = X − q·p_ζ
///   d/dt p_ζ = Z + q·p_ξ
///   d/dt h = N − (w·p_ξ − u·p_ζ)    (Kirchhoff; Lamb, Art. 124); the bracket contains the Munk moment
///   w at a strip: w − ξq
///
/// Not modelled: lift beyond Munk and crossflow, unsteady wake, the line, currents, roll and yaw.
class Motion {
public:
    Motion(const HydroBody& hull, const MassProperties& weights, std::span<const DragItem> items,
           const materials::WaterProperties& water, const ModelFactors& closure = {});

    /// Rates of along, across, pitching [m/s², rad/s²]; the rate of pitch is `pitching`.
    [[nodiscard]] std::array<double, 3> rates(const MotionState& state) const;
    /// The same, with the power dissipated by drag [W], ≥ 0 where closure.munk is 1.
    struct Rates {
        std::array<double, 3> rate{};
        double lost_w = 0.0;
    };
    [[nodiscard]] Rates rates_and_loss(const MotionState& state) const;

    /// Resistance: drag of body and parts, and the wake's reduction of the Munk moment.
    [[nodiscard]] Load drag(const MotionState& state) const;

    /// Kinetic energy, including the water's [J].
    [[nodiscard]] double kinetic_j(const MotionState& state) const;
    /// Work of weight and buoyancy [J] from B at depth 0, level, to this depth and pitch.
    [[nodiscard]] double work_j(double depth_m, double pitch_rad) const;

    [[nodiscard]] const SteadySums& sums() const { return sums_; }
    [[nodiscard]] double heave_mass_kg() const { return inertia_[1][1]; } ///< mass and added mass across

private:
    struct Slice {
        double forward_m, p, f;
    };
    struct Item {
        double forward_m, down_m, k;
    };
    SteadySums sums_;
    std::vector<Slice> slices_;
    std::vector<Item> items_;
    std::array<std::array<double, 3>, 3> inertia_{};
    std::array<std::array<double, 3>, 3> inverse_{};
    double munk_loss_kg_ = 0.0;
};

} // namespace evenfall::fall
