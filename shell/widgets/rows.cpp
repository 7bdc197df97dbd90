#include "widgets/rows.hpp"

#include "widgets/button.hpp"

#include <algorithm>
#include <cfloat>
#include <cmath>
#include <string>
#include <utility>

namespace evenfall::shell::widgets {
namespace {

Rect cell_of(const Rect& row, const TableColumn& column) {
    return {row.x + column.from * row.w, row.y, (column.to - column.from) * row.w, row.h};
}

void draw_cells(Ui& ui, const Rect& row, std::span<const TableColumn> columns, std::span<const Cell> cells) {
    for (std::size_t i = 0; i < columns.size() && i < cells.size(); ++i) {
        const Cell& cell = cells[i];
        ImFont* font = cell.strong ? ui.type.body_strong : ui.type.body;
        const Rect place = cell_of(row, columns[i]);
        if (cell.unit.empty()) {
            text_in(ui, place, font, ui.inks().ink, cell.text, columns[i].align);
        } else {
            figure_in(ui, place, font, ui.inks().ink, cell.text, cell.unit, columns[i].align);
        }
    }
}

void hairline_below(Ui& ui, const Rect& row) {
    ImGui::GetWindowDrawList()->AddRectFilled({row.x, row.bottom() - 1.0f}, {row.right(), row.bottom()},
                                              ui.inks().rule);
}

/// Background of a row, slightly wider than the text on both sides.
void row_ground(const Ui& ui, const Rect& row, bool chosen, bool pressed) {
    if (!chosen && !pressed) return;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled({row.x - 8.0f, row.y}, {row.right() + 8.0f, row.bottom() - 1.0f},
                       pressed ? ui.inks().pressed : ui.inks().tint, look::control_rounding);
    if (chosen)
        list.AddRectFilled({row.x - 8.0f, row.y + 10.0f}, {row.x - 5.0f, row.bottom() - 11.0f},
                           ui.inks().mark, 1.5f);
}

} // namespace

bool list_row(Ui& ui, std::string_view id, const ListRow& row) {
    const look::Palette& ink = ui.inks();
    const Rect place = take_row(row.below.empty() ? 52.0f : 60.0f);
    const Touch touch = touch_area(ui, id, place, row.enabled);
    row_ground(ui, place, row.chosen, touch.pressed);
    hairline_below(ui, place);
    float right = place.right();
    if (row.has_chevron) {
        draw_icon(*ImGui::GetWindowDrawList(), Icon::chevron, {right - 8.0f, place.y + place.h / 2.0f}, 18.0f,
                  ink.ink_soft);
        right -= 26.0f;
    }
    if (!row.number.empty()) {
        const float width = figure_in(ui, {place.x, place.y, right - place.x, place.h}, ui.type.body_strong,
                                      row.enabled ? ink.ink : ink.ink_soft, row.number, row.unit);
        if (row.struck) {
            const float middle = place.y + 0.5f * place.h;
            ImGui::GetWindowDrawList()->AddLine({right - width - 3.0f, middle}, {right + 3.0f, middle},
                                                ink.ink, 2.0f);
        }
        right -= width + 12.0f;
    }
    const float text_w = right - place.x;
    const ImU32 title = row.enabled ? ink.ink : ink.ink_soft;
    if (row.below.empty()) {
        text_in(ui, {place.x, place.y, text_w, place.h}, ui.type.body, title, row.title);
    } else {
        text_in(ui, {place.x, place.y + 8.0f, text_w, 24.0f}, ui.type.body, title, row.title);
        text_in(ui, {place.x, place.y + 32.0f, text_w, 20.0f}, ui.type.small, ink.ink_soft, row.below);
    }
    if (touch.focused) focus_ring(ui, place, look::control_rounding);
    return touch.tapped;
}

bool sentence_row(Ui& ui, std::string_view id, std::string_view title, std::string_view below, bool chosen) {
    constexpr float edge = 9.0f;
    const float width = ImGui::GetContentRegionAvail().x;
    const auto text = [&](ImFont* font, std::string_view words) {
        const std::string broken = broken_at_spaces(font, words, width);
        return std::pair(broken, font->CalcTextSizeA(font->FontSize, FLT_MAX, 0.0f, broken.c_str()).y);
    };
    const auto [title_text, title_h] = text(ui.type.body, title);
    const auto [below_text, below_h] = text(ui.type.small, below);
    const Rect place = take_row(std::max(52.0f, edge + title_h + 2.0f + below_h + edge));
    const Touch touch = touch_area(ui, id, place);
    row_ground(ui, place, chosen, touch.pressed);
    hairline_below(ui, place);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float x = std::round(place.x);
    const float y = std::round(place.y + edge);
    list.AddText(ui.type.body, ui.type.body->FontSize, {x, y}, ui.inks().ink, title_text.c_str());
    list.AddText(ui.type.small, ui.type.small->FontSize, {x, std::round(y + title_h + 2.0f)},
                 ui.inks().ink_soft, below_text.c_str());
    if (touch.focused) focus_ring(ui, place, look::control_rounding);
    return touch.tapped;
}

bool section_row(Ui& ui, std::string_view id, std::string_view title, std::string_view said, bool open) {
    gap(6.0f);
    const Rect place = take_row(look::target + 2.0f);
    const Touch touch = touch_area(ui, id, place);
    if (!open) ui.items.mark_closed();
    row_ground(ui, place, false, touch.pressed);
    if (!open) hairline_below(ui, place);
    const look::Palette& ink = ui.inks();
    constexpr float sign_w = 26.0f;
    draw_icon(*ImGui::GetWindowDrawList(), open ? Icon::up : Icon::down,
              {place.right() - 9.0f, place.y + place.h / 2.0f}, 18.0f, ink.ink_soft);
    const float width = text_in(ui, {place.x, place.y, place.w - sign_w, place.h}, ui.type.label_strong,
                                open ? ink.ink_soft : ink.ink, title);
    if (!open && !said.empty()) {
        const float left = place.x + width + 12.0f;
        text_in(ui, {left, place.y, place.right() - sign_w - left, place.h}, ui.type.small, ink.ink_soft,
                said, Align::right);
    }
    if (touch.focused) focus_ring(ui, place, look::control_rounding);
    return touch.tapped;
}

void figure_row(Ui& ui, std::string_view label, std::string_view number, std::string_view unit,
                std::string_view below) {
    const Rect place = take_row(below.empty() ? 40.0f : 56.0f);
    const float width = figure_in(ui, place, ui.type.body_strong, ui.inks().ink, number, unit);
    const float text_w = place.w - width - 12.0f;
    if (below.empty()) {
        text_in(ui, {place.x, place.y, text_w, place.h}, ui.type.body, ui.inks().ink, label);
    } else {
        text_in(ui, {place.x, place.y + 7.0f, text_w, 24.0f}, ui.type.body, ui.inks().ink, label);
        text_in(ui, {place.x, place.y + 30.0f, text_w, 20.0f}, ui.type.small, ui.inks().ink_soft, below);
    }
    hairline_below(ui, place);
}

void table_head(Ui& ui, std::span<const TableColumn> columns, std::span<const std::string_view> titles) {
    const Rect row = take_row(32.0f);
    for (std::size_t i = 0; i < columns.size() && i < titles.size(); ++i) {
        text_in(ui, cell_of(row, columns[i]), ui.type.small, ui.inks().ink_soft, titles[i], columns[i].align);
    }
    hairline_below(ui, row);
}

bool table_row(Ui& ui, std::string_view id, std::span<const TableColumn> columns, std::span<const Cell> cells,
               bool chosen) {
    const Rect row = take_row(id.empty() ? 44.0f : look::target);
    const Touch touch = id.empty() ? Touch{} : touch_area(ui, id, row);
    row_ground(ui, row, chosen, touch.pressed);
    hairline_below(ui, row);
    draw_cells(ui, row, columns, cells);
    if (touch.focused) focus_ring(ui, row, look::control_rounding);
    return touch.tapped;
}

void table_total(Ui& ui, std::span<const TableColumn> columns, std::span<const Cell> cells) {
    const Rect row = take_row(44.0f);
    ImGui::GetWindowDrawList()->AddRectFilled({row.x, row.y - 1.0f}, {row.right(), row.y + 0.75f},
                                              ui.inks().ink_soft);
    draw_cells(ui, row, columns, cells);
}

} // namespace evenfall::shell::widgets
