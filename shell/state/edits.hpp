#pragma once

// The changes a builder makes, as pure functions document → document. They do not check whether the result
// can be built: the core does, when the session evaluates it.

#include "evenfall.hpp"
#include "state/session.hpp"
#include "state/view_state.hpp"

#include <functional>

namespace evenfall::shell::state {

/// Changes one entry of a list; the document is unchanged where there is no such entry.
[[nodiscard]] Edit on_document(std::function<void(document::Document&)> change);
[[nodiscard]] Edit on_joint(int index, std::function<void(document::Joint&)> change);
[[nodiscard]] Edit on_hole(int index, std::function<void(document::Hole&)> change);
[[nodiscard]] Edit on_pocket(int index, std::function<void(document::Pocket&)> change);
[[nodiscard]] Edit on_hanger(int index, std::function<void(document::Hanger&)> change);
[[nodiscard]] Edit on_part(int index, std::function<void(document::Part&)> change);
[[nodiscard]] Edit on_coat(int index, std::function<void(document::Coat&)> change);

[[nodiscard]] Edit on_tail(std::function<void(document::Tail&)> change);
[[nodiscard]] Edit on_reading(int index, std::function<void(document::Reading&)> change);

/// The list of points of one curve of the drawing.
[[nodiscard]] document::CurvePoints& curve_points(document::Document& document, CurveKind curve);
[[nodiscard]] const document::CurvePoints& curve_points(const document::Document& document, CurveKind curve);

/// Length of the drawn body [m], from its back line; 0 for an empty drawing.
[[nodiscard]] double drawn_length_m(const document::Document& document);
/// Greatest height and width of the drawn points [m].
[[nodiscard]] double drawn_height_m(const document::Document& document);
[[nodiscard]] double drawn_width_m(const document::Document& document);

/// Scales the whole lure: body, joints, places and depths of holes, pockets, places of parts. Fill masses
/// follow the depths. Bits, gaps, part masses and coats stay, since they are bought. `length_m` > 0.
[[nodiscard]] Edit scale_whole(double length_m);
/// Scales the height only: back and belly, hole depths and fill masses, heights of parts and pockets. > 0.
[[nodiscard]] Edit scale_height(double height_m);
/// Scales the width only: the width line and everything off the middle. > 0.
[[nodiscard]] Edit scale_width(double width_m);

/// Adds a point in the middle of the longest span of a curve, on the straight line between its neighbours.
[[nodiscard]] Edit add_curve_point(CurveKind curve);
void halve_longest_span(document::CurvePoints& points);
/// Removes a point; the ends stay.
[[nodiscard]] Edit remove_curve_point(CurveKind curve, int index);
/// Moves a point of a curve; the ends keep their x, the others stay between their neighbours.
[[nodiscard]] Edit move_curve_point(CurveKind curve, int index, double x_m, double value);

/// The place on a drawn half-section nearest to a point, all in shares of half width and half height.
struct SectionSpot {
    int place = 0;               ///< index that a new point there would get; 0 where the outline has no sides
    document::OutlinePoint at{}; ///< on the outline
    double away = 0.0;           ///< distance from the given point
};
[[nodiscard]] SectionSpot nearest_on_section(const std::vector<document::OutlinePoint>& outline, double y,
                                             double z);
/// Adds a point to the drawn half-section before point `place`, or in the middle of its longest side.
[[nodiscard]] Edit add_section_point(int place, document::OutlinePoint at);
[[nodiscard]] Edit add_section_point();
/// Removes a point; belly, back and the last one of full width stay, and at least three points.
[[nodiscard]] Edit remove_section_point(int index);
/// Moves a point to shares of half width (0 to 1) and half height (−1 to 1); belly and back stay in place.
[[nodiscard]] Edit put_section_point(int index, double y, double z);

// Corrections of an entry, and readings of a single segment, follow their entry through all of these changes.

/// Adds a joint where there is most room between joints, holes and ends. The name stays with the fore half;
/// readings of the divided segment are excluded.
[[nodiscard]] Edit add_joint();
/// Cuts the segment behind a joint in the middle, with the same gap, reliefs and hinge.
[[nodiscard]] Edit copy_joint(int index);
/// Joins the segments on both sides of a joint; the fore one's name stays, readings of either alone are
/// excluded.
[[nodiscard]] Edit remove_joint(int index);
/// Another place, gap, relief or hinge of one joint; pockets round its pin go along with it.
[[nodiscard]] Edit set_joint(int index, const document::Joint& joint);
/// Joints so that all segments are of one length; pockets round their pins go along.
[[nodiscard]] Edit spread_joints();
/// Gap, reliefs and hinge of one joint for all of them; each keeps its place and the heights of its eyes.
[[nodiscard]] Edit same_for_all_joints(int index);

/// Adds a belly hole, not drilled yet, where there is most room along the body.
[[nodiscard]] Edit add_hole();
[[nodiscard]] Edit remove_hole(int index);
/// A hole drilled by mistake, filled from end to end with a glued dowel; the lead plan leaves it alone.
[[nodiscard]] Edit plug_hole(int index);
/// Adds a hole like it, a diameter and a wall aft of it.
[[nodiscard]] Edit duplicate_hole(int index);

/// A usual hinge, epoxied; it weighs itself unless parts are typed in for its wire.
[[nodiscard]] Edit draw_hinge(int joint);
/// Parts typed in for the wire of a joint's hinge: hardware of metal, partly in wood, nearer to this joint
/// than to any other and at most 15 mm from it; by index.
[[nodiscard]] std::vector<int> parts_of_hinge(const document::Document& document, int joint);
/// The hinge weighs itself; the parts typed in for it go.
[[nodiscard]] Edit let_hinge_weigh(int joint);

/// Adds a line tie to a lure without one, else a hanger on the belly where there is most room.
[[nodiscard]] Edit add_hanger();
[[nodiscard]] Edit remove_hanger(int index);

[[nodiscard]] Edit add_part(Stage stage);
[[nodiscard]] Edit remove_part(int index);
[[nodiscard]] Edit duplicate_part(int index);

[[nodiscard]] Edit add_pocket();
[[nodiscard]] Edit remove_pocket(int index);

/// Adds a paddle as high as the end of the wood, a quarter as long as the lure, with a tenon for the slot
/// that ends there; where there is none, a slot is added too.
[[nodiscard]] Edit add_tail();
[[nodiscard]] Edit remove_tail();
enum class TailLine { top, bottom, half_thickness };
[[nodiscard]] document::CurvePoints& line_of(document::Tail& tail, TailLine line);

[[nodiscard]] Edit add_reading(document::Reading reading);
[[nodiscard]] Edit remove_reading(int index);
/// Excludes a reading but keeps it; `why` is added to its note, where there is room.
void exclude_because(document::Reading& reading, const std::string& why);
/// Excludes a reading, or includes it again.
[[nodiscard]] Edit toggle_excluded(int index);
/// A reading is believed however far off it is, or no longer.
[[nodiscard]] Edit toggle_stands(int index);

[[nodiscard]] Edit add_coat(Stage stage);
[[nodiscard]] Edit remove_coat(int index);
/// One place earlier (−1) or later (+1) in the order of application.
[[nodiscard]] Edit move_coat(int index, int by);

} // namespace evenfall::shell::state
