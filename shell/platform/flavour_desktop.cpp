#include "platform/flavour.hpp"

#include <SDL.h>

namespace evenfall::shell::platform {

void set_sdl_hints() {
    SDL_SetHint(SDL_HINT_TOUCH_MOUSE_EVENTS, "0");
}

void set_gl_attributes() {
    SDL_GL_SetAttribute(SDL_GL_CONTEXT_PROFILE_MASK, SDL_GL_CONTEXT_PROFILE_CORE);
    SDL_GL_SetAttribute(SDL_GL_CONTEXT_MAJOR_VERSION, 3);
    SDL_GL_SetAttribute(SDL_GL_CONTEXT_MINOR_VERSION, 2);
    SDL_GL_SetAttribute(SDL_GL_DEPTH_SIZE, 0);
    SDL_GL_SetAttribute(SDL_GL_STENCIL_SIZE, 0);
}

const char* shading_language() {
    return "#version 150";
}

} // namespace evenfall::shell::platform
