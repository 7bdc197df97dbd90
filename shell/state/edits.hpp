#pragma once

// The changes a builder makes, as pure functions document → document. None of them checks what can be built:
// the core does, when the session evaluates the result.

#include "document/document.hpp"
#include "state/session.hpp"
#include "state/view_state.hpp"

#include <functional>

namespace evenfall::shell::state {

/// Changes one entry of a list; the document comes back as it was where there is no such entry.
[[nodiscard]] Edit on_document(std::function<void(document::Document&)> change);
[[nodiscard]] Edit on_joint(int index, std::function<void(document::Joint&)> change);
[[nodiscard]] Edit on_hole(int index, std::function<void(document::Hole&)> change);
[[nodiscard]] Edit on_pocket(int index, std::function<void(document::Pocket&)> change);
[[nodiscard]] Edit on_part(int index, std::function<void(document::Part&)> change);
[[nodiscard]] Edit on_coat(int index, std::function<void(document::Coat&)> change);

[[nodiscard]] Edit on_tail(std::function<void(document::Tail&)> change);
[[nodiscard]] Edit on_reading(int index, std::function<void(document::Reading&)> change);

/// The list behind one curve of the drawing.
[[nodiscard]] document::CurvePoints& curve_points(document::Document& document, Curve curve);
[[nodiscard]] const document::CurvePoints& curve_points(const document::Document& document, Curve curve);

/// Length of the drawn body [m], from its back line; 0 for an empty drawing.
[[nodiscard]] double drawn_length_m(const document::Document& document);
/// Greatest height and width of the drawn points [m].
[[nodiscard]] double drawn_height_m(const document::Document& document);
[[nodiscard]] double drawn_width_m(const document::Document& document);

/// The whole lure larger or smaller: body, joints, holes' places and depths, pockets, places of parts. Fill
/// masses go with the depths. Bits, gaps, part masses and coats stay, since they come from the drawer.
/// `length_m` > 0.
[[nodiscard]] Edit scale_whole(double length_m);
/// Taller or lower only: back and belly, hole depths and fill masses, heights of parts and pockets. > 0.
[[nodiscard]] Edit scale_height(double height_m);
/// Wider or thinner only: the plan line and what sits off the middle. > 0.
[[nodiscard]] Edit scale_width(double width_m);

/// A point half way along the longest span of a curve, on the straight between its neighbours.
[[nodiscard]] Edit add_curve_point(Curve curve);
void halve_longest_span(document::CurvePoints& points);
/// Removes a point; the ends stay.
[[nodiscard]] Edit remove_curve_point(Curve curve, int index);
/// Moves a point of a curve; the x of the ends stays where it is, the others stay between their neighbours.
[[nodiscard]] Edit move_curve_point(Curve curve, int index, double x_m, double value);

/// The place on a drawn half-section that is nearest to a point, all in shares of half width and half height.
struct SectionSpot {
    int place = 0;             ///< a new point there would be this one; 0 where the outline has no sides
    document::OutlinePoint at{}; ///< on the outline
    double away = 0.0;         ///< from the asked point
};
[[nodiscard]] SectionSpot nearest_on_section(const std::vector<document::OutlinePoint>& outline, double y,
                                             double z);
/// A point of the drawn half-section before point `place`, or in the middle of its longest side.
[[nodiscard]] Edit add_section_point(int place, document::OutlinePoint at);
[[nodiscard]] Edit add_section_point();
/// Removes a point; belly, back and the last one of full width stay, and three points at least.
[[nodiscard]] Edit remove_section_point(int index);
/// Puts a point at shares of half width (0 to 1) and half height (−1 to 1); belly and back stay where they
/// are.
[[nodiscard]] Edit put_section_point(int index, double y, double z);

// What the log has learnt of an entry (corrections) or read of a segment alone goes with it through every one
// of these changes.

/// Cuts where there is most room between joints, holes and ends. The name stays with the fore half; readings
/// of the segment that is cut are struck out.
[[nodiscard]] Edit add_joint();
/// Glues the segments on both sides of a joint; the fore one's name stays, readings of either alone are
/// struck out.
[[nodiscard]] Edit remove_joint(int index);

/// A belly hole, not drilled yet, where there is most room along the keel.
[[nodiscard]] Edit add_hole();
[[nodiscard]] Edit remove_hole(int index);
/// A second hole like it, a diameter and a wall aft of it.
[[nodiscard]] Edit duplicate_hole(int index);

[[nodiscard]] Edit add_part(Stage stage);
[[nodiscard]] Edit remove_part(int index);
[[nodiscard]] Edit duplicate_part(int index);

[[nodiscard]] Edit add_pocket();
[[nodiscard]] Edit remove_pocket(int index);

/// A paddle as high as the end of the wood, a quarter as long as the lure, with a tenon for the slot that
/// ends there; where none does, a slot is cut too.
[[nodiscard]] Edit add_tail();
[[nodiscard]] Edit remove_tail();
enum class TailLine { top, bottom, half_thickness };
[[nodiscard]] document::CurvePoints& line_of(document::Tail& tail, TailLine line);
/// Longer or shorter, higher, thicker by a factor > 0 each; the tenon stays.
void stretch_tail(document::Tail& tail, double along, double up, double across);

[[nodiscard]] Edit add_reading(document::Reading reading);
[[nodiscard]] Edit remove_reading(int index);
/// Kept, but not believed; `why` goes to its note, where there is room.
void strike_out(document::Reading& reading, const std::string& why);
/// Struck out; and back.
[[nodiscard]] Edit strike_reading(int index);

[[nodiscard]] Edit add_coat(Stage stage);
[[nodiscard]] Edit remove_coat(int index);
/// One place earlier (−1) or later (+1) in the order of work.
[[nodiscard]] Edit move_coat(int index, int by);

} // namespace evenfall::shell::state
