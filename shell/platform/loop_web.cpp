#include "platform/loop_web.hpp"

#include <emscripten/eventloop.h>
#include <emscripten/html5.h>

#include <cstdint>

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
        emscripten_set_timeout(when_due, *due_s * 1000.0 + 20.0,
                               reinterpret_cast<void*>(static_cast<std::uintptr_t>(loop.timer)));
    }
}

EM_BOOL one_frame(double, void*) {
    loop.window->take_events();
    loop.window->draw(*loop.app);
    if (loop.window->idle())
        stand_still();
    else
        emscripten_request_animation_frame(one_frame, nullptr);
    return EM_FALSE;
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
    emscripten_request_animation_frame(one_frame, nullptr);
}

void wake_loop() {
    if (loop.window == nullptr) return;
    loop.window->wake();
    if (!loop.standing) return;
    loop.standing = false;
    emscripten_request_animation_frame(one_frame, nullptr);
}

} // namespace evenfall::shell::platform
