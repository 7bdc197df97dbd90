#pragma once

#include "widgets/ui.hpp"

namespace evenfall::shell::widgets {

/// An area that scrolls by dragging with one finger anywhere in it, by wheel and by keyboard, and glides on
/// after release. A drag cancels the press of the widget under the finger. A thin bar shows the position.
/// Always close with end_scroll_area.
void begin_scroll_area(Ui& ui, std::string_view id, const Rect& rect, float padding = look::gutter);
void end_scroll_area(Ui& ui);
/// Scrolls the area being drawn to its top (for a new step).
void scroll_to_top();

} // namespace evenfall::shell::widgets
