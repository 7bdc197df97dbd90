#pragma once

// Dragging and nudging of the drawing's items, as pure functions. They do not check whether the result can be
// built: the core does, frame by frame, when the session tries the change.

#include "state/session.hpp"

#include <optional>
#include <string>

namespace evenfall::shell::state {

/// A position in the view in which an item is dragged. Lines, holes, joints, pockets and parts: u along the
/// body, v across it (z from the side, y from above) [m]. Section handles: shares of half width and half
/// height.
struct DragPoint {
    double u = 0.0;
    double v = 0.0;
};

struct DragRules {
    bool snap = true;
    bool mirror = false; ///< back and belly line move opposite ways
    bool inches = false; ///< rounds to fractions of an inch instead of millimetres
    bool above = false;  ///< seen from above: holes, pockets and parts move sideways, not up and down
    double reach_m =
        0.0008; ///< a point within this distance of the datum line or of a neighbour's level takes that level
};

/// One step of snapping or nudging [m]: half a millimetre, or 1/32 inch.
[[nodiscard]] double snap_step_m(bool inches);

/// The nearest whole step; the datum line or a neighbour's level within reach takes precedence.
[[nodiscard]] double snapped_m(double value_m, const DragRules& rules);
[[nodiscard]] double snapped_level_m(double value_m, const document::CurvePoints& points, int index,
                                     const DragRules& rules);

/// Present position of an item; absent where there is no such item or it cannot be dragged.
[[nodiscard]] std::optional<DragPoint> spot_of(const document::Document& document, Selection item,
                                               bool above = false);

/// The change that moves an item to a position: one entry of the history. Unfinished.
[[nodiscard]] Change move_to(const document::Document& kept, Selection item, DragPoint to,
                             const DragRules& rules);

/// The item moved by one step (`way`: −1, 0 or +1 in each direction), finished: for arrow keys and steppers.
[[nodiscard]] Change nudge(const document::Document& kept, Selection item, DragPoint way, bool inches);

/// "Move point 3 of the back line", "Move hole 2".
[[nodiscard]] std::string move_label(const document::Document& document, Selection item);

/// Adds a point to a curve at x, on the curve itself. No change where a neighbour is too near or the list is
/// full.
[[nodiscard]] Edit add_curve_point_at(CurveKind curve, double x_m);
/// Index of the point that add_curve_point_at adds; −1 where it adds none.
[[nodiscard]] int place_for_point(const document::CurvePoints& points, double x_m);

/// The curve of a kind of point; absent for other items.
[[nodiscard]] std::optional<CurveKind> curve_of(ItemKind kind);
[[nodiscard]] ItemKind point_kind(CurveKind curve);

/// The nearest point of the section's curve to the section at x.
[[nodiscard]] int section_point_at(const document::Section& section, double x_m);
/// Where the rim of a section crosses the diagonal of its box, as a share of half width and half height; and
/// the inverse.
[[nodiscard]] double diagonal_share(document::SectionKind kind, double value);
[[nodiscard]] double value_of_share(document::SectionKind kind, double share);

} // namespace evenfall::shell::state
