#pragma once

#include "widgets/ui.hpp"

#include <span>

namespace evenfall::shell::widgets {

/// A few choices side by side, one of them selected. Option i is recorded as "<id>.<i>". Full width at the
/// cursor; wraps to more lines where labels need it. Returns the tapped option where it was not the selected
/// one, else nullopt.
std::optional<int> choice(Ui& ui, std::string_view id, std::span<const std::string_view> labels, int on);
/// The same in one line at `rect`, 48 px high; the cursor does not move.
std::optional<int> choice_at(Ui& ui, std::string_view id, const Rect& rect,
                             std::span<const std::string_view> labels, int on);
/// The same with a label line above it.
std::optional<int> choice(Ui& ui, std::string_view id, std::string_view label,
                          std::span<const std::string_view> labels, int on);

/// A row with a label and a switch that shows a word ("on"/"off"), not just a colour. True when it was
/// switched.
bool toggle(Ui& ui, std::string_view id, std::string_view label, bool on, std::string_view below = {});

/// A row with a label and a count between − and + ("<id>.less", "<id>.more"). Returns −1, 0 or +1; the
/// buttons are disabled at the limits.
int stepper(Ui& ui, std::string_view id, std::string_view label, int count, int least, int most);

} // namespace evenfall::shell::widgets
