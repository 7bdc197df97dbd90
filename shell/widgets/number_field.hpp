#pragma once

#include "widgets/keypad_entry.hpp"
#include "widgets/ui.hpp"

namespace evenfall::shell::widgets {

/// A row: label (and a soft line below it) left, figure with unit in a field right. A tap opens the keypad.
/// Returns the new amount in SI in the frame after Set; the caller turns it into an edit. If the edit is
/// refused, the keypad stays open and shows the sentence (app.cpp settles that); the caller does nothing
/// more.
std::optional<double> number_field(Ui& ui, std::string_view id, std::string_view label, double value_si,
                                   const NumberSpec& spec, std::string_view below = {});

/// The same for an amount that may be left out: shows `absent` (e.g. "from the table") when there is none.
/// The keypad then has a key "clear", unless the amount may only be left out until it is known. Outer
/// optional: did something change; inner: the new amount or none.
std::optional<std::optional<double>>
optional_number_field(Ui& ui, std::string_view id, std::string_view label, std::optional<double> value_si,
                      double start_si, const NumberSpec& spec, std::string_view absent,
                      std::string_view below = {}, bool may_clear = true);

/// The field alone (figure and unit) at a place of its own, for tables.
std::optional<double> number_field_at(Ui& ui, std::string_view id, const Rect& rect, std::string_view label,
                                      double value_si, const NumberSpec& spec);

/// A row with a name or note; a tap asks for it outside the drawing (Host::ask_text). Returns the answer when
/// it comes.
std::optional<std::string> text_field(Ui& ui, std::string_view id, std::string_view label,
                                      std::string_view value);

} // namespace evenfall::shell::widgets
