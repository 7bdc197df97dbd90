#pragma once

// Energy of a floating body and its derivatives. Private to the solvers of this folder.

#include "water/afloat/rest.hpp"

#include <array>

namespace evenfall::afloat {

/// Energy per ρ·g [m⁴] at one attitude and depth, with gradient and second derivatives in depth and in small
/// rotations of `up` towards level.along and level.across.
struct FloatState {
    Vec3 up;
    double depth_m = 0.0;
    Immersion cut;
    double energy = 0.0;
    double over = 0.0;            ///< ∂E/∂depth: volume less wanted volume
    std::array<double, 2> turn{}; ///< ∂E/∂angle, at constant depth
    // Second derivatives with the depth adjusted so that ∂E/∂depth stays constant: those of the waterplane
    // about its own centroid, plus B above G. Divided by the wanted volume they are metacentric heights.
    double stiff_along = 0.0;
    double stiff_across = 0.0;
    double stiff_mixed = 0.0;
};

[[nodiscard]] FloatState state_at(const Afloat& afloat, const Vec3& up, double depth_m);

[[nodiscard]] Posture posture_of(const Vec3& up);

/// Full description of a rest at an equilibrium state. Its energy is absolute, not yet relative to other
/// rests.
[[nodiscard]] Rest rest_at(const Afloat& afloat, const FloatState& state);

} // namespace evenfall::afloat
