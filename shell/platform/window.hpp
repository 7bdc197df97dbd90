#pragma once

// One window with an OpenGL context and Dear ImGui: events in, frames out. The main programs control the
// timing.

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
    double scale = 0.0; ///< device pixels per CSS px; 0 = the screen's own
};

class Window {
public:
    /// nullptr, and the reason in `why`, where there is no display or no OpenGL.
    [[nodiscard]] static std::unique_ptr<Window> open(const WindowOptions& options, std::string& why);
    ~Window();
    Window(const Window&) = delete;
    Window& operator=(const Window&) = delete;

    /// Handles all waiting events. False when the window should close.
    bool take_events();
    /// Draws one of the frames that are due. False where there was none.
    bool draw(App& app);
    /// An event happened: some frames are due.
    void wake() { pending_.wake(); }
    [[nodiscard]] bool idle() const { return pending_.idle(); }
    /// Waits up to `most_s` for an event (desktop only).
    void wait(double most_s);

    /// Device pixels per CSS px. Fonts are rebuilt before the next frame where it has changed.
    void set_dpr(double dpr);
    /// The device's text size relative to the usual one, 0.8 to 2: everything is scaled by it.
    void set_text_scale(double scale);
    /// The browser took the drawing context away, or restored it.
    void context_lost() { lost_ = true; }
    void context_restored();

    [[nodiscard]] double now_s() const;
    [[nodiscard]] unsigned frames() const { return frames_; }
    /// The last frame as a binary PPM image.
    [[nodiscard]] std::string picture() const;

private:
    Window() = default;
    void handle(const SDL_Event& event);
    void feed_fingers(App& app);

    SDL_Window* window_ = nullptr;
    void* context_ = nullptr;
    Gesture gesture_;
    PendingFrames pending_;
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
