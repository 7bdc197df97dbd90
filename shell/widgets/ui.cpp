#include "widgets/ui.hpp"

#include "look/said.hpp"
#include "widgets/row_text.hpp"

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

/// Of a text as it is.
float width_of(ImFont* font, std::string_view text) {
    return font->CalcTextSizeA(font->FontSize, FLT_MAX, 0.0f, begin_of(text), end_of(text)).x;
}

float snapped(float value) {
    const float density = std::max(ImGui::GetIO().DisplayFramebufferScale.y, 1.0f);
    return std::round(value * density) / density;
}

/// A text as it is, its baseline at y.
void put(ImFont* font, float x, float baseline_y, ImU32 colour, std::string_view text) {
    const float top = snapped(baseline_y - baseline_in(font));
    ImGui::GetWindowDrawList()->AddText(font, font->FontSize, {snapped(x), top}, colour, begin_of(text),
                                        end_of(text));
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

Touch help_area(Ui& ui, help::Topic topic, const Rect& rect, std::string_view label, std::string value) {
    const help::Entry* entry = help::entry_of(topic);
    if (entry == nullptr) return {};
    ui.offered.push_back(topic);
    const auto count = std::count(ui.offered.begin(), ui.offered.end(), topic);
    std::string id = std::string("help.").append(entry->id);
    if (count > 1) id.append(".").append(std::to_string(count));
    const Touch touch = touch_area(ui, id, rect);
    if (touch.tapped) {
        ui.asked = help::Asked{topic, {}};
        if (!label.empty()) went_in(ui, label, std::move(value));
    }
    return touch;
}

void went_in(Ui& ui, std::string_view label, std::string value) {
    if (ui.asked) ui.asked->figures.push_back({std::string(label), std::move(value)});
}

void focus_ring(const Ui& ui, const Rect& rect, float rounding) {
    const Rect outer = rect.inset(-3.0f);
    // Drawn without the clip of a scroll area, so that no edge is cut off.
    ImGui::GetWindowDrawList()->AddRect({outer.x, outer.y}, {outer.right(), outer.bottom()}, ui.inks().focus,
                                        rounding + 3.0f, 0, 2.5f);
}

float text_width(ImFont* font, std::string_view text) {
    return width_of(font, look::said(text));
}

std::string broken_at_spaces(ImFont* font, std::string_view english, float width) {
    const std::string_view text = look::said(english);
    std::string out;
    std::size_t line = 0; // where the current line begins in `out`
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find_first_of(" \n", at), text.size());
        const std::string_view word = text.substr(at, end - at);
        const bool first = out.size() == line;
        std::string longer = out.substr(line);
        if (!first) longer += ' ';
        longer += word;
        if (!first && width_of(font, longer) > width) {
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
    const std::string_view words = look::said(text);
    put(font, x, baseline_y, colour, words);
    return width_of(font, words);
}

float put_in(Ui& ui, const Rect& rect, ImFont* font, ImU32 colour, std::string_view text, Align align) {
    std::string held;
    float width = width_of(font, text);
    if (width > rect.w + 0.5f && rect.w > 0.0f) {
        ui.items.record_cut(std::string(text));
        held = text;
        while (!held.empty() && width_of(font, held + "…") > rect.w) {
            unsigned char taken = 0;
            do { // a whole UTF-8 sequence at a time
                taken = static_cast<unsigned char>(held.back());
                held.pop_back();
            } while ((taken & 0xC0u) == 0x80u && !held.empty());
        }
        held += "…";
        text = held;
        width = width_of(font, text);
    }
    float x = rect.x;
    if (align == Align::middle) x += (rect.w - width) / 2.0f;
    if (align == Align::right) x += rect.w - width;
    put(font, x, rect.y + (rect.h + cap_height(font)) / 2.0f, colour, text);
    return width;
}

namespace {

/// The dotted line below words that a tap explains, where they are drawn so wide.
void dots_below(const Ui& ui, const Rect& rect, const ImFont* font, float width, Align align) {
    const float left = align == Align::left    ? rect.x
                       : align == Align::right ? rect.right() - width
                                               : rect.x + (rect.w - width) / 2.0f;
    help_dots(ui, std::round(left), std::round(rect.y + (rect.h + cap_height(font)) / 2.0f) + 4.0f, width);
}

} // namespace

float text_in(Ui& ui, const Rect& rect, ImFont* font, ImU32 colour, std::string_view text, Align align) {
    return put_in(ui, rect, font, colour, look::said(text), align);
}

float help_text_in(Ui& ui, const Rect& rect, ImFont* font, ImU32 colour, std::string_view text,
                   help::Topic topic, Align align) {
    const float width = text_in(ui, rect, font, colour, text, align);
    if (topic != help::Topic::none && !text.empty()) dots_below(ui, rect, font, width, align);
    return width;
}

void help_dots(const Ui& ui, float x, float y, float width) {
    for (float at = x; at < x + width; at += 4.0f)
        ImGui::GetWindowDrawList()->AddRectFilled({at, y}, {at + 1.5f, y + 1.5f}, ui.inks().ink_soft);
}

std::vector<std::string> lines_of(ImFont* font, std::string_view text, float width, std::size_t most) {
    const std::string broken = broken_at_spaces(font, text, width);
    std::vector<std::string> lines;
    for (std::size_t at = 0; at <= broken.size();) {
        const std::size_t end = std::min(broken.find('\n', at), broken.size());
        if (lines.size() < most)
            lines.push_back(broken.substr(at, end - at));
        else
            lines.back().append(" ").append(broken, at, end - at);
        at = end + 1;
    }
    return lines;
}

void lines_at(Ui& ui, float x, float y, float width, float line_h, ImFont* font, ImU32 colour,
              const std::vector<std::string>& lines, help::Topic topic) {
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const Rect rect{x, y + line_h * static_cast<float>(i), width, line_h};
        const float drawn = put_in(ui, rect, font, colour, lines[i], Align::left);
        const bool is_last = i + 1 == lines.size();
        if (is_last && topic != help::Topic::none) dots_below(ui, rect, font, drawn, Align::left);
    }
}

namespace {

struct FigureParts {
    ImFont* unit_font;
    float space;
    float number_w;
    float unit_w; ///< with the space before it
};

FigureParts figure_parts(const Ui& ui, ImFont* font, std::string_view number, std::string_view unit) {
    ImFont* thin = font->FontSize > 30.0f   ? ui.type.body
                   : font->FontSize > 20.0f ? ui.type.label
                                            : ui.type.small;
    const bool close = unit == "°" || unit == "°C" || unit == "°F";
    ImFont* unit_font = unit == "°" ? font : thin;
    const float space = unit.empty()  ? 0.0f
                        : unit == "°" ? 1.0f
                        : close       ? 3.0f
                                      : std::round(font->FontSize * 0.16f);
    return {unit_font, space, text_width(font, number),
            unit.empty() ? 0.0f : space + text_width(unit_font, unit)};
}

} // namespace

float figure_width(const Ui& ui, ImFont* font, std::string_view number, std::string_view unit) {
    const FigureParts parts = figure_parts(ui, font, number, unit);
    return parts.number_w + parts.unit_w;
}

float figure_in(Ui& ui, const Rect& rect, ImFont* font, ImU32 colour, std::string_view number,
                std::string_view unit, Align align) {
    const FigureParts parts = figure_parts(ui, font, number, unit);
    const float width = parts.number_w + parts.unit_w;
    float x = rect.x;
    if (align == Align::right) x = rect.right() - width;
    if (align == Align::middle) x = rect.x + (rect.w - width) / 2.0f;
    const float baseline = rect.y + (rect.h + cap_height(font)) / 2.0f;
    text_at(font, x, baseline, colour, number);
    if (!unit.empty())
        text_at(parts.unit_font, x + parts.number_w + parts.space, baseline, ui.inks().ink_soft, unit);
    return width;
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
