#pragma once

#include "base/vec3.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::afloat {

/// Attitude of a floating lure: pitch nose-up positive, heel starboard-down positive (as in hang.hpp).
struct Attitude {
    double pitch_rad = 0.0; ///< −π/2 to π/2
    double heel_rad = 0.0;  ///< −π to π; undefined where the lure stands on nose or tail
};

/// The world's up as a unit vector in the lure's axes: (−sin θ, −cos θ sin φ, cos θ cos φ).
inline Vec3 up_of(const Attitude& a) {
    const double c = std::cos(a.pitch_rad);
    return {-std::sin(a.pitch_rad), -c * std::sin(a.heel_rad), c * std::cos(a.heel_rad)};
}

inline Attitude attitude_of(const Vec3& up) {
    return {std::asin(std::clamp(-up.x, -1.0, 1.0)), std::atan2(-up.y, up.z)};
}

/// Two unit vectors that span the waterplane: `along` lies in the vertical plane through the lure's long axis
/// and points aft, `across` points to starboard on an upright lure. Both horizontal.
struct LevelAxes {
    double tilt = 1.0; ///< sine of the angle between long axis and vertical: √(up_y² + up_z²)
    Vec3 along;
    Vec3 across;
};

/// `up` must not be exactly along x (tilt > 0); FloatingHull::immersed ensures that.
inline LevelAxes level_axes(const Vec3& up) {
    LevelAxes a;
    a.tilt = std::hypot(up.y, up.z);
    const double my = up.y / a.tilt;
    const double mz = up.z / a.tilt;
    a.along = {a.tilt, -up.x * my, -up.x * mz};
    a.across = {0.0, mz, -my};
    return a;
}

/// `up` turned by an angle towards a unit vector perpendicular to it.
inline Vec3 turned(const Vec3& up, const Vec3& towards, double angle_rad) {
    const Vec3 v = std::cos(angle_rad) * up + std::sin(angle_rad) * towards;
    return v / length(v);
}

} // namespace evenfall::afloat
