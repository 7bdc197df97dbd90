#pragma once

#include "base/outcome.hpp"
#include "base/vec3.hpp"
#include "body/lines.hpp"
#include "document/document.hpp"

#include <memory>
#include <vector>

namespace evenfall::shape {

/// One cut face of a segment at a joint (both flanks of the V together).
struct Face {
    double area_m2 = 0.0;
    Vec3 centroid_m;
    double rim_m = 0.0; ///< length of the edge between face and skin
};

/// One segment of wood, before holes and pockets.
struct Segment {
    double x_from_m = 0.0; ///< x of the face on the middle plane (y = 0); the gap is outside
    double x_to_m = 0.0;
    double volume_m3 = 0.0;
    Vec3 centroid_m;
    Inertia inertia_m5;   ///< of the volume, about its centroid
    double skin_m2 = 0.0; ///< outer skin, with the end discs of nose and tail, without joint faces
    Vec3 skin_centroid_m;
    /// ∬H dA over all surfaces and edges, H the mean curvature [m]: a film of thickness t on all surfaces
    /// adds S·t + M·t² + … to the volume (Steiner 1840). Computed in segment_sums.hpp and relief.hpp.
    double curvature_m = 0.0;
    std::vector<Face>
        faces; ///< fore then aft; the nose segment has only an aft one, the tail segment only a fore one
};

/// The carved body cut into segments at its joints. Cheap to copy: the lines are shared and constant.
struct Body {
    std::shared_ptr<const Lines> lines;
    std::vector<document::Joint> joints;
    std::vector<Segment> segments; ///< nose to tail, joints + 1
};

/// The lines of a drawn shape. Problems name the field ("/shape/top_mm/3").
[[nodiscard]] Outcome<std::shared_ptr<const Lines>> drawn_lines(const document::Shape& shape);

/// Cuts lines into segments at the joints. Refused ("/joints/1/gap_mm"): numbers outside their limits, joints
/// out of order or outside the body, a segment without wood between its faces, reliefs of one segment that
/// meet inside its wood, a relief on a taper so steep that flank and skin do not meet in one clear edge.
///
/// Error: volume and centroid of full sections of constant parameter to rounding; a relief adds below 3e-7 of
/// the segment's volume for exponents 2 to 4 and below 5e-6 for any. Skin within 2e-5 on the tests' smooth
/// bodies, 2e-4 where few stations draw a slender body, 3e-3 where they draw a stout one. Curvature within
/// 5e-3, a milligram of epoxy. Checked against closed forms and slow reference methods in tests/published and
/// tests/unit. A drawing that changes by its own width within a relief has larger errors (1e-2).
[[nodiscard]] Outcome<Body> cut(std::shared_ptr<const Lines> lines,
                                const std::vector<document::Joint>& joints);

/// The segment that contains x on the middle plane; −1 in a gap or outside the body.
[[nodiscard]] int segment_at(const Body& body, double x_m);

/// The segment nearest to x (never −1).
[[nodiscard]] int nearest_segment(const Body& body, double x_m);

/// Height of back and belly at (x, y); both NaN where there is no wood (|y| beyond the plan).
struct SkinHeights {
    double back_z_m = 0.0;
    double belly_z_m = 0.0;
};
[[nodiscard]] SkinHeights skin_heights(const Lines& lines, double x_m, double y_m);

/// Half width of the skin at (x, z); 0 outside the body, above the back or below the belly.
[[nodiscard]] double skin_half_width(const Lines& lines, double x_m, double z_m);

/// Skin heights over a round hole of the given diameter along z at (x, y): on its axis, and the mean over its
/// disc, for back and belly. The wood removed by a hole is π/4·d²·(depth − (height on the axis − mean height,
/// signed)). Seven-point disc rule of degree 5 (Radon 1948; Stroud 1971, S2 5-1). NaN where any of those
/// points is outside the plan.
struct ColumnSkin {
    double back_axis_z_m = 0.0;
    double back_mean_z_m = 0.0;
    double belly_axis_z_m = 0.0;
    double belly_mean_z_m = 0.0;
};
[[nodiscard]] ColumnSkin column_skin(const Lines& lines, double x_m, double y_m, double diameter_m);

/// The part of one segment's wood inside an axis-aligned box.
struct BoxCut {
    double volume_m3 = 0.0;
    Vec3 centroid_m;
};
struct Box {
    double x_from_m = 0.0, x_to_m = 0.0;
    double y_from_m = 0.0, y_to_m = 0.0;
    double z_from_m = 0.0, z_to_m = 0.0; ///< may be ∓infinity

    bool operator==(const Box&) const = default;
};
/// The box that a pocket removes from the wood; absent heights become infinite.
[[nodiscard]] Box box_of(const document::Pocket& pocket);

/// The segment's faces with their reliefs limit the wood. Exact where only the box limits it; where skin
/// does, within 1e-4. Where nothing overlaps, the volume is zero and the centroid undefined.
[[nodiscard]] BoxCut box_in_segment(const Body& body, int segment, const Box& box);

/// For drawing: closed outline of one segment from the side (x, z), from above (x, y), and of a section (y,
/// z). Points in metres, about `detail` per side; the relief shows in the view from above.
struct Point2 {
    double u = 0.0;
    double v = 0.0;
};
[[nodiscard]] std::vector<Point2> side_outline(const Body& body, int segment, int detail);
[[nodiscard]] std::vector<Point2> top_outline(const Body& body, int segment, int detail);
[[nodiscard]] std::vector<Point2> section_outline(const Lines& lines, double x_m, int detail);

} // namespace evenfall::shape
