#pragma once

// Text blocks of a step panel, each of full width at the cursor. Quantities are told in the units that are
// set.

#include "widgets/ui.hpp"

namespace evenfall::shell::widgets {

/// Heading of the panel with an optional second line.
void heading(Ui& ui, std::string_view text, std::string_view below = {});
/// Heading of a group of rows. With a topic a tap on it explains their figures; true in the frame of that
/// tap.
bool subheading(Ui& ui, std::string_view text, help::Topic topic = help::Topic::none);
/// Running text, wrapped.
void paragraph(Ui& ui, const Sentence& text);
/// Soft small text, wrapped.
void note(Ui& ui, const Sentence& text);
/// A safety note: tinted box, icon, wrapped text. `title` may be empty.
void caution_box(Ui& ui, std::string_view title, const Sentence& text);
/// A box for something to read now (tub reading, shortfall of a plan). With a topic a tap on it explains its
/// figures; true in the frame of that tap.
bool info_box(Ui& ui, std::string_view title, const Sentence& text, help::Topic topic = help::Topic::none);
/// A refusal or a warning: mark and sentence in the mark's colour. Draws nothing for "".
void problem_line(Ui& ui, const Sentence& sentence);

} // namespace evenfall::shell::widgets
