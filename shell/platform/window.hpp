#pragma once

// One window with an OpenGL context and Dear ImGui in it: events in, frames out. The main programs decide
// when.

#include "app/app.hpp"
#include "platform/gesture.hpp"
#include "platform/pending.hpp"

#include <memory>
#include <string>
#include <vector>

union SDL_Event;
struct SDL_Window;

namespace evenfall::shell::platform {

struct WindowOptions {
    std::string title;
    int width = 1024; ///< CSS px; on the web the style sheet decides
    int height = 768;
    double scale = 0.0; ///< device pixels per CSS px of the picture; 0 = as the screen has it
};

class Window {
public:
    /// nullptr, and the reason in `why`, where there is no display or no OpenGL.
    [[nodiscard]] static std::unique_ptr<Window> open(const WindowOptions& options, std::string& why);
    ~Window();
    Window(const Window&) = delete;
    Window& operator=(const Window&) = delete;

    /// Takes in all waiting events. False when the window is to close.
    bool take_events();
    /// Draws the frames that are due, one a call. False when there was none to draw.
    bool draw(App& app);
    /// Something happened: some frames are due.
    void wake() { pending_.wake(); }
    [[nodiscard]] bool idle() const { return pending_.idle(); }
    /// Waits up to `most_s` for an event (desktop only).
    void wait(double most_s);

    /// Device pixels per CSS px. Fonts are redrawn before the next frame where it has changed.
    void set_dpr(double dpr);
    /// How much larger than usual the builder has letters on this device, 0.8 to 2: everything is drawn as
    /// much larger.
    void set_text_scale(double scale);
    /// The browser took the context away, or gave one back.
    void context_lost() { lost_ = true; }
    void context_restored();

    [[nodiscard]] double now_s() const;
    [[nodiscard]] unsigned frames() const { return frames_; }
    /// The last frame as a binary PPM picture.
    [[nodiscard]] std::string picture() const;

private:
    Window() = default;
    void handle(const SDL_Event& event);
    void feed_fingers(App& app);

    SDL_Window* window_ = nullptr;
    void* context_ = nullptr;
    Gesture gesture_;
    Pending pending_;
    double scale_ = 0.0;
    double dpr_ = 1.0;
    double text_scale_ = 1.0;
    double fonts_dpr_ = 0.0; ///< 0 = no fonts yet
    unsigned texture_ = 0;   ///< of the picture behind the drawing
    look::Ink ground_ = 0;
    bool lost_ = false;
    bool closing_ = false;
    unsigned frames_ = 0;
};

} // namespace evenfall::shell::platform
