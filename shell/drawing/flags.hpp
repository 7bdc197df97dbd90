#pragma once

#include "widgets/ui.hpp"

#include <span>

namespace evenfall::shell::drawing {

inline constexpr float flag_size = 22.0f; ///< of the flag with a mark's letter, both ways [px]

/// The middle of the flag of a mark at `at`: the first of its usual places where neither flag nor mast covers
/// any of the `taken` boxes; the first of all where none is free. `side` 1 prefers the right, −1 the left;
/// `down` 1 below the mark, −1 above. Pure.
[[nodiscard]] ImVec2 flag_place(ImVec2 at, float side, float down, std::span<const widgets::Rect> taken);

} // namespace evenfall::shell::drawing
