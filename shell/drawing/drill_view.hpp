#pragma once

#include "evenfall.hpp"
#include "widgets/ui.hpp"

namespace evenfall::shell::drawing {

/// The segment of one hole as it lies on the bench, the side that is drilled on top, with the bit in the hole
/// and the tape on it at the skin. `document` has the hole as it is to be.
void drill_view(widgets::Ui& ui, const document::Document& document, const shape::Body& body,
                const HoleStep& step, const widgets::Rect& rect);

} // namespace evenfall::shell::drawing
