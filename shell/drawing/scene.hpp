#pragma once

// What every part of the sheet is drawn from, and what it leaves behind: the places that a finger can choose.

#include "body/bore.hpp"
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
    int rank = 0; ///< lower wins where two are equally near: holes, joints, parts, pockets
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
    bool lens = false;                          ///< drawn a second time, enlarged: nothing is left behind
    std::optional<WorldToScreen> section_map{}; ///< of the section view, once drawn
    const state::Backdrop* backdrop = nullptr;  ///< the picture behind the side view, where there is one
    std::string refusal{};                      ///< why the held thing cannot be where the finger is

    [[nodiscard]] const look::Palette& ink() const { return *ui.ink; }
    [[nodiscard]] const shape::Body& body() const { return evaluation.body; }
    [[nodiscard]] bool chosen(state::ItemKind kind, std::size_t index) const {
        return view.selection.is(kind, static_cast<int>(index));
    }
};

/// Records an item both for the finger and, by its id, for those who look where things lie.
void add_hit(Scene& scene, const std::string& id, state::Selection item, const widgets::Rect& rect, int rank);

/// The item nearest to a point, within a fingertip of it; none elsewhere.
[[nodiscard]] const Hit* nearest_hit(const std::vector<Hit>& hits, ImVec2 point);
[[nodiscard]] state::Selection nearest_item(const std::vector<Hit>& hits, ImVec2 point);

// The parts of the sheet.
void draw_ruler(Scene& scene, const WorldToScreen& map, const widgets::Rect& rect);
/// Heights over the datum line, from the lowest to the highest of the body, at the left of the side view.
void draw_height_ruler(Scene& scene, const WorldToScreen& map, const widgets::Rect& rect, double low_m,
                       double high_m);
/// Height below the datum that parts hung under the belly need [m], negative; and how far aft tails reach
/// [m].
struct Reach {
    double lowest_z_m = 0.0;
    double aft_m = 0.0;
    double fore_m = 0.0;      ///< ≤ 0: what stands out before the nose
    double highest_z_m = 0.0; ///< of the tail by its shape
};
[[nodiscard]] Reach reach(const document::Document& document, const Evaluation& evaluation);
void draw_side_view(Scene& scene, const WorldToScreen& map, float names_y);
void draw_top_view(Scene& scene, const WorldToScreen& map);
void draw_section_view(Scene& scene, const widgets::Rect& rect, double px_per_m);
/// The section alone, without its words, by any scale.
void draw_section_at(Scene& scene, const WorldToScreen& map);
void draw_hang_view(Scene& scene, const widgets::Rect& rect);

/// A hole in a side view (half_width = its radius) or a section (half the chord): cap, void, fill, each in
/// its pattern.
void draw_hole(Scene& scene, const WorldToScreen& map, std::size_t index, double middle_u_m,
               double half_width_m, bool with_number);
/// Control points of the lines seen from the side or from above, in the Shape step.
void draw_line_points(Scene& scene, const WorldToScreen& map);
/// The handle or the points of the section at the station that is looked at.
void draw_section_points(Scene& scene);
/// The board, its saw line, and the stations where a caliper was laid on.
void draw_blank(Scene& scene, const WorldToScreen& map);
void draw_readings(Scene& scene, const WorldToScreen& map);
void draw_parts(Scene& scene, const WorldToScreen& map);
/// The tail by its shape with its tenon, from the side or from above; nothing where there is none.
void draw_soft_tail(Scene& scene, const WorldToScreen& map, bool above, bool to_choose = true);
/// Only what one sees in the water: hooks, tail, glass eyes; nothing to be chosen. `map` may be turned.
void draw_dress(Scene& scene, const WorldToScreen& map);
/// G and B, each with its shape and letter; `above` gives the marks seen from above.
void draw_centres(Scene& scene, const WorldToScreen& map, bool above);

} // namespace evenfall::shell::drawing
