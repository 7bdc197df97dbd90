#pragma once

#include "bench/uncertainty/uncertainty.hpp"
#include "state/backdrop.hpp"
#include "state/session.hpp"
#include "widgets/ui.hpp"

namespace evenfall::shell::drawing {

/// Draws the whole sheet into `area`: ruler, side view, view from above, section, hang; on a phone the side
/// view with one of the others, by a switch. Takes its taps (choosing an item) and slides (the station of the
/// section, a chosen hole along the keel) and applies them to the session after drawing. How it hangs and
/// falls is as the bench log has it, where there is a `uncertainty`.
void sheet(widgets::Ui& ui, state::Session& session, const widgets::Rect& area,
           state::Backdrop* backdrop = nullptr, const Uncertainty* uncertainty = nullptr);

} // namespace evenfall::shell::drawing
