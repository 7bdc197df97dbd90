#pragma once

// Layout of the views, zoom and pan of the drawing. Pure.

#include "drawing/scene.hpp"
#include "drawing/world_to_screen.hpp"
#include "state/view_state.hpp"
#include "widgets/ui.hpp"

#include <optional>

namespace evenfall::shell::drawing {

using state::DrawnExtent;

[[nodiscard]] DrawnExtent spans(const document::Document& document, const Evaluation& evaluation,
                                bool with_board);

struct Places {
    widgets::Rect ruler;
    WorldToScreen side;
    float names_y = 0.0f;
    float side_head_y = 0.0f;
    float side_bottom = 0.0f;
    std::optional<WorldToScreen> above;
    float above_head_y = 0.0f;
    std::optional<widgets::Rect> section;
    std::optional<widgets::Rect> hang;
    std::optional<widgets::Rect>
        change; ///< the small screen's switch: below the views, or as a column at their right
    double scale = 1.0;
};

/// The views fitted into `area`, unzoomed.
[[nodiscard]] Places lay_out_large(const DrawnExtent& s, const widgets::Rect& area);
[[nodiscard]] Places lay_out_small(const DrawnExtent& s, const widgets::Rect& area, state::SmallView view);

/// The same drawing zoomed; the ruler and the small screen's switch stay in place.
[[nodiscard]] Places zoomed(const Places& fitted, const widgets::Rect& area, const state::Zoom& zoom);

/// Zooms by `times` about a point of the window and moves by (dx, dy) px, up to most_zoom and never past the
/// edges of the paper; returns to the fitted drawing where the zoom is close to 1.
[[nodiscard]] state::Zoom zoomed_about(const state::Zoom& zoom, const widgets::Rect& area, float x, float y,
                                       float times, float dx, float dy);

} // namespace evenfall::shell::drawing
