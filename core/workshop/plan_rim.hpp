#pragma once

#include "body/body.hpp"
#include "body/pin.hpp"

#include <vector>

namespace evenfall::joints {

/// The edge of a segment's wood in a horizontal plane, relative to the pin. Points run from the face's middle
/// outward along the flank of the side that closes when the joint swings, round its corner and along the skin
/// away from the joint; for a pin off the middle plane, the points of the other side come first, from its
/// skin to the face. Axes: u along the lure, away from the joint, v towards the closing side, origin at the
/// pin.
struct PlanRim {
    std::vector<double> u;
    std::vector<double> v;

    void add(double u_m, double v_m) {
        u.push_back(u_m);
        v.push_back(v_m);
    }
};

/// One face at a joint, as half of a V, and the skin behind it.
struct RimRequest {
    int joint = 0;
    bool aft_part = false; ///< false: the segment before the joint
    Pin pin;
    SwingSide way = SwingSide::starboard;
    double z_m = 0.0;    ///< height of the plane
    double coat_m = 0.0; ///< total thickness of coats on face and skin; ≥ 0
};

/// Empty where the segment has no wood at this height near the joint. Coats move flank and skin out along
/// their normals in the plane, and round the corner between them. The vertical slope of the skin is left out:
/// it is smallest where the body is widest, and there a joint touches first.
[[nodiscard]] PlanRim plan_rim(const shape::Body& body, const RimRequest& request);

} // namespace evenfall::joints
