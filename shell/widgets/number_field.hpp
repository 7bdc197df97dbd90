#pragma once

#include "widgets/keypad_entry.hpp"
#include "widgets/ui.hpp"

namespace evenfall::shell::widgets {

/// A row: label (and a second line) on the left, figure with unit in a field on the right. A tap opens the
/// keypad. Returns the new value in SI in the frame after Set; the caller makes an edit of it. Where the edit
/// is refused, the keypad stays open and shows the sentence (app.cpp calls settle()); the caller does nothing
/// more.
std::optional<double> number_field(Ui& ui, std::string_view id, std::string_view label, double value_si,
                                   const NumberSpec& spec, std::string_view below = {});

/// The same for an optional value: shows `absent` (e.g. "from the table") where there is none. The keypad
/// then has a key "clear", unless `may_clear` is false. Outer optional: whether something changed; inner: the
/// new value or none.
std::optional<std::optional<double>>
optional_number_field(Ui& ui, std::string_view id, std::string_view label, std::optional<double> value_si,
                      double start_si, const NumberSpec& spec, std::string_view absent,
                      std::string_view below = {}, bool may_clear = true);

/// Only the field (figure and unit) at `rect`, for tables.
std::optional<double> number_field_at(Ui& ui, std::string_view id, const Rect& rect, std::string_view label,
                                      double value_si, const NumberSpec& spec);

/// A row with a name or note; a tap asks for the text by Host::ask_text. Returns the answer when it arrives.
std::optional<std::string> text_field(Ui& ui, std::string_view id, std::string_view label,
                                      std::string_view value);

} // namespace evenfall::shell::widgets
