#pragma once

#include "state/drawer.hpp"
#include "state/motion.hpp"
#include "state/session.hpp"
#include "widgets/ui.hpp"

namespace evenfall::shell::steps {

/// Draws the panel of the step in session.view at the cursor, inside the caller's scroll area, and then
/// applies the changes asked for: the session changes after the drawing, never during it.
void panel(widgets::Ui& ui, state::Session& session, state::PanelState& motion, state::Drawer& drawer);

/// One hole a screen (state::ViewState::drilling), over drawing and panel; only where the lure can be built.
void drill_panel(widgets::Ui& ui, state::Session& session, state::PanelState& motion, state::Drawer& drawer,
                 const widgets::Rect& rect);

} // namespace evenfall::shell::steps
