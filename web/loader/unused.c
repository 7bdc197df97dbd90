// Stands in for what the libraries could call and the page never makes them: SDL's pointers drawn from pictures and windows
// without WebGL, and the reader of Dear ImGui's settings file. The linker takes these instead (web/CMakeLists.txt), and what
// only those needed stays out of the page.
#include <stddef.h>

struct SDL_Surface;

struct SDL_Surface* __wrap_SDL_ConvertSurfaceFormat(struct SDL_Surface* from, unsigned format, unsigned flags) {
    (void)from, (void)format, (void)flags;
    return NULL;
}

struct SDL_Surface* __wrap_SDL_CreateRGBSurface(unsigned flags, int width, int height, int depth, unsigned red, unsigned green,
                                                unsigned blue, unsigned alpha) {
    (void)flags, (void)width, (void)height, (void)depth, (void)red, (void)green, (void)blue, (void)alpha;
    return NULL;
}

// ImGui::TableSettingsAddSettingsHandler()
void __wrap__ZN5ImGui31TableSettingsAddSettingsHandlerEv(void) {}

int __wrap_sscanf(const char* text, const char* form, ...) {
    (void)text, (void)form;
    return 0;
}
