#pragma once

// Screenshots of the application, for development.

#include "platform/window.hpp"

#include <optional>
#include <string>
#include <vector>

namespace evenfall::shell {

struct Command {
    std::vector<std::string> presets; ///< the first one is opened, all are on the shelf
    int width = 1024;
    int height = 768;
    double scale = 0.0;
    std::string step = "lead";
    bool dark = false;
    std::vector<std::string> taps; ///< widget ids, touched one after the other; "scroll:N" drags the panel up
                                   ///< by N px, "key:Tab" presses a key
    std::string shot;
};

/// nullopt where the arguments are invalid.
[[nodiscard]] std::optional<Command> read_command(const std::vector<std::string>& words);

/// Draws until everything is at rest, performs the taps, writes the screenshot. Returns the exit status.
[[nodiscard]] int take_shot(platform::Window& window, App& app, const Command& command);

} // namespace evenfall::shell
