#pragma once

// The few things that differ between the desktop's OpenGL and the browser's WebGL: one of flavour_desktop.cpp
// and flavour_web.cpp is built. And what is asked of either by the same calls (surface.cpp).

#include "look/theme.hpp"

#include <memory>
#include <vector>

#include "platform/host.hpp"

namespace evenfall::shell::platform {

/// Hints that SDL wants before it is started.
void set_sdl_hints();
/// Attributes of the drawing context, and the shading language that goes with them.
void set_gl_attributes();
[[nodiscard]] const char* shading_language();
/// Clears the whole buffer of width × height device pixels.
void clear(int width, int height, look::Ink colour);
/// A texture of a picture, red green blue alpha, rows from the top; `texture` is one to be done with, or 0.
/// Smooth, never repeated.
[[nodiscard]] unsigned make_texture(const unsigned char* rgba, int width, int height, unsigned texture);
/// The drawn picture, rows from the bottom, RGBA.
[[nodiscard]] std::vector<unsigned char> read_pixels(int width, int height);
/// The outside world of this flavour.
[[nodiscard]] std::unique_ptr<Host> make_host();

} // namespace evenfall::shell::platform
