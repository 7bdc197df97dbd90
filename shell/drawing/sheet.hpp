#pragma once

#include "evenfall.hpp"
#include "state/backdrop.hpp"
#include "state/session.hpp"
#include "widgets/ui.hpp"

namespace evenfall::shell::drawing {

/// Draws the whole drawing into `area`: ruler, side view, view from above, section, hang; on a phone the side
/// view with one of the others, by a switch. Handles its taps (choosing an item) and drags (the station of
/// the section, a chosen hole along the body) and applies them to the session after drawing. With
/// `uncertainty`, hang and fall are those of the bench log's readings.
void sheet(widgets::Ui& ui, state::Session& session, const widgets::Rect& area,
           state::Backdrop* backdrop = nullptr, const Uncertainty* uncertainty = nullptr);

} // namespace evenfall::shell::drawing
