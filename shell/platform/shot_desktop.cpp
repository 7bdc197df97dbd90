#include "platform/shot_desktop.hpp"

#include "imgui.h"

#include <SDL.h>

#include <charconv>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iostream>

namespace evenfall::shell {
namespace {

/// Draws until nothing is due.
void settle(platform::Window& window, App& app) {
    window.wake();
    while (window.take_events() && window.draw(app))
        SDL_Delay(4);
}

/// Centre of a widget in CSS px, from the list that tests read.
bool middle_of(const App& app, const std::string& id, float& x, float& y) {
    const std::string items = app.items_json();
    const auto at = items.find("\"id\":\"" + id + "\"");
    if (at == std::string::npos) return false;
    float w = 0.0f;
    float h = 0.0f;
    const char* numbers = items.c_str() + items.find("\"x\":", at);
    if (std::sscanf(numbers, "\"x\":%f,\"y\":%f,\"w\":%f,\"h\":%f", &x, &y, &w, &h) != 4) return false;
    x += w / 2.0f;
    y += h / 2.0f;
    return true;
}

void finger(platform::Window& window, App& app, Uint32 type, float x, float y) {
    const ImVec2 size = ImGui::GetIO().DisplaySize;
    SDL_Event event{};
    event.type = type;
    event.tfinger.fingerId = 1;
    event.tfinger.x = x / size.x;
    event.tfinger.y = y / size.y;
    SDL_PushEvent(&event);
    window.take_events();
    window.draw(app);
}

bool touch(platform::Window& window, App& app, const std::string& what) {
    const ImVec2 size = ImGui::GetIO().DisplaySize;
    if (what.rfind("scroll:", 0) == 0) {
        const float by = std::strtof(what.c_str() + 7, nullptr);
        const float x = size.x - 100.0f;
        const float y = size.y - 120.0f;
        finger(window, app, SDL_FINGERDOWN, x, y);
        for (int i = 1; i <= 10; ++i)
            finger(window, app, SDL_FINGERMOTION, x, y - by * static_cast<float>(i) / 10.0f);
        SDL_Delay(120); // the finger rests, so that there is no glide
        finger(window, app, SDL_FINGERUP, x, y - by);
    } else if (what.rfind("key:", 0) == 0) {
        SDL_Event event{};
        event.key.keysym.sym = SDL_GetKeyFromName(what.c_str() + 4);
        event.key.keysym.scancode = SDL_GetScancodeFromKey(event.key.keysym.sym);
        for (const Uint32 type : {SDL_KEYDOWN, SDL_KEYUP}) {
            event.type = type;
            SDL_PushEvent(&event);
            settle(window, app);
        }
    } else {
        float x = 0.0f;
        float y = 0.0f;
        if (!middle_of(app, what, x, y)) return false;
        finger(window, app, SDL_FINGERDOWN, x, y);
        finger(window, app, SDL_FINGERUP, x, y);
    }
    settle(window, app);
    return true;
}

} // namespace

std::optional<Command> read_command(const std::vector<std::string>& words) {
    Command command;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const std::string& word = words[i];
        const bool has_next = i + 1 < words.size();
        if (word == "--dark") {
            command.dark = true;
        } else if (word.rfind("--", 0) != 0) {
            command.presets.push_back(word);
        } else if (has_next && word == "--size") {
            if (std::sscanf(words[++i].c_str(), "%dx%d", &command.width, &command.height) != 2)
                return std::nullopt;
        } else if (has_next && word == "--scale") {
            command.scale = std::atof(words[++i].c_str());
        } else if (has_next && word == "--step") {
            command.step = words[++i];
        } else if (has_next && word == "--tap") {
            command.taps.push_back(words[++i]);
        } else if (has_next && word == "--shot") {
            command.shot = words[++i];
        } else {
            return std::nullopt;
        }
    }
    return command;
}

int take_shot(platform::Window& window, App& app, const Command& command) {
    settle(window, app);
    for (const std::string& id : command.taps) {
        if (touch(window, app, id)) continue;
        std::cerr << "There is nothing to touch with the id " << id << ".\n";
        return 1;
    }
    std::ofstream file(command.shot, std::ios::binary);
    file << window.picture();
    return file.good() ? 0 : 1;
}

} // namespace evenfall::shell
