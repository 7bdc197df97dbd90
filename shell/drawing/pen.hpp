#pragma once

// Strokes and fills that Dear ImGui does not have.

#include "drawing/world_to_screen.hpp"

#include "imgui.h"

#include <span>
#include <string_view>
#include <vector>

namespace evenfall::shell::drawing::pen {

// Line weights of the sheet [px].
inline constexpr float hair = 1.0f;
inline constexpr float medium = 1.5f;
inline constexpr float heavy = 2.0f;

[[nodiscard]] inline ImVec2 vec(ScreenPoint p) {
    return {p.x, p.y};
}

/// Fills the ribbon between two lines with the same number of points.
void fill_ribbon(ImDrawList& list, std::span<const ImVec2> one, std::span<const ImVec2> other, ImU32 colour);

/// Outline of a ribbon: along one line, back along the other, closed.
void outline_ribbon(ImDrawList& list, std::span<const ImVec2> one, std::span<const ImVec2> other,
                    ImU32 colour, float weight);

/// Fills a shape that is star-shaped about `middle`.
void fill_star(ImDrawList& list, ImVec2 middle, std::span<const ImVec2> rim, ImU32 colour);

void line(ImDrawList& list, std::span<const ImVec2> points, ImU32 colour, float weight);
void dashed(ImDrawList& list, std::span<const ImVec2> points, ImU32 colour, float weight, float dash = 5.0f,
            float space = 4.0f);
void dashed_rect(ImDrawList& list, ImVec2 least, ImVec2 most, ImU32 colour, float weight);

/// Slanted hatching inside a rectangle; `crossed` gives both directions.
void hatch(ImDrawList& list, ImVec2 least, ImVec2 most, ImU32 colour, float apart, bool crossed = false);
/// Dots in staggered rows inside a rectangle.
void dots(ImDrawList& list, ImVec2 least, ImVec2 most, ImU32 colour, float apart);

/// Four corner strokes round a rectangle: marks the chosen item.
void corners(ImDrawList& list, ImVec2 least, ImVec2 most, ImU32 colour, float arm, float weight);

/// An arrow head at `tip`, pointing along (dx, dy) of length 1.
void arrow_head(ImDrawList& list, ImVec2 tip, float dx, float dy, float size, ImU32 colour);

enum class Side { left, middle, right };
/// One line of text with its top at y; `side` says which of its ends is at x. With `ground`, a patch of that
/// colour behind it makes it readable over lines.
void text(ImDrawList& list, ImFont* font, float x, float y, ImU32 colour, std::string_view words,
          Side side = Side::left, ImU32 ground = 0);

} // namespace evenfall::shell::drawing::pen
