#pragma once

#include "body.hpp"
#include "widgets/ui.hpp"
#include "workshop.hpp"

#include <span>

namespace evenfall::shell::drawing {

/// The lure from above with its chain bent, as large as fits into `rect`, pins as dots.
void draw_chain(const widgets::Ui& ui, const shape::Body& body, std::span<const joints::Pin> pins,
                std::span<const double> swings_rad, const widgets::Rect& rect);

} // namespace evenfall::shell::drawing
