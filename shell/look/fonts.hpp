#pragma once

#include "imgui.h"

namespace evenfall::shell::look {

/// The type scale. Sizes are CSS px; digits have equal width in all of them.
struct Type {
    ImFont* small = nullptr;        ///< 13 regular: second lines, ruler
    ImFont* label = nullptr;        ///< 15 regular: labels, units
    ImFont* label_strong = nullptr; ///< 15 semibold
    ImFont* body = nullptr;         ///< 17 regular: running text, row values
    ImFont* body_strong = nullptr;  ///< 17 semibold: buttons, row figures
    ImFont* title = nullptr;        ///< 21 semibold: headings, answers
    ImFont* large = nullptr;        ///< 28 semibold: keys of the keypad
    ImFont* display = nullptr;      ///< 40 semibold: the keypad's value line
};

/// Fills ImGui's atlas for a device pixel ratio (clamped to 1–3) and returns the typefaces. Layout does not
/// depend on the ratio. The caller rebuilds the texture.
[[nodiscard]] Type build_fonts(ImFontAtlas& atlas, double dpr);

} // namespace evenfall::shell::look
