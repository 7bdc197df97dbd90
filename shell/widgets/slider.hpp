#pragma once

#include "widgets/ui.hpp"

namespace evenfall::shell::widgets {

/// A bar with a knob that a finger slides, drawn into `rect` (48 px high or more). `share` from 0 to 1.
/// Returns the new share while a finger holds it. By keyboard each Enter moves it by a tenth, from the end
/// back to the beginning.
std::optional<double> slider_at(Ui& ui, std::string_view id, const Rect& rect, double share,
                                bool enabled = true);

} // namespace evenfall::shell::widgets
