#include "widgets/choice.hpp"

#include "look/words.hpp"
#include "widgets/button.hpp"
#include "widgets/row_text.hpp"

#include <algorithm>
#include <vector>

namespace evenfall::shell::widgets {
namespace {

/// Number of options per line that leaves some space round the widest label.
int per_line(const Ui& ui, std::span<const std::string_view> labels, float width) {
    float widest = 0.0f;
    for (const std::string_view label : labels)
        widest = std::max(widest, text_width(ui.type.label_strong, label));
    const int fit = std::max(1, static_cast<int>(width / (widest + 20.0f)));
    const int count = static_cast<int>(labels.size());
    const int lines = (count + fit - 1) / fit;
    return (count + lines - 1) / lines;
}

/// Options in lines of `columns`, filling `whole`.
std::optional<int> options_in(Ui& ui, std::string_view id, const Rect& whole,
                              std::span<const std::string_view> labels, int on, int columns) {
    const look::Palette& ink = ui.inks();
    const int count = static_cast<int>(labels.size());
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled({whole.x, whole.y}, {whole.right(), whole.bottom()}, ink.well, look::control_rounding);
    std::optional<int> tapped;
    for (int i = 0; i < count; ++i) {
        const float width = whole.w / static_cast<float>(columns);
        const int row = i / columns;
        const Rect cell{whole.x + static_cast<float>(i % columns) * width,
                        whole.y + static_cast<float>(row) * look::target, width, look::target};
        const Touch touch = touch_area(ui, std::string(id) + "." + std::to_string(i), cell);
        const Rect inner = cell.inset(4.0f);
        const ImVec2 from(inner.x, inner.y);
        const ImVec2 to(inner.right(), inner.bottom());
        if (i == on) {
            list.AddRectFilled(from, to, ink.paper, 6.0f);
            list.AddRect(from, to, ink.ink, 6.0f, 0, 1.5f);
        } else if (touch.pressed) {
            list.AddRectFilled(from, to, ink.pressed, 6.0f);
        }
        text_in(ui, inner.inset(2.0f), i == on ? ui.type.label_strong : ui.type.label,
                i == on ? ink.ink : ink.ink_soft, labels[static_cast<std::size_t>(i)], Align::middle);
        if (touch.focused) focus_ring(ui, inner, 6.0f);
        if (touch.tapped && i != on) tapped = i;
    }
    return tapped;
}

} // namespace

std::optional<int> choice(Ui& ui, std::string_view id, std::span<const std::string_view> labels, int on) {
    const int columns = per_line(ui, labels, ImGui::GetContentRegionAvail().x);
    const int count = static_cast<int>(labels.size());
    const int lines = (count + columns - 1) / columns;
    return options_in(ui, id, take_row(static_cast<float>(lines) * look::target), labels, on, columns);
}

std::optional<int> choice_at(Ui& ui, std::string_view id, const Rect& rect,
                             std::span<const std::string_view> labels, int on) {
    return options_in(ui, id, rect, labels, on, static_cast<int>(labels.size()));
}

std::optional<int> choice(Ui& ui, std::string_view id, std::string_view label,
                          std::span<const std::string_view> labels, int on) {
    gap(8.0f);
    const Rect row = take_row(24.0f);
    text_in(ui, row, ui.type.label, ui.inks().ink_soft, label);
    gap(4.0f);
    const auto tapped = choice(ui, id, labels, on);
    gap(8.0f);
    return tapped;
}

bool toggle(Ui& ui, std::string_view id, std::string_view label, bool on, std::string_view below) {
    const look::Palette& ink = ui.inks();
    constexpr float knob_w = 52.0f;
    const RowText text(ui, label, below, ImGui::GetContentRegionAvail().x - knob_w - 48.0f);
    const Rect row = take_row(std::max(below.empty() ? 52.0f : 60.0f, text.height() + 18.0f));
    const Touch touch = touch_area(ui, id, row);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (touch.pressed) {
        list.AddRectFilled({row.x - 8.0f, row.y}, {row.right() + 8.0f, row.bottom()}, ink.pressed,
                           look::control_rounding);
    }
    const Rect slot{row.right() - knob_w, row.y + (row.h - 30.0f) / 2.0f, knob_w, 30.0f};
    text.draw_in(ui, row, ink.ink);
    text_in(ui, {slot.x - 44.0f, row.y, 36.0f, row.h}, ui.type.label, ink.ink_soft,
            on ? look::words::on : look::words::off, Align::right);
    const float knob_x = on ? slot.right() - 15.0f : slot.x + 15.0f;
    if (on) {
        list.AddRectFilled({slot.x, slot.y}, {slot.right(), slot.bottom()}, ink.solid, 15.0f);
    } else {
        list.AddRect({slot.x, slot.y}, {slot.right(), slot.bottom()}, ink.line, 15.0f, 0, 1.5f);
    }
    list.AddCircleFilled({knob_x, slot.y + 15.0f}, 10.0f, on ? ink.on_solid : ink.line, 32);
    if (touch.focused) focus_ring(ui, row, look::control_rounding);
    return touch.tapped;
}

int stepper(Ui& ui, std::string_view id, std::string_view label, int count, int least, int most) {
    const look::Palette& ink = ui.inks();
    const RowText text(ui, label, {}, ImGui::GetContentRegionAvail().x - 48.0f - 2.0f * look::target - 8.0f);
    const Rect row = take_row(std::max(56.0f, text.height() + 14.0f));
    const Rect more{row.right() - look::target, row.y + (row.h - look::target) / 2.0f, look::target,
                    look::target};
    const Rect less{more.x - 48.0f - look::target, more.y, look::target, look::target};
    text.draw_in(ui, row, ink.ink);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    for (const Rect& key : {less, more}) {
        list.AddRectFilled({key.x, key.y}, {key.right(), key.bottom()}, ink.well, look::control_rounding);
    }
    int change = 0;
    if (icon_button_at(ui, std::string(id) + ".less", less, Icon::minus, count > least)) change = -1;
    if (icon_button_at(ui, std::string(id) + ".more", more, Icon::plus, count < most)) change = 1;
    text_in(ui, {less.right(), row.y, 48.0f, row.h}, ui.type.body_strong, ink.ink, std::to_string(count),
            Align::middle);
    return change;
}

} // namespace evenfall::shell::widgets
