#include "drawing/flags.hpp"

#include <algorithm>

namespace evenfall::shell::drawing {
namespace {

bool covers(const widgets::Rect& a, const widgets::Rect& b) {
    return a.x < b.right() && b.x < a.right() && a.y < b.bottom() && b.y < a.bottom();
}

/// Whether a flag at `flag` or its mast from `at` lies on the box; the mark itself has its own place.
bool on_box(ImVec2 at, ImVec2 flag, const widgets::Rect& box) {
    constexpr float half = 0.5f * flag_size;
    if (covers({flag.x - half, flag.y - half, flag_size, flag_size}, box)) return true;
    constexpr int pieces = 8;
    for (int i = 2; i < pieces; ++i) {
        const float t = static_cast<float>(i) / pieces;
        if (box.holds({at.x + t * (flag.x - at.x), at.y + t * (flag.y - at.y)})) return true;
    }
    return false;
}

} // namespace

ImVec2 flag_place(ImVec2 at, float side, float down, std::span<const widgets::Rect> taken) {
    // Beside the mark on either hand, farther out, and at last on the other side of the middle line.
    const ImVec2 ways[] = {{26.0f * side, 24.0f * down},  {-26.0f * side, 24.0f * down},
                           {46.0f * side, 12.0f * down},  {-46.0f * side, 12.0f * down},
                           {26.0f * side, 50.0f * down},  {-26.0f * side, 50.0f * down},
                           {26.0f * side, -24.0f * down}, {-26.0f * side, -24.0f * down}};
    for (const ImVec2& way : ways) {
        const ImVec2 flag{at.x + way.x, at.y + way.y};
        if (std::none_of(taken.begin(), taken.end(),
                         [&](const widgets::Rect& box) { return on_box(at, flag, box); }))
            return flag;
    }
    return {at.x + ways[0].x, at.y + ways[0].y};
}

} // namespace evenfall::shell::drawing
