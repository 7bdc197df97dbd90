// evenfall-window [PRESET.json]... [--size WxH] [--scale N] [--step NAME] [--dark] [--tap ID]... [--shot
// FILE.ppm] The application in a window of its own, for those who work on it. --tap touches a widget by its
// id, --shot writes a picture of the window and ends.

#include "look/words.hpp"
#include "platform/flavour.hpp"
#include "platform/shot_desktop.hpp"
#include "platform/window.hpp"
#include "state/settings.hpp"

#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>

int main(int count, char** words) {
    using namespace evenfall::shell;
    const auto asked = read_command({words + 1, words + count});
    if (!asked) {
        std::cerr << "usage: evenfall-window [PRESET.json]... [--size WxH] [--scale N] [--step NAME] "
                     "[--dark] [--tap ID] [--shot FILE]\n";
        return 2;
    }
    std::string why;
    const auto window =
        platform::Window::open({look::words::product, asked->width, asked->height, asked->scale}, why);
    if (!window) {
        std::cerr << "The window could not be opened: " << why << "\n";
        return 1;
    }
    const auto host = platform::make_host();
    App app(*host);
    app.set_dark(asked->dark);
    for (const std::string& path : asked->presets) {
        std::ifstream file(path, std::ios::binary);
        const std::string text((std::istreambuf_iterator<char>(file)), std::istreambuf_iterator<char>());
        app.add_preset(std::filesystem::path(path).stem().string(), text);
        const std::string refusal = path == asked->presets.front() ? app.open_json(text) : std::string();
        if (refusal.empty()) continue;
        std::cerr << path << ": " << refusal << "\n";
        return 2;
    }
    app.go_to_step(asked->step);
    if (!asked->shot.empty()) return take_shot(*window, app, *asked);
    while (window->take_events()) {
        window->set_text_scale(app.large_text() ? state::large_text_scale : 1.0);
        if (window->draw(app)) continue;
        window->wait(app.next_frame_in_s(window->now_s()).value_or(3600.0));
    }
    return 0;
}
