#pragma once

#include "body/body.hpp"
#include "body/pin.hpp"

namespace evenfall::joints {

/// Largest swing that is computed.
inline constexpr double most_swing_rad = 2.0943951023931953; // 120°

/// How far the part aft of a joint swings to one side before wood touches wood.
struct Swing {
    double angle_rad = 0.0;   ///< 0 where films fill the gap; at most most_swing_rad
    double touches_z_m = 0.0; ///< height of the contact
    double touches_r_m = 0.0; ///< distance of the contact from the pin
    bool stopped = false;     ///< false: free up to most_swing_rad
};

/// Contact of the two cut solids: a point of wood keeps its height and its distance from the pin while the
/// joint swings, so the joint closes at the least angle, over all heights and distances, between the edges of
/// both parts. Edges are polygons in horizontal planes (plan_rim.hpp); two straight edges meet first at a
/// corner of one of them, so only corners are checked. Pockets, eyes and pins are not considered
/// (eye_room.hpp does).
///
///   coat_m  total thickness of coats on each face and on the skin
///
/// Tested against contact of triangle meshes: tests/mesh/joint_contact_test.cpp. For equal flat-sided faces
/// it is ψ = 2·atan(gap/(2b) + tanα) with b the half width at the corner.
[[nodiscard]] Swing swing(const shape::Body& body, int joint, const Pin& pin, SwingSide way,
                          double coat_m = 0.0);

} // namespace evenfall::joints
