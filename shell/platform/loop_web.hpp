#pragma once

#include "platform/window.hpp"

namespace evenfall::shell::platform {

/// Draws in the browser's frames while something is due, and stops otherwise. Returns at once; window and app
/// must live as long as the page. Handles a lost and a restored drawing context of the canvas.
void run_loop(Window& window, App& app);

/// An event happened: continue drawing.
void wake_loop();

} // namespace evenfall::shell::platform
