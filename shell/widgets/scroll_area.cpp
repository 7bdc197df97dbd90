#include "widgets/scroll_area.hpp"

#include "imgui_internal.h"

#include <algorithm>
#include <cmath>

namespace evenfall::shell::widgets {
namespace {

constexpr float drag_begins_px = 9.0f;  // a press that moves less is still a tap
constexpr float glide_halves_s = 0.18f; // time in which a glide loses half its speed
constexpr float glide_ends_px_s = 24.0f;
constexpr float glide_most_px_s = 3500.0f;
constexpr double finger_rests_s = 0.08; // a finger at rest this long before release does not start a glide

/// Scrolls this area with the finger, and continues as a glide after release.
void drag_scroll(Ui& ui, ImGuiWindow* window) {
    const ImGuiIO& io = ImGui::GetIO();
    Glide& glide = ui.glide;
    const ImRect area = window->Rect();
    const float most = window->ScrollMax.y;
    const float dt = std::clamp(io.DeltaTime, 0.001f, 0.05f);
    if (!ui.covered && io.MouseDown[0] && !glide.owned && area.Contains(io.MouseClickedPos[0])) {
        const ImVec2 way = io.MousePos - io.MouseClickedPos[0];
        if (glide.area == window->ID && io.MouseClicked[0]) glide.speed = 0.0f;
        if (!glide.dragging && most > 0.0f && std::abs(way.y) > drag_begins_px &&
            std::abs(way.y) > std::abs(way.x)) {
            glide.area = window->ID;
            glide.dragging = true;
            ImGui::ClearActiveID(); // the widget under the finger is not tapped
        }
        if (glide.dragging && glide.area == window->ID) {
            ImGui::SetScrollY(window, std::clamp(window->Scroll.y - io.MouseDelta.y, 0.0f, most));
            if (io.MouseDelta.y != 0.0f) {
                glide.speed = std::clamp(0.6f * glide.speed - 0.4f * io.MouseDelta.y / dt, -glide_most_px_s,
                                         glide_most_px_s);
                glide.moved_s = ui.now_s;
            }
            ui.frames_wanted = std::max(ui.frames_wanted, 2);
        }
        return;
    }
    if (glide.area != window->ID) return;
    if (glide.dragging && !io.MouseDown[0]) {
        glide.dragging = false;
        if (ui.now_s - glide.moved_s > finger_rests_s) glide.speed = 0.0f;
    }
    if (!glide.dragging && glide.speed != 0.0f) {
        const float next = std::clamp(window->Scroll.y + glide.speed * dt, 0.0f, most);
        ImGui::SetScrollY(window, next);
        glide.speed *= std::exp2(-dt / glide_halves_s);
        const bool at_end = next <= 0.0f || next >= most;
        if (at_end || std::abs(glide.speed) < glide_ends_px_s) {
            glide.speed = 0.0f;
            glide.area = 0;
        } else {
            ui.frames_wanted = std::max(ui.frames_wanted, 2);
        }
    }
}

/// A short bar at the right edge and a fading edge show that there is more.
void scroll_mark(const Ui& ui, const ImGuiWindow* window) {
    if (window->ScrollMax.y <= 1.0f) return;
    const ImRect area = window->Rect();
    const float whole = window->ScrollMax.y + area.GetHeight();
    const float track = area.GetHeight() - 16.0f;
    const float length = std::max(32.0f, track * area.GetHeight() / whole);
    const float at = area.Min.y + 8.0f + (track - length) * (window->Scroll.y / window->ScrollMax.y);
    ImGui::GetWindowDrawList()->AddRectFilled({area.Max.x - 7.0f, at}, {area.Max.x - 3.0f, at + length},
                                              ui.inks().line, 2.0f);
}

} // namespace

void begin_scroll_area(Ui& ui, std::string_view id, const Rect& rect, float padding) {
    ImGui::SetCursorScreenPos({rect.x, rect.y});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {padding, padding});
    ImGui::BeginChild(std::string(id).c_str(), {rect.w, rect.h}, ImGuiChildFlags_AlwaysUseWindowPadding,
                      ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoBackground |
                          ImGuiWindowFlags_NavFlattened);
    ImGui::PopStyleVar();
    drag_scroll(ui, ImGui::GetCurrentWindow());
}

void end_scroll_area(Ui& ui) {
    gap(8.0f);
    scroll_mark(ui, ImGui::GetCurrentWindow());
    ImGui::EndChild();
}

void scroll_to_top() {
    ImGui::SetScrollY(0.0f);
}

} // namespace evenfall::shell::widgets
