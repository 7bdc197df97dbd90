#pragma once

// The differences between the desktop's OpenGL and the browser's WebGL: either flavour_desktop.cpp or
// flavour_web.cpp is built. Also what both do by the same calls (surface.cpp).

#include "look/theme.hpp"

#include <memory>
#include <vector>

#include "platform/host.hpp"

namespace evenfall::shell::platform {

/// Hints that SDL needs before it is started.
void set_sdl_hints();
/// Attributes of the drawing context, and the matching shading language.
void set_gl_attributes();
[[nodiscard]] const char* shading_language();
/// Clears the whole buffer of width × height device pixels.
void clear(int width, int height, look::Ink colour);
/// Makes a texture of a picture: RGBA, rows from the top; `texture` is an old one to replace, or 0. Linear
/// filtering, no repetition.
[[nodiscard]] unsigned make_texture(const unsigned char* rgba, int width, int height, unsigned texture);
/// The drawn picture, rows from the bottom, RGBA.
[[nodiscard]] std::vector<unsigned char> read_pixels(int width, int height);
/// The host of this flavour.
[[nodiscard]] std::unique_ptr<Host> make_host();

} // namespace evenfall::shell::platform
