#include "widgets/number_field.hpp"

#include "look/words.hpp"
#include "widgets/button.hpp"
#include "widgets/keypad.hpp"
#include "widgets/row_text.hpp"

#include <algorithm>
#include <cfloat>

namespace evenfall::shell::widgets {
namespace {

constexpr float field_w = 128.0f;
constexpr float row_h = 56.0f;

/// Background of a tappable field, framed while the keypad is open for it.
Touch field_ground(Ui& ui, std::string_view id, const Rect& rect) {
    const Touch touch = touch_area(ui, id, rect);
    const look::Palette& ink = ui.inks();
    const bool being_set = ui.keypad->is_open() && ui.keypad->field() == id;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled({rect.x, rect.y}, {rect.right(), rect.bottom()},
                       touch.pressed ? ink.pressed : ink.well, look::control_rounding);
    if (being_set)
        list.AddRect({rect.x, rect.y}, {rect.right(), rect.bottom()}, ink.focus, look::control_rounding, 0,
                     2.0f);
    if (touch.focused) focus_ring(ui, rect, look::control_rounding);
    return touch;
}

/// Label and second lines on the left, as many as the text needs; returns the field's place on the right.
Rect labelled_row(Ui& ui, std::string_view label, std::string_view below, float width) {
    const RowText text(ui, label, below, ImGui::GetContentRegionAvail().x - width - 12.0f);
    const Rect row = take_row(std::max(row_h, text.height() + 14.0f));
    if (below.empty())
        text.draw_in(ui, row, ui.inks().ink);
    else
        text.draw(ui, row.x, row.y + 6.0f, ui.inks().ink);
    return {row.right() - width, row.y + 4.0f, width, look::target};
}

} // namespace

std::optional<double> number_field_at(Ui& ui, std::string_view id, const Rect& rect, std::string_view label,
                                      double value_si, const NumberSpec& spec) {
    const Unit unit = ui.units.of(spec.quantity);
    const Touch touch = field_ground(ui, id, rect);
    figure_in(ui, {rect.x, rect.y, rect.w - 12.0f, rect.h}, ui.type.body_strong, ui.inks().ink,
              widgets::number_text(value_si, unit, spec.decimals), symbol(unit));
    if (touch.tapped) ui.keypad->open(id, label, value_si, spec, unit);
    if (const auto result = ui.keypad->collect(id); result && result->amount_si) return result->amount_si;
    return std::nullopt;
}

std::optional<double> number_field(Ui& ui, std::string_view id, std::string_view label, double value_si,
                                   const NumberSpec& spec, std::string_view below) {
    return number_field_at(ui, id, labelled_row(ui, label, below, field_w), label, value_si, spec);
}

std::optional<std::optional<double>> optional_number_field(Ui& ui, std::string_view id,
                                                           std::string_view label,
                                                           std::optional<double> value_si, double start_si,
                                                           const NumberSpec& spec, std::string_view absent,
                                                           std::string_view below, bool may_clear) {
    const Unit unit = ui.units.of(spec.quantity);
    const float width = value_si ? field_w : std::max(field_w, text_width(ui.type.label, absent) + 24.0f);
    const Rect rect = labelled_row(ui, label, below, width);
    const Touch touch = field_ground(ui, id, rect);
    const Rect inner{rect.x + 12.0f, rect.y, rect.w - 24.0f, rect.h};
    if (value_si) {
        figure_in(ui, inner, ui.type.body_strong, ui.inks().ink,
                  widgets::number_text(*value_si, unit, spec.decimals), symbol(unit));
    } else {
        text_in(ui, inner, ui.type.label, ui.inks().ink_soft, absent, Align::right);
    }
    if (touch.tapped)
        ui.keypad->open(id, label, value_si.value_or(start_si), spec, unit, may_clear && value_si);
    if (const auto result = ui.keypad->collect(id)) return result->amount_si;
    return std::nullopt;
}

std::optional<std::string> text_field(Ui& ui, std::string_view id, std::string_view label,
                                      std::string_view value) {
    const Rect row = take_row(60.0f);
    const Touch touch = touch_area(ui, id, row);
    const look::Palette& ink = ui.inks();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const Rect field{row.x, row.y + 4.0f, row.w, row.h - 8.0f};
    list.AddRectFilled({field.x, field.y}, {field.right(), field.bottom()},
                       touch.pressed ? ink.pressed : ink.well, look::control_rounding);
    text_in(ui, {field.x + 12.0f, field.y + 5.0f, field.w - 40.0f, 18.0f}, ui.type.small, ink.ink_soft,
            label);
    text_in(ui, {field.x + 12.0f, field.y + 23.0f, field.w - 40.0f, 25.0f}, ui.type.body, ink.ink,
            value.empty() ? std::string_view(look::words::none) : value);
    draw_icon(list, Icon::chevron, {field.right() - 16.0f, field.y + field.h / 2.0f}, 18.0f, ink.ink_soft);
    if (touch.focused) focus_ring(ui, field, look::control_rounding);
    if (touch.tapped) ui.host->ask_text(std::string(id), std::string(label), std::string(value));
    const auto answer = ui.answered.find(id);
    if (answer == ui.answered.end()) return std::nullopt;
    std::string text = std::move(answer->second);
    ui.answered.erase(answer);
    if (text == value) return std::nullopt;
    return text;
}

} // namespace evenfall::shell::widgets
