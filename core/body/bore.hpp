#pragma once

#include "body/body.hpp"
#include "document/document.hpp"

namespace evenfall::holes {

/// A hole's place in the wood: where its axis meets the skin and which way it goes.
struct Bore {
    int segment = -1; ///< −1: its axis meets no wood
    double x_m = 0.0;
    double y_m = 0.0;
    double inward = 1.0;    ///< +1 bored up from the belly, −1 bored down from the back
    double mouth_z_m = 0.0; ///< skin height on the axis
    /// How much less deep the hole is on average than on its axis, because the skin curves across it; ≥ 0 on
    /// a convex skin; all of far_skin_m where the bit is wider than the wood.
    double lens_m = 0.0;
    double far_skin_m = 0.0; ///< depth at which the axis would come out on the other side
    double area_m2 = 0.0;
    double cone_m3 = 0.0; ///< drill point beyond the depth
    double cone_height_m = 0.0;
};

/// Places a hole in the uncut lines and finds its segment.
[[nodiscard]] Bore place(const document::Hole& hole, const shape::Body& body);

/// A stretch of a hole along its axis, from the skin inward.
struct Stretch {
    double volume_m3 = 0.0;
    double z_m = 0.0; ///< height of its centroid
};

/// What is where in a hole of given depth: wood taken out, cap, void and fill, from the skin inward.
struct Contents {
    Stretch wood; ///< all that the bit took out, drill point included
    Stretch cap;
    Stretch empty; ///< void under the cap, or open to the water where there is no cap
    Stretch fill;
    double fill_kg = 0.0;
    double fill_column_m = 0.0; ///< length of the fill along the axis, cone not counted
    double room_m = 0.0;        ///< depth less what is covered: what a fill may take; ≥ 0
    bool floods = false;        ///< no cap
};

/// How far inward on the axis a fill must keep away from the skin. A cap is as long on the axis as the
/// document says; where the skin curves away over the mouth so far that less than half of it would be left on
/// average, it goes in deeper, until half is. Without a cap a fill ends flush with the skin on average.
[[nodiscard]] double covered_m(const document::Hole& hole, const Bore& bore);

/// The contents of a hole as the document has it. The fill's column may come out longer than the room; the
/// checks refuse that (holes/checks.hpp). A fill of full width runs into the drill point; a thinner rod
/// stands on the shoulder.
[[nodiscard]] Contents contents(const document::Hole& hole, const Bore& bore);

/// Height of the 118° point over its diameter: ½·tan(31°) = 0.30043.
inline constexpr double point_height_per_diameter = 0.300430309513;

} // namespace evenfall::holes
