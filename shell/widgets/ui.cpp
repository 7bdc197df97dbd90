#include "widgets/ui.hpp"

#include "imgui_internal.h"

#include <algorithm>
#include <cmath>

namespace evenfall::shell::widgets {
namespace {

// ImGui treats a null begin pointer with a null end as "up to the end of memory", so an empty text needs a
// valid pointer.
constexpr std::string_view no_text = "";
const char* begin_of(std::string_view text) {
    return text.empty() ? no_text.data() : text.data();
}
const char* end_of(std::string_view text) {
    return begin_of(text) + text.size();
}

/// Distance from the top of a line of this face to its baseline.
float baseline_in(const ImFont* font) {
    return font->Ascent * font->FontSize / (font->Ascent - font->Descent);
}

/// Height of capitals, for vertical centring: a line centred by its box looks too low.
float cap_height(const ImFont* font) {
    return font->FontSize * 0.498f;
}

float snapped(float value) {
    const float density = std::max(ImGui::GetIO().DisplayFramebufferScale.y, 1.0f);
    return std::round(value * density) / density;
}

} // namespace

Touch touch_area(Ui& ui, std::string_view id, const Rect& rect, bool enabled) {
    Touch touch;
    ImGuiWindow* window = ImGui::GetCurrentWindow();
    const ImRect box({rect.x, rect.y}, {rect.right(), rect.bottom()});
    const ImRect clip = window->ClipRect;
    const ImVec2 middle = box.GetCenter();
    if (rect.w <= 0.0f || rect.h <= 0.0f) return touch;
    ui.items.record(
        {std::string(id), rect.x, rect.y, rect.w, rect.h, !ui.covered && enabled && clip.Contains(middle)});
    const bool live = enabled && !ui.covered;
    const ImGuiID key = window->GetID(begin_of(id), end_of(id));
    if (!live) ImGui::BeginDisabled(true);
    if (ImGui::ItemAdd(box, key)) {
        bool hovered = false;
        bool held = false;
        touch.tapped = ImGui::ButtonBehavior(box, key, &hovered, &held) && live && !ui.glide.caught;
        touch.pressed = held && hovered && live;
        touch.focused = live && ImGui::GetIO().NavVisible && ImGui::GetFocusID() == key;
    }
    if (!live) ImGui::EndDisabled();
    return touch;
}

void focus_ring(const Ui& ui, const Rect& rect, float rounding) {
    const Rect outer = rect.inset(-3.0f);
    // Drawn without the clip of a scroll area, so that no edge is cut off.
    ImGui::GetWindowDrawList()->AddRect({outer.x, outer.y}, {outer.right(), outer.bottom()}, ui.inks().focus,
                                        rounding + 3.0f, 0, 2.5f);
}

float text_width(ImFont* font, std::string_view text) {
    return font->CalcTextSizeA(font->FontSize, FLT_MAX, 0.0f, begin_of(text), end_of(text)).x;
}

std::string broken_at_spaces(ImFont* font, std::string_view text, float width) {
    std::string out;
    std::size_t line = 0; // where the current line begins in `out`
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find_first_of(" \n", at), text.size());
        const std::string_view word = text.substr(at, end - at);
        const bool first = out.size() == line;
        std::string longer = out.substr(line);
        if (!first) longer += ' ';
        longer += word;
        if (!first && text_width(font, longer) > width) {
            out += '\n';
            line = out.size();
            out += word;
        } else {
            out.replace(line, std::string::npos, longer);
        }
        if (end < text.size() && text[end] == '\n') {
            out += '\n';
            line = out.size();
        }
        at = end + 1;
    }
    return out;
}

float text_at(ImFont* font, float x, float baseline_y, ImU32 colour, std::string_view text) {
    const float top = snapped(baseline_y - baseline_in(font));
    ImGui::GetWindowDrawList()->AddText(font, font->FontSize, {snapped(x), top}, colour, begin_of(text),
                                        end_of(text));
    return text_width(font, text);
}

float text_in(Ui&, const Rect& rect, ImFont* font, ImU32 colour, std::string_view text, Align align) {
    std::string held;
    float width = text_width(font, text);
    if (width > rect.w + 0.5f && rect.w > 0.0f) {
        held = text;
        while (!held.empty() && text_width(font, held + "…") > rect.w) {
            unsigned char taken = 0;
            do { // a whole UTF-8 sequence at a time
                taken = static_cast<unsigned char>(held.back());
                held.pop_back();
            } while ((taken & 0xC0u) == 0x80u && !held.empty());
        }
        held += "…";
        text = held;
        width = text_width(font, text);
    }
    float x = rect.x;
    if (align == Align::middle) x += (rect.w - width) / 2.0f;
    if (align == Align::right) x += rect.w - width;
    text_at(font, x, rect.y + (rect.h + cap_height(font)) / 2.0f, colour, text);
    return width;
}

float figure_in(Ui& ui, const Rect& rect, ImFont* font, ImU32 colour, std::string_view number,
                std::string_view unit, Align align) {
    ImFont* thin = font->FontSize > 30.0f   ? ui.type.body
                   : font->FontSize > 20.0f ? ui.type.label
                                            : ui.type.small;
    const bool close = unit == "°" || unit == "°C" || unit == "°F";
    ImFont* unit_font = unit == "°" ? font : thin;
    const float space = unit.empty()  ? 0.0f
                        : unit == "°" ? 1.0f
                        : close       ? 3.0f
                                      : std::round(font->FontSize * 0.16f);
    const float number_w = text_width(font, number);
    const float unit_w = unit.empty() ? 0.0f : space + text_width(unit_font, unit);
    float x = rect.x;
    if (align == Align::right) x = rect.right() - number_w - unit_w;
    if (align == Align::middle) x = rect.x + (rect.w - number_w - unit_w) / 2.0f;
    const float baseline = rect.y + (rect.h + cap_height(font)) / 2.0f;
    text_at(font, x, baseline, colour, number);
    if (!unit.empty()) text_at(unit_font, x + number_w + space, baseline, ui.inks().ink_soft, unit);
    return number_w + unit_w;
}

Rect take_row(float height) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const Rect rect{at.x, snapped(at.y), width, height};
    ImGui::ItemSize(ImVec2(width, height));
    return rect;
}

void gap(float height) {
    ImGui::ItemSize(ImVec2(0.0f, height));
}

void rule(Ui& ui) {
    const Rect row = take_row(1.0f);
    ImGui::GetWindowDrawList()->AddRectFilled({row.x, row.y}, {row.right(), row.y + 1.0f}, ui.inks().rule);
}

} // namespace evenfall::shell::widgets
