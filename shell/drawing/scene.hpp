#pragma once

// Common input of all parts of the drawing, and the places they record for the finger.

#include "body.hpp"
#include "drawing/pen.hpp"
#include "drawing/world_to_screen.hpp"
#include "state/backdrop.hpp"
#include "state/session.hpp"
#include "widgets/ui.hpp"

#include <optional>
#include <string>
#include <vector>

namespace evenfall::shell::drawing {

/// A drawn item that a tap chooses.
struct Hit {
    state::Selection item;
    widgets::Rect rect;
    int rank = 0; ///< the lower one wins where two are equally near: holes, joints, parts, pockets
    state::Pane pane = state::Pane::side;
};

struct Scene {
    widgets::Ui& ui;
    ImDrawList& list;
    const document::Document& document;
    const Evaluation& evaluation;
    const state::ViewState& view;
    std::vector<holes::Bore> bores; ///< one for each hole
    std::vector<Hit> hits;
    state::Pane pane = state::Pane::side;       ///< the view that is being drawn
    bool lens = false;                          ///< drawn a second time for the magnifier: records nothing
    std::optional<WorldToScreen> section_map{}; ///< of the section view, after it was drawn
    const state::Backdrop* backdrop = nullptr;  ///< the picture behind the side view, where there is one
    std::string refusal{};                      ///< why the held item cannot be where the finger is
    std::vector<widgets::Rect> labels{};        ///< where numbers and names stand in the side view

    /// Marks of the picture are shown and follow a finger in the Shape step alone.
    [[nodiscard]] bool marks_can_be_moved() const {
        return backdrop != nullptr && view.step == state::Step::shape;
    }
    [[nodiscard]] const look::Palette& ink() const { return *ui.ink; }
    [[nodiscard]] const shape::Body& body() const { return evaluation.body; }
    [[nodiscard]] bool chosen(state::ItemKind kind, std::size_t index) const {
        return view.selection.is(kind, static_cast<int>(index));
    }
};

/// Records an item for the finger and, by its id, for tests.
void add_hit(Scene& scene, const std::string& id, state::Selection item, const widgets::Rect& rect, int rank);

/// The item nearest to a point, within a fingertip; nullptr where there is none.
[[nodiscard]] const Hit* nearest_hit(const std::vector<Hit>& hits, ImVec2 point);

// The parts of the drawing.
void draw_ruler(Scene& scene, const WorldToScreen& map, const widgets::Rect& rect);
/// Ruler of heights above the datum line, from the lowest to the highest of the body, at the left of the side
/// view.
void draw_height_ruler(Scene& scene, const WorldToScreen& map, const widgets::Rect& rect, double low_m,
                       double high_m);
/// Extent of parts beyond the body [m]: lowest height below the datum (negative), and how far aft tails
/// reach.
struct PartsExtent {
    double lowest_z_m = 0.0;
    double aft_m = 0.0;
    double fore_m = 0.0;      ///< ≤ 0: what projects before the nose
    double highest_z_m = 0.0; ///< of eyes of wire, and of the soft tail with a drawn shape
};
[[nodiscard]] PartsExtent reach(const document::Document& document, const Evaluation& evaluation);
void draw_side_view(Scene& scene, const WorldToScreen& map, float names_y);
void draw_top_view(Scene& scene, const WorldToScreen& map);
void draw_section_view(Scene& scene, const widgets::Rect& rect, double px_per_m);
/// The section alone, without text, at any scale.
void draw_section_at(Scene& scene, const WorldToScreen& map);
void draw_hang_view(Scene& scene, const widgets::Rect& rect);

/// A hole in a side view (half_width = its radius) or a section (half the chord): cap, empty space and fill,
/// each with its pattern.
void draw_hole(Scene& scene, const WorldToScreen& map, std::size_t index, double middle_u_m,
               double half_width_m, bool with_number);
/// Control points of the lines from the side or from above, in the Shape step.
void draw_line_points(Scene& scene, const WorldToScreen& map);
/// The handle or the points of the section at the current station.
void draw_section_points(Scene& scene);
/// The board, its saw line, and the stations of the caliper readings.
void draw_board(Scene& scene, const WorldToScreen& map);
void draw_readings(Scene& scene, const WorldToScreen& map);
void draw_parts(Scene& scene, const WorldToScreen& map);
/// Hangers, and the wire of hinges that weigh themselves.
void draw_fittings(Scene& scene, const WorldToScreen& map, bool above);
/// The soft tail with a drawn shape and its tenon, from the side or from above; draws nothing where there is
/// none.
void draw_soft_tail(Scene& scene, const WorldToScreen& map, bool above, bool to_choose = true);
/// Only what is visible in the water: hooks, tail, glass eyes; nothing can be chosen. `map` may be turned.
void draw_dress(Scene& scene, const WorldToScreen& map);
/// G and B, each with its symbol and letter; `above` selects the symbols for the view from above.
void draw_centres(Scene& scene, const WorldToScreen& map, bool above);

} // namespace evenfall::shell::drawing
