// Stands in for what the libraries could call and the page never makes them: SDL's pointers drawn from pictures and windows
// without WebGL, and the settings file of Dear ImGui's tables. The linker takes these instead (web/CMakeLists.txt), and what
// only those needed stays out of the page.
#include <stdarg.h>
#include <stddef.h>
#include <stdlib.h>

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

// Whole numbers between other signs, "#version %d": all that Dear ImGui reads that way when no settings file is kept.
int __wrap_sscanf(const char* text, const char* form, ...) {
    va_list into;
    va_start(into, form);
    int read = 0;
    for (; *form; ++form) {
        if (form[0] == '%' && form[1] == 'd') {
            char* end;
            const long number = strtol(text, &end, 10);
            if (end == text) break;
            *va_arg(into, int*) = (int)number;
            ++read;
            text = end;
            ++form;
        } else if (*text++ != *form) {
            break;
        }
    }
    va_end(into);
    return read;
}
