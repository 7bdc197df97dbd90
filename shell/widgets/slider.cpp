#include "widgets/slider.hpp"

#include "imgui_internal.h"

#include <algorithm>

namespace evenfall::shell::widgets {

std::optional<double> slider_at(Ui& ui, std::string_view id, const Rect& rect, double share, bool enabled) {
    constexpr float knob = 11.0f;
    const Touch touch = touch_area(ui, id, rect, enabled);
    // Still held although the finger has left the bar.
    const ImGuiID key = ImGui::GetCurrentWindow()->GetID(id.data(), id.data() + id.size());
    const bool held = enabled && ImGui::GetActiveID() == key && ImGui::GetIO().MouseDown[0];
    const float from = rect.x + knob + 2.0f;
    const float to = rect.right() - knob - 2.0f;
    std::optional<double> moved;
    if (held && ImGui::IsMousePosValid()) {
        ui.glide.owned = true;
        moved = static_cast<double>(std::clamp((ImGui::GetIO().MousePos.x - from) / (to - from), 0.0f, 1.0f));
    } else if (touch.tapped && !ImGui::IsMousePosValid()) {
        moved = share >= 0.999 ? 0.0 : std::min(1.0, share + 0.1);
    }
    const look::Palette& ink = ui.inks();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float y = rect.y + rect.h / 2.0f;
    const float x = from + static_cast<float>(std::clamp(moved.value_or(share), 0.0, 1.0)) * (to - from);
    list.AddRectFilled({from, y - 2.0f}, {to, y + 2.0f}, ink.line, 2.0f);
    list.AddRectFilled({from, y - 3.0f}, {x, y + 3.0f}, ink.ink, 3.0f);
    list.AddCircleFilled({x, y}, knob, enabled ? ink.solid : ink.line, 32);
    list.AddCircleFilled({x, y}, held ? 6.0f : 4.0f, ink.on_solid, 24);
    if (touch.focused) focus_ring(ui, rect, look::control_rounding);
    return moved;
}

} // namespace evenfall::shell::widgets
