#pragma once

// What a box pocket lays bare and what it takes away: the surfaces that a coat finds there.

#include "body/body.hpp"

namespace evenfall::shape {

/// An area and where its middle lies; the origin where there is none.
struct Patch {
    double area_m2 = 0.0;
    Vec3 moment_m3; ///< ∫r dA

    [[nodiscard]] Vec3 centroid_m() const { return area_m2 > 0.0 ? moment_m3 / area_m2 : Vec3{}; }
};

struct PocketSurface {
    Patch wall;                ///< the box's own sides, as far as they stand in wood
    double inner_edge_m = 0.0; ///< length of the edges in which two of those sides meet, in wood
    Patch skin;  ///< outer skin inside the box: no longer there. Flat ends of nose and tail count as skin
    Patch faces; ///< joint faces inside the box
};

/// The surfaces of one segment and one box.
///
/// A box side that lies in a joint face, or in a flat nose or tail, is no wall: the box opens there.
/// Walls bounded by the box alone are exact; where skin bounds them, and for the skin itself, within 1e-3 of
/// the wall (by cubes and closed forms in tests/unit/shape/pocket_surface_test.cpp).
[[nodiscard]] PocketSurface pocket_surface(const Body& body, int segment, const Box& box);

} // namespace evenfall::shape
