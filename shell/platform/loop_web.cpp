#include "platform/loop_web.hpp"

#include <emscripten/html5.h>

#include <cstdint>

// web/loader/library.js
extern "C" {
void ef_next_frame(void (*frame)());
void ef_later(void (*due)(void*), void* argument, int milliseconds);
}

namespace evenfall::shell::platform {
namespace {

// The browser's callbacks carry no state; there is one loop per page.
struct Loop {
    Window* window = nullptr;
    App* app = nullptr;
    bool standing = false;
    unsigned timer = 0; ///< counts the waits, so that only the newest one wakes the loop
};
Loop loop;

void when_due(void* count) {
    if (reinterpret_cast<std::uintptr_t>(count) == loop.timer) wake_loop();
}

void stand_still() {
    loop.standing = true;
    ++loop.timer;
    if (const auto due_s = loop.app->next_frame_in_s(loop.window->now_s())) {
        ef_later(when_due, reinterpret_cast<void*>(static_cast<std::uintptr_t>(loop.timer)),
                 static_cast<int>(*due_s * 1000.0) + 20);
    }
}

void one_frame() {
    loop.window->take_events();
    loop.window->draw(*loop.app);
    if (loop.window->idle())
        stand_still();
    else
        ef_next_frame(one_frame);
}

EM_BOOL lost(int, const void*, void*) {
    loop.window->context_lost();
    return EM_TRUE; // asks the browser to restore the context
}

EM_BOOL restored(int, const void*, void*) {
    loop.window->context_restored();
    loop.app->forget_texture();
    wake_loop();
    return EM_TRUE;
}

} // namespace

void run_loop(Window& window, App& app) {
    loop.window = &window;
    loop.app = &app;
    emscripten_set_webglcontextlost_callback("#canvas", nullptr, EM_TRUE, lost);
    emscripten_set_webglcontextrestored_callback("#canvas", nullptr, EM_TRUE, restored);
    ef_next_frame(one_frame);
}

void wake_loop() {
    if (loop.window == nullptr) return;
    loop.window->wake();
    if (!loop.standing) return;
    loop.standing = false;
    ef_next_frame(one_frame);
}

} // namespace evenfall::shell::platform
