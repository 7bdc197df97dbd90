#pragma once

#include "widgets/ui.hpp"

#include <span>

namespace evenfall::shell::widgets {

/// A few choices side by side, one of them on. Option i is recorded as "<id>.<i>". Full width at the cursor;
/// wraps to more lines where labels need it. Returns the option tapped that was not on, or nullopt.
std::optional<int> choice(Ui& ui, std::string_view id, std::span<const std::string_view> labels, int on);
/// As above with a label line over it.
std::optional<int> choice(Ui& ui, std::string_view id, std::string_view label,
                          std::span<const std::string_view> labels, int on);

/// A row with a label and a switch drawn with a word ("on"/"off"), not by colour alone. True when it was
/// flipped.
bool toggle(Ui& ui, std::string_view id, std::string_view label, bool on, std::string_view below = {});

/// A row with a label, a count between − and + ("<id>.less", "<id>.more"). Returns −1, 0 or +1; the ends are
/// barred at the limits.
int stepper(Ui& ui, std::string_view id, std::string_view label, int count, int least, int most);

} // namespace evenfall::shell::widgets
