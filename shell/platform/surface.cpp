// OpenGL calls beside Dear ImGui's own drawing; the same on the desktop and in the browser.

#include "platform/flavour.hpp"

#ifdef __EMSCRIPTEN__
#include <GLES3/gl3.h>
#else
#include <SDL_opengl.h>
#endif

#include <utility>

namespace evenfall::shell::platform {

void clear(int width, int height, look::Ink colour) {
    const auto share = [colour](unsigned shift) {
        return static_cast<float>((colour >> shift) & 0xFFu) / 255.0f;
    };
    glViewport(0, 0, width, height);
    glClearColor(share(0), share(8), share(16), 1.0f);
    glClear(GL_COLOR_BUFFER_BIT);
}

unsigned make_texture(const unsigned char* rgba, int width, int height, unsigned texture) {
    if (texture == 0) glGenTextures(1, &texture);
    glBindTexture(GL_TEXTURE_2D, texture);
    for (const auto& [what, value] : {std::pair{GL_TEXTURE_MIN_FILTER, GL_LINEAR},
                                      {GL_TEXTURE_MAG_FILTER, GL_LINEAR},
                                      {GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE},
                                      {GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE}}) {
        glTexParameteri(GL_TEXTURE_2D, static_cast<GLenum>(what), value);
    }
    glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA, width, height, 0, GL_RGBA, GL_UNSIGNED_BYTE, rgba);
    return texture;
}

std::vector<unsigned char> read_pixels(int width, int height) {
    std::vector<unsigned char> pixels(static_cast<std::size_t>(width) * static_cast<std::size_t>(height) *
                                      4u);
    glPixelStorei(GL_PACK_ALIGNMENT, 1);
    glReadPixels(0, 0, width, height, GL_RGBA, GL_UNSIGNED_BYTE, pixels.data());
    return pixels;
}

} // namespace evenfall::shell::platform
