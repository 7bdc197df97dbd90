#pragma once

// What is to be done at the holes, and how far it is done: shared by the Lead step and the Bench log.

#include "steps/desk.hpp"

#include <span>

namespace evenfall::shell::steps {

/// "2 front": its number on the drawing, then its name or its segment's.
[[nodiscard]] std::string hole_label(const PanelContext& context, const document::Document& document,
                                     int hole);

/// A row for each hole: bit, depth, lead. `document` has the holes as they are to be.
void work_table(PanelContext& context, const document::Document& document, std::span<const HoleStep> steps);

/// Ticks for the holes of the lure: drilled, lead in and capped.
void done_rows(PanelContext& context);

/// Ticks for the advice of the bench log, each of which follows it in that hole.
void advice_ticks(PanelContext& context, const DoNow& now);

/// The button that opens one hole a screen.
void drill_button(PanelContext& context, std::string_view id);
/// One hole a screen, over drawing and panel.
void drill_screens(PanelContext& context, const widgets::Rect& rect);

} // namespace evenfall::shell::steps
