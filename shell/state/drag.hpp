#pragma once

// Things of the drawing moved by a finger or a key, as pure functions. None of them checks what can be built:
// the core does, frame by frame, when the session tries the change.

#include "state/session.hpp"

#include <optional>
#include <string>

namespace evenfall::shell::state {

/// A place in the view that a thing is dragged in. Lines, holes, joints, pockets and parts: u along the keel,
/// v across it (z from the side, y from above) [m]. Section handles: shares of half width and half height.
struct Spot {
    double u = 0.0;
    double v = 0.0;
};

struct DragRules {
    bool snap = true;
    bool mirror = false; ///< back and belly line go opposite ways
    bool inches = false; ///< round to fractions of an inch instead of millimetres
    bool above = false;  ///< seen from above: holes, pockets and parts move to the sides, not up and down
    double reach_m =
        0.0008; ///< within this of the datum line or a neighbour's level, a point takes that level
};

/// What one step of snapping or nudging is worth [m]: half a millimetre, or a thirty-second of an inch.
[[nodiscard]] double snap_step_m(bool inches);

/// The nearest whole step; the level of the datum line or of a neighbour, where one lies within reach, goes
/// before it.
[[nodiscard]] double snapped_m(double value_m, const DragRules& rules);
[[nodiscard]] double snapped_level_m(double value_m, const document::CurvePoints& points, int index,
                                     const DragRules& rules);

/// Where a thing stands now; none where there is no such thing or it cannot be dragged.
[[nodiscard]] std::optional<Spot> spot_of(const document::Document& document, Selection item,
                                          bool above = false);

/// The change that puts a thing at a place: one entry of the history, said in its label. Unfinished.
[[nodiscard]] Change move_to(const document::Document& kept, Selection item, Spot to, const DragRules& rules);

/// The same thing a step farther (`way`: −1, 0 or +1 each way), finished: what an arrow key or a stepper
/// does.
[[nodiscard]] Change nudge(const document::Document& kept, Selection item, Spot way, bool inches);

/// "Move point 3 of the back line", "Move hole 2".
[[nodiscard]] std::string move_label(const document::Document& document, Selection item);

/// A point put into a curve at x, on the curve itself. Nothing happens where a neighbour is too near or the
/// list is full.
[[nodiscard]] Edit add_curve_point_at(Curve curve, double x_m);
/// Index that add_curve_point_at gives the new point; −1 where it adds none.
[[nodiscard]] int place_for_point(const document::CurvePoints& points, double x_m);

/// The curve behind a kind of point; none for other things.
[[nodiscard]] std::optional<Curve> curve_of(ItemKind kind);
[[nodiscard]] ItemKind point_kind(Curve curve);

/// The fullness point that rules the section at x most: the nearest one.
[[nodiscard]] int fullness_at(const document::Section& section, double x_m);
/// Where the rim of a section crosses the diagonal of its box, as a share of half width and half height; and
/// back.
[[nodiscard]] double diagonal_share(document::SectionKind kind, double fullness);
[[nodiscard]] double fullness_of_share(document::SectionKind kind, double share);

} // namespace evenfall::shell::state
