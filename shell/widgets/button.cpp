#include "widgets/button.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::shell::widgets {

using look::control_rounding;

bool button_at(Ui& ui, std::string_view id, const Rect& rect, std::string_view label, ButtonKind kind,
               bool enabled) {
    const Touch touch = touch_area(ui, id, rect, enabled);
    const look::Palette& ink = ui.inks();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 from(rect.x, rect.y);
    const ImVec2 to(rect.right(), rect.bottom());
    ImU32 text = kind == ButtonKind::main ? ink.on_solid : kind == ButtonKind::danger ? ink.mark : ink.ink;
    if (kind == ButtonKind::main && enabled) {
        list.AddRectFilled(from, to, touch.pressed ? ink.solid_pressed : ink.solid, control_rounding);
    } else {
        if (touch.pressed) list.AddRectFilled(from, to, ink.pressed, control_rounding);
        if (kind != ButtonKind::quiet) {
            const ImU32 edge = kind == ButtonKind::danger ? ink.mark : ink.line;
            list.AddRect(from, to, enabled ? edge : ink.rule, control_rounding, 0, 1.25f);
        }
        if (!enabled) text = ink.ink_soft;
    }
    text_in(ui, rect.inset(8.0f), kind == ButtonKind::quiet ? ui.type.label_strong : ui.type.body_strong,
            text, label, Align::middle);
    if (touch.focused) focus_ring(ui, rect, control_rounding);
    return touch.tapped;
}

bool button(Ui& ui, std::string_view id, std::string_view label, ButtonKind kind, bool enabled) {
    gap();
    return button_at(ui, id, take_row(look::target), label, kind, enabled);
}

int button_row(Ui& ui, std::initializer_list<ButtonSpec> buttons) {
    const float whole = ImGui::GetContentRegionAvail().x;
    const auto width_of = [&](std::size_t columns) {
        return (whole - look::grid * static_cast<float>(columns - 1)) / static_cast<float>(columns);
    };
    float widest = 0.0f;
    for (const ButtonSpec& spec : buttons)
        widest = std::max(widest, text_width(ui.type.body_strong, spec.label));
    std::size_t columns = buttons.size();
    while (columns > 1 && width_of(columns) < widest + 16.0f)
        --columns;
    int tapped = -1;
    for (std::size_t first = 0; first < buttons.size(); first += columns) {
        gap();
        const std::size_t here = std::min(columns, buttons.size() - first);
        const Rect row = take_row(look::target);
        const float width = width_of(here);
        for (std::size_t i = 0; i < here; ++i) {
            const ButtonSpec& spec = buttons.begin()[first + i];
            const Rect rect{row.x + static_cast<float>(i) * (width + look::grid), row.y, width, row.h};
            if (button_at(ui, spec.id, rect, spec.label, spec.kind, spec.enabled))
                tapped = static_cast<int>(first + i);
        }
    }
    return tapped;
}

bool icon_button_at(Ui& ui, std::string_view id, const Rect& rect, Icon sign, bool enabled) {
    const Touch touch = touch_area(ui, id, rect, enabled);
    const look::Palette& ink = ui.inks();
    if (touch.pressed) {
        ImGui::GetWindowDrawList()->AddRectFilled({rect.x, rect.y}, {rect.right(), rect.bottom()},
                                                  ink.pressed, control_rounding);
    }
    draw_icon(*ImGui::GetWindowDrawList(), sign, {rect.x + rect.w / 2.0f, rect.y + rect.h / 2.0f}, 22.0f,
              enabled ? ink.ink : look::faded(ink.ink_soft, 0.55f));
    if (touch.focused) focus_ring(ui, rect, control_rounding);
    return touch.tapped;
}

void draw_icon(ImDrawList& list, Icon sign, ImVec2 m, float size, ImU32 colour, float pen) {
    const float r = size / 2.0f;
    const auto at = [&](float x, float y) { return ImVec2(m.x + x * r, m.y + y * r); };
    const auto stroke = [&](std::initializer_list<ImVec2> points, bool closed = false) {
        for (const ImVec2& p : points)
            list.PathLineTo(p);
        list.PathStroke(colour, closed ? ImDrawFlags_Closed : 0, pen);
    };
    switch (sign) {
    case Icon::shelf: // three shelf boards, the middle one shorter
        stroke({at(-0.85f, -0.6f), at(0.85f, -0.6f)});
        stroke({at(-0.85f, 0.0f), at(0.35f, 0.0f)});
        stroke({at(-0.85f, 0.6f), at(0.85f, 0.6f)});
        break;
    case Icon::undo:
    case Icon::redo: { // an arrow that curves back
        const float side = sign == Icon::undo ? 1.0f : -1.0f;
        const auto turned = [&](float x, float y) { return at(side * x, y); };
        list.PathLineTo(turned(-0.8f, -0.25f));
        list.PathLineTo(turned(0.25f, -0.25f));
        list.PathBezierCubicCurveTo(turned(1.05f, -0.25f), turned(1.05f, 0.75f), turned(0.25f, 0.75f), 20);
        list.PathLineTo(turned(-0.35f, 0.75f));
        list.PathStroke(colour, 0, pen);
        stroke({turned(-0.35f, -0.7f), turned(-0.82f, -0.25f), turned(-0.35f, 0.2f)});
        break;
    }
    case Icon::close:
        stroke({at(-0.6f, -0.6f), at(0.6f, 0.6f)});
        stroke({at(0.6f, -0.6f), at(-0.6f, 0.6f)});
        break;
    case Icon::plus:
        stroke({at(0.0f, -0.7f), at(0.0f, 0.7f)});
        [[fallthrough]];
    case Icon::minus:
        stroke({at(-0.7f, 0.0f), at(0.7f, 0.0f)});
        break;
    case Icon::chevron:
        stroke({at(-0.25f, -0.55f), at(0.3f, 0.0f), at(-0.25f, 0.55f)});
        break;
    case Icon::up:
        stroke({at(-0.6f, 0.3f), at(0.0f, -0.35f), at(0.6f, 0.3f)});
        break;
    case Icon::down:
        stroke({at(-0.6f, -0.3f), at(0.0f, 0.35f), at(0.6f, -0.3f)});
        break;
    case Icon::check:
        stroke({at(-0.7f, 0.05f), at(-0.2f, 0.55f), at(0.75f, -0.5f)});
        break;
    case Icon::backspace:
        stroke({at(-1.05f, 0.0f), at(-0.45f, -0.65f), at(1.0f, -0.65f), at(1.0f, 0.65f), at(-0.45f, 0.65f)},
               true);
        stroke({at(-0.05f, -0.28f), at(0.5f, 0.28f)});
        stroke({at(0.5f, -0.28f), at(-0.05f, 0.28f)});
        break;
    case Icon::share:
        stroke({at(0.0f, 0.35f), at(0.0f, -0.9f)});
        stroke({at(-0.4f, -0.5f), at(0.0f, -0.9f), at(0.4f, -0.5f)});
        stroke({at(-0.45f, -0.1f), at(-0.75f, -0.1f), at(-0.75f, 0.85f), at(0.75f, 0.85f), at(0.75f, -0.1f),
                at(0.45f, -0.1f)});
        break;
    case Icon::sun:
        list.AddCircle(m, r * 0.42f, colour, 24, pen);
        for (int i = 0; i < 8; ++i) {
            const float a = static_cast<float>(i) * 0.7853982f;
            stroke(
                {at(0.66f * std::cos(a), 0.66f * std::sin(a)), at(0.95f * std::cos(a), 0.95f * std::sin(a))});
        }
        break;
    case Icon::moon:
        list.PathArcTo(m, r * 0.8f, -0.6f, 4.0f, 30);
        list.PathBezierCubicCurveTo(at(0.1f, -0.45f), at(0.2f, 0.35f), at(0.66f, -0.45f), 20);
        list.PathStroke(colour, 0, pen);
        break;
    case Icon::trash:
        stroke({at(-0.8f, -0.55f), at(0.8f, -0.55f)});
        stroke({at(-0.3f, -0.55f), at(-0.2f, -0.85f), at(0.2f, -0.85f), at(0.3f, -0.55f)});
        stroke({at(-0.6f, -0.5f), at(-0.48f, 0.85f), at(0.48f, 0.85f), at(0.6f, -0.5f)});
        break;
    }
}

} // namespace evenfall::shell::widgets
