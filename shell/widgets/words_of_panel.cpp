#include "widgets/words_of_panel.hpp"

#include "look/words.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::shell::widgets {
namespace {

// ImGui takes a null for "up to the terminating zero", and an empty view may be null.
const char* begin_of(std::string_view text) {
    return text.empty() ? "" : text.data();
}
const char* end_of(std::string_view text) {
    return begin_of(text) + text.size();
}

float wrapped_height(ImFont* font, std::string_view text, float width) {
    const std::string broken = broken_at_spaces(font, text, width);
    return font->CalcTextSizeA(font->FontSize, FLT_MAX, 0.0f, begin_of(broken), end_of(broken)).y;
}

void wrapped_text(ImFont* font, float x, float y, float width, ImU32 colour, std::string_view text) {
    const std::string broken = broken_at_spaces(font, text, width);
    ImGui::GetWindowDrawList()->AddText(font, font->FontSize, {std::round(x), std::round(y)}, colour,
                                        begin_of(broken), end_of(broken));
}

void block(ImFont* font, ImU32 colour, std::string_view text) {
    const float width = ImGui::GetContentRegionAvail().x;
    const Rect row = take_row(wrapped_height(font, text, width));
    wrapped_text(font, row.x, row.y, row.w, colour, text);
}

/// A triangle with an exclamation mark, readable without colour.
void caution_sign(ImDrawList& list, ImVec2 m, float size, ImU32 colour) {
    const float r = size / 2.0f;
    list.AddTriangle({m.x, m.y - r}, {m.x + r, m.y + r * 0.8f}, {m.x - r, m.y + r * 0.8f}, colour, 1.75f);
    list.AddLine({m.x, m.y - r * 0.35f}, {m.x, m.y + r * 0.25f}, colour, 2.0f);
    list.AddCircleFilled({m.x, m.y + r * 0.54f}, 1.4f, colour);
}

/// A dotted line under the last line of a wrapped text: a tap explains it.
void dots_below(Ui& ui, ImFont* font, float x, float bottom, float width, std::string_view text) {
    const std::string broken = broken_at_spaces(font, text, width);
    const std::size_t line = broken.rfind('\n');
    const std::string_view last = std::string_view(broken).substr(line == std::string::npos ? 0 : line + 1);
    help_dots(ui, std::round(x), std::round(bottom), text_width(font, last));
}

bool box(Ui& ui, ImU32 ground, ImU32 edge, bool sign, std::string_view title, std::string_view text,
         help::Topic topic = help::Topic::none) {
    gap();
    constexpr float pad = 14.0f;
    const float left = sign ? 44.0f : pad + 4.0f;
    const float width = ImGui::GetContentRegionAvail().x - left - pad;
    const float title_h = title.empty() ? 0.0f : wrapped_height(ui.type.label_strong, title, width) + 2.0f;
    const float height =
        pad + title_h + (text.empty() ? 0.0f : wrapped_height(ui.type.label, text, width)) + pad;
    const Rect row = take_row(height);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const Touch touch = help_area(ui, topic, row);
    list.AddRectFilled({row.x, row.y}, {row.right(), row.bottom()},
                       touch.pressed ? ui.inks().pressed : ground, look::control_rounding);
    if (sign) {
        caution_sign(list, {row.x + 23.0f, row.y + pad + 10.0f}, 20.0f, edge);
    } else {
        list.AddRectFilled({row.x, row.y + 8.0f}, {row.x + 3.0f, row.bottom() - 8.0f}, edge, 1.5f);
    }
    float y = row.y + pad - 1.0f;
    if (!title.empty()) {
        wrapped_text(ui.type.label_strong, row.x + left, y, width, ui.inks().ink, title);
        y += title_h;
        if (topic != help::Topic::none)
            dots_below(ui, ui.type.label_strong, row.x + left, y - 2.0f, width, title);
    }
    wrapped_text(ui.type.label, row.x + left, y, width, ui.inks().ink, text);
    if (touch.focused) focus_ring(ui, row, look::control_rounding);
    return touch.tapped;
}

} // namespace

void heading(Ui& ui, std::string_view text, std::string_view below) {
    block(ui.type.title, ui.inks().ink, text);
    if (!below.empty()) {
        gap(2.0f);
        block(ui.type.label, ui.inks().ink_soft, below);
    }
    gap(12.0f);
}

bool subheading(Ui& ui, std::string_view text, help::Topic topic) {
    gap(20.0f);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    block(ui.type.label_strong, ui.inks().ink_soft, text);
    gap(6.0f);
    if (topic == help::Topic::none) return false;
    const float bottom = ImGui::GetCursorScreenPos().y;
    const Rect place{at.x, bottom - std::max(bottom - at.y + 18.0f, 44.0f), width,
                     std::max(bottom - at.y + 18.0f, 44.0f)};
    const Touch touch = help_area(ui, topic, place);
    dots_below(ui, ui.type.label_strong, at.x, bottom - 6.0f, width, text);
    if (touch.focused) focus_ring(ui, place, look::control_rounding);
    return touch.tapped;
}

void paragraph(Ui& ui, const Sentence& text) {
    block(ui.type.label, ui.inks().ink, text.text(ui.units));
}

void note(Ui& ui, const Sentence& text) {
    block(ui.type.small, ui.inks().ink_soft, text.text(ui.units));
}

void caution_box(Ui& ui, std::string_view title, const Sentence& text) {
    box(ui, ui.inks().caution, ui.inks().mark, true, title, text.text(ui.units));
}

bool info_box(Ui& ui, std::string_view title, const Sentence& text, help::Topic topic) {
    return box(ui, ui.inks().well, ui.inks().water_line, false, title, text.text(ui.units), topic);
}

void problem_line(Ui& ui, const Sentence& sentence) {
    if (sentence.empty()) return;
    const std::string text = sentence.text(ui.units);
    constexpr float left = 28.0f;
    const float width = ImGui::GetContentRegionAvail().x - left;
    const Rect row = take_row(std::max(24.0f, wrapped_height(ui.type.label, text, width)));
    caution_sign(*ImGui::GetWindowDrawList(), {row.x + 10.0f, row.y + 11.0f}, 18.0f, ui.inks().mark);
    wrapped_text(ui.type.label, row.x + left, row.y, width, ui.inks().mark, text);
}

} // namespace evenfall::shell::widgets
