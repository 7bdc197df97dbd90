#pragma once

#include "body/body.hpp"
#include "document/document.hpp"

namespace evenfall::holes {

/// Where a hole's axis meets the skin and in which direction it is drilled.
struct Bore {
    int segment = -1; ///< −1: the axis meets no wood
    double x_m = 0.0;
    double y_m = 0.0;
    double inward = 1.0;    ///< +1 drilled up from the belly, −1 down from the back
    double mouth_z_m = 0.0; ///< skin height on the axis
    /// By how much the mean depth of the hole is less than its depth on the axis, because the skin curves
    /// across it; ≥ 0 on a convex skin; equal to far_skin_m where the bit is wider than the wood.
    double skin_drop_m = 0.0;
    double far_skin_m = 0.0; ///< depth at which the axis would come out on the far side
    double area_m2 = 0.0;
    double cone_m3 = 0.0; ///< volume of the drill point, beyond the depth
    double cone_height_m = 0.0;
};

/// Locates a hole in the uncut lines and finds its segment.
[[nodiscard]] Bore place(const document::Hole& hole, const shape::Body& body);

/// A part of a hole along its axis.
struct HolePart {
    double volume_m3 = 0.0;
    double z_m = 0.0; ///< height of its centroid
};

/// What is where in a hole, from the skin inward.
struct HoleContents {
    HolePart wood; ///< all wood that the bit removes, drill point included
    HolePart cap;
    HolePart empty; ///< empty space under the cap; without a cap, open to the water
    HolePart fill;
    double fill_kg = 0.0;
    double fill_column_m = 0.0; ///< length of the fill along the axis, drill point not counted
    double room_m = 0.0;        ///< length that a fill may take: depth less fill_free_m(); ≥ 0
    bool floods = false;        ///< true without a cap
};

/// Depth on the axis that must stay free of fill. A cap has the document's length on the axis; where the skin
/// curves away so far over the mouth that less than half of the length would be left on average, the cap is
/// set deeper, until half is left. Without a cap the fill ends flush with the skin on average.
[[nodiscard]] double fill_free_m(const document::Hole& hole, const Bore& bore);

/// The contents of a hole as given in the document. The fill may come out longer than room_m; hole_checks.hpp
/// refuses that. A fill of the hole's full diameter also fills the drill point; a thinner rod ends above it.
[[nodiscard]] HoleContents contents(const document::Hole& hole, const Bore& bore);

/// True for a hole filled with wood or glue from end to end: a plug, no ballast.
[[nodiscard]] bool is_plugged(const document::Hole& hole);

/// Height of the 118° drill point over its diameter: ½·tan(31°) = 0.30043.
inline constexpr double point_height_per_diameter = 0.300430309513;

} // namespace evenfall::holes
