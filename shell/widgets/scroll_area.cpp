#include "widgets/scroll_area.hpp"

#include "imgui_internal.h"

#include <algorithm>
#include <cmath>

namespace evenfall::shell::widgets {
namespace {

constexpr float drag_begins_px = 9.0f; // a press that moves less is still a tap
constexpr float catches_px_s = 120.0f; // a finger that stops a faster glide meant to stop it

/// Scrolls this area with the finger, and continues as a glide after release.
void drag_scroll(Ui& ui, ImGuiWindow* window) {
    const ImGuiIO& io = ImGui::GetIO();
    Glide& glide = ui.glide;
    const ImRect area = window->Rect();
    const float most = window->ScrollMax.y;
    const bool mine = glide.area() == window->ID;
    if (!ui.covered && io.MouseDown[0] && !glide.owned && area.Contains(io.MouseClickedPos[0])) {
        if (mine && !glide.dragging()) {
            glide.caught = std::abs(glide.speed()) > catches_px_s;
            glide.stop();
        }
        const ImVec2 way = io.MousePos - io.MouseClickedPos[0];
        if (!glide.dragging() && most > 0.0f && std::abs(way.y) > drag_begins_px &&
            std::abs(way.y) > std::abs(way.x)) {
            const double held_s = static_cast<double>(io.MouseDownDuration[0]);
            glide.take(window->ID, ui.now_s - held_s);
            glide.drag(-(way.y - io.MouseDelta.y), ui.now_s); // what the finger went before
            ImGui::ClearActiveID();                           // the widget under the finger is not tapped
        }
        if (glide.dragging() && glide.area() == window->ID) {
            ImGui::SetScrollY(window, std::clamp(window->Scroll.y - io.MouseDelta.y, 0.0f, most));
            glide.drag(-io.MouseDelta.y, ui.now_s);
            ui.frames_wanted = std::max(ui.frames_wanted, 2);
        }
        return;
    }
    if (!mine) return;
    if (glide.dragging()) {
        glide.release(window->Scroll.y, ui.now_s);
        if (ui.calm) glide.stop();
    }
    if (glide.speed() == 0.0f) return;
    ImGui::SetScrollY(window, glide.glide(std::clamp(io.DeltaTime, 0.001f, 0.05f), most));
    ui.frames_wanted = std::max(ui.frames_wanted, 2);
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
