#include "widgets/rows.hpp"

#include "widgets/button.hpp"
#include "widgets/row_text.hpp"

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

/// In one line, or in two smaller ones where that is too long.
void cell_in(Ui& ui, const Rect& place, ImFont* font, std::string_view text, Align align) {
    if (text_width(font, text) <= place.w + 0.5f) {
        text_in(ui, place, font, ui.inks().ink, text, align);
        return;
    }
    constexpr float line_h = 17.0f;
    const std::vector<std::string> lines = lines_of(ui.type.small, text, place.w, 2);
    float y = place.y + (place.h - line_h * static_cast<float>(lines.size())) / 2.0f;
    for (const std::string& line : lines) {
        put_in(ui, {place.x, y, place.w, line_h}, ui.type.small, ui.inks().ink, line, align);
        y += line_h;
    }
}

void draw_cells(Ui& ui, const Rect& row, std::span<const TableColumn> columns, std::span<const Cell> cells) {
    for (std::size_t i = 0; i < columns.size() && i < cells.size(); ++i) {
        const Cell& cell = cells[i];
        ImFont* font = cell.strong ? ui.type.body_strong : ui.type.body;
        const Rect place = cell_of(row, columns[i]);
        if (cell.unit.empty()) {
            cell_in(ui, place, font, cell.text, columns[i].align);
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
    const float sign_w = row.has_chevron ? 26.0f : 0.0f;
    const float figure_w =
        row.number.empty() ? 0.0f : figure_width(ui, ui.type.body_strong, row.number, row.unit) + 12.0f;
    const float text_w = ImGui::GetContentRegionAvail().x - sign_w - figure_w;
    // Names and notes may be as long as a builder likes: two lines of each.
    const RowText text(ui, row.title, row.below, text_w, 2);
    const Rect place = take_row(std::max(row.below.empty() ? 52.0f : 60.0f, text.height() + 18.0f));
    const Touch touch = touch_area(ui, id, place, row.enabled);
    row_ground(ui, place, row.chosen, touch.pressed);
    hairline_below(ui, place);
    const float right = place.right() - sign_w;
    if (row.has_chevron)
        draw_icon(*ImGui::GetWindowDrawList(), Icon::chevron,
                  {place.right() - 8.0f, place.y + place.h / 2.0f}, 18.0f, ink.ink_soft);
    if (!row.number.empty()) {
        const float width = figure_in(ui, {place.x, place.y, right - place.x, place.h}, ui.type.body_strong,
                                      row.enabled ? ink.ink : ink.ink_soft, row.number, row.unit);
        if (row.struck) {
            const float middle = place.y + 0.5f * place.h;
            ImGui::GetWindowDrawList()->AddLine({right - width - 3.0f, middle}, {right + 3.0f, middle},
                                                ink.ink, 2.0f);
        }
    }
    text.draw_in(ui, place, row.enabled ? ink.ink : ink.ink_soft);
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
        const float room = place.right() - sign_w - left;
        if (text_width(ui.type.small, said) <= room)
            text_in(ui, {left, place.y, room, place.h}, ui.type.small, ink.ink_soft, said, Align::right);
    }
    if (touch.focused) focus_ring(ui, place, look::control_rounding);
    return touch.tapped;
}

bool figure_row(Ui& ui, std::string_view label, std::string_view number, std::string_view unit,
                std::string_view below, help::Topic topic) {
    const bool explains = topic != help::Topic::none;
    const float text_w =
        ImGui::GetContentRegionAvail().x - figure_width(ui, ui.type.body_strong, number, unit) - 12.0f;
    const RowText text(ui, label, below, text_w);
    const Rect place = take_row(std::max(!below.empty() ? 56.0f
                                         : explains     ? 44.0f
                                                        : 40.0f,
                                         text.height() + 14.0f));
    const bool close = unit.substr(0, 2) == "°";
    const Touch touch =
        help_area(ui, topic, place, label,
                  std::string(number) + (unit.empty() || close ? "" : " ") + std::string(unit));
    row_ground(ui, place, false, touch.pressed);
    figure_in(ui, place, ui.type.body_strong, ui.inks().ink, number, unit);
    text.draw_in(ui, place, ui.inks().ink, topic);
    hairline_below(ui, place);
    if (touch.focused) focus_ring(ui, place, look::control_rounding);
    return touch.tapped;
}

bool table_head(Ui& ui, std::span<const TableColumn> columns, std::span<const std::string_view> titles,
                help::Topic topic) {
    const Rect row = take_row(topic == help::Topic::none ? 32.0f : 44.0f);
    const Touch touch = help_area(ui, topic, row);
    row_ground(ui, row, false, touch.pressed);
    for (std::size_t i = 0; i < columns.size() && i < titles.size(); ++i) {
        help_text_in(ui, cell_of(row, columns[i]), ui.type.small, ui.inks().ink_soft, titles[i], topic,
                     columns[i].align);
    }
    hairline_below(ui, row);
    if (touch.focused) focus_ring(ui, row, look::control_rounding);
    return touch.tapped;
}

bool table_row(Ui& ui, std::string_view id, std::span<const TableColumn> columns, std::span<const Cell> cells,
               bool chosen, help::Topic topic) {
    const Rect row = take_row(id.empty() ? 44.0f : look::target);
    const bool explains = id.empty() && topic != help::Topic::none && cells.size() > 1;
    const Touch touch = explains     ? help_area(ui, topic, row, cells[0].text,
                                                 std::string(cells[1].text) + ' ' + std::string(cells[0].unit))
                        : id.empty() ? Touch{}
                                     : touch_area(ui, id, row);
    row_ground(ui, row, chosen, touch.pressed);
    hairline_below(ui, row);
    draw_cells(ui, row, columns, cells);
    if (explains) {
        const float below = row.y + 0.5f * (row.h + ui.type.body->FontSize);
        help_dots(ui, cell_of(row, columns[0]).x, below,
                  figure_width(ui, ui.type.body, cells[0].text, cells[0].unit));
    }
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
