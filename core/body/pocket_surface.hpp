#pragma once

// The surfaces that a box pocket exposes and removes: what a coat can cover there.

#include "body/body.hpp"

namespace evenfall::shape {

/// An area and its centroid; the origin where the area is zero.
struct Patch {
    double area_m2 = 0.0;
    Vec3 moment_m3; ///< ∫r dA

    [[nodiscard]] Vec3 centroid_m() const { return area_m2 > 0.0 ? moment_m3 / area_m2 : Vec3{}; }
};

struct PocketSurface {
    Patch wall;                ///< the box's own sides, where they are wood
    double inner_edge_m = 0.0; ///< length of the edges where two of those sides meet, in wood
    Patch skin;  ///< outer skin inside the box, now removed; flat ends of nose and tail count as skin
    Patch faces; ///< joint faces inside the box, now removed
};

/// The surfaces of one segment and one box.
///
/// A box side that coincides with a joint face, or with a flat nose or tail, is no wall: the box is open
/// there. Walls bounded by the box alone are exact; where skin bounds them, and for the skin itself, within
/// 1e-3 of the wall (by cubes and closed forms in pocket_surface_test.cpp).
[[nodiscard]] PocketSurface pocket_surface(const Body& body, int segment, const Box& box);

} // namespace evenfall::shape
