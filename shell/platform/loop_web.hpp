#pragma once

#include "platform/window.hpp"

namespace evenfall::shell::platform {

/// Draws by the browser's frames while something is due, and stands still otherwise. Returns at once; window
/// and app live as long as the page. Watches the canvas for a lost and a restored drawing context.
void run_loop(Window& window, App& app);

/// Something happened: go on drawing.
void wake_loop();

} // namespace evenfall::shell::platform
