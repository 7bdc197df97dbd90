#pragma once

#include "body/body.hpp"
#include "body/pin.hpp"

namespace evenfall::joints {

/// No joint is followed farther than this.
inline constexpr double most_swing_rad = 2.0943951023931953; // 120°

/// How far the part aft of a joint swings one way before wood touches wood.
struct Swing {
    double angle_rad = 0.0;   ///< 0 where films fill the gap; at most most_swing_rad
    double touches_z_m = 0.0; ///< height at which they touch
    double touches_r_m = 0.0; ///< distance of that place from the pin
    bool stopped = false;     ///< false: free as far as it is followed
};

/// True contact of the two cut solids: a point of wood keeps its height and its distance from the pin while
/// the joint swings, so the joint closes at the least angle, over all heights and distances, between the edge
/// of the one and that of the other. Edges are polygons in level planes (joints/plan_rim.hpp); two straight
/// edges meet first at a corner of one of them, so only corners are looked at. Pockets, eyes and pins are
/// left out (joints/eye_room.hpp has them).
///
/// coat_m  thickness of everything brushed on each face and on the skin
///
/// Against contact of triangle meshes: tests/mesh/joint_contact_test.cpp. For equal flat-sided faces it is
/// ψ = 2·atan(gap/(2b) + tanα) with b the half width at the corner.
[[nodiscard]] Swing swing(const shape::Body& body, int joint, const Pin& pin, Way way, double coat_m = 0.0);

} // namespace evenfall::joints
