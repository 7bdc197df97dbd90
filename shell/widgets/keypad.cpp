#include "widgets/keypad.hpp"

#include "look/words.hpp"
#include "widgets/bars.hpp"
#include "widgets/button.hpp"
#include "widgets/words_of_panel.hpp"

#include "imgui_internal.h"

#include <algorithm>
#include <utility>
#include <vector>

namespace evenfall::shell::widgets {
namespace {

namespace words = look::words;
constexpr float pad = look::gutter;

bool takes_fractions(const KeypadEntry& entry) {
    return entry.unit() == Unit::inch_fraction || entry.unit() == Unit::inch;
}

} // namespace

void Keypad::open(std::string_view field_id, std::string_view label, double value_si, const NumberSpec& spec,
                  Unit unit, bool may_clear) {
    open_ = true;
    may_clear_ = may_clear;
    out_ = 0.0f;
    field_ = field_id;
    label_ = label;
    entry_ = KeypadEntry(spec, value_si, unit);
    refusal_.clear();
    result_.reset();
    collected_ = false;
}

void Keypad::close() {
    open_ = false;
    out_ = 0.0f;
    field_.clear();
    result_.reset();
    collected_ = false;
}

std::optional<Keypad::Result> Keypad::collect(std::string_view field_id) {
    if (!open_ || !result_ || field_ != field_id) return std::nullopt;
    collected_ = true;
    return std::exchange(result_, std::nullopt);
}

void Keypad::settle(std::string_view refusal) {
    if (result_) close(); // all fields have been drawn by now, so this one no longer exists
    if (!collected_) return;
    collected_ = false;
    refusal_ = refusal;
    if (refusal_.empty()) close();
}

std::optional<std::pair<Quantity, Unit>> Keypad::take_unit_choice() {
    return std::exchange(unit_choice_, std::nullopt);
}

void Keypad::press(char key) {
    entry_.press(key);
    refusal_.clear();
}

void Keypad::set() {
    refusal_ = entry_.refusal();
    if (refusal_.empty()) result_ = Result{entry_.amount()};
}

void Keypad::clear_amount() {
    refusal_.clear();
    result_ = Result{std::nullopt};
}

void Keypad::read_keyboard() {
    ImGuiContext& context = *ImGui::GetCurrentContext();
    bool typed = false;
    for (const ImWchar c : ImGui::GetIO().InputQueueCharacters) {
        const bool space_to_press = c == ' ' && ImGui::GetIO().NavVisible; // space presses the focused key
        if (space_to_press || c >= 0x7F) continue;
        entry_.press(static_cast<char>(c));
        typed = true;
    }
    if (ImGui::IsKeyPressed(ImGuiKey_Backspace)) {
        entry_.press('\b');
        typed = true;
    }
    if (ImGui::IsKeyPressed(ImGuiKey_Delete, false)) {
        entry_.press('\x7f');
        typed = true;
    }
    if (typed) {
        refusal_.clear();
        // After typing, Enter means "Set", not a press of the key that last had the focus.
        context.NavId = 0;
        context.NavDisableHighlight = true;
    }
    const bool enter =
        ImGui::IsKeyPressed(ImGuiKey_Enter, false) || ImGui::IsKeyPressed(ImGuiKey_KeypadEnter, false);
    if (enter && !ImGui::GetIO().NavVisible) set();
}

void Keypad::draw_value(Ui& ui, const Rect& rect) {
    const look::Palette& ink = ui.inks();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled({rect.x, rect.y}, {rect.right(), rect.bottom()}, ink.paper, look::control_rounding);
    list.AddRect({rect.x, rect.y}, {rect.right(), rect.bottom()}, refusal_.empty() ? ink.line : ink.mark,
                 look::control_rounding, 0, refusal_.empty() ? 1.25f : 2.0f);
    if (entry_.spec().least < 0.0) {
        const Rect sign{rect.x + 8.0f, rect.y + (rect.h - look::target) / 2.0f, look::target, look::target};
        const Touch touch = touch_area(ui, "keypad.sign", sign);
        list.AddRectFilled({sign.x, sign.y}, {sign.right(), sign.bottom()},
                           touch.pressed ? ink.pressed : ink.well, look::control_rounding);
        text_in(ui, sign, ui.type.title, ink.ink, "±", Align::middle);
        if (touch.focused) focus_ring(ui, sign, look::control_rounding);
        if (touch.tapped) {
            entry_.turn_sign();
            refusal_.clear();
        }
    }
    const std::string text = as_shown(entry_.text());
    const std::string_view unit = symbol(entry_.unit());
    ImFont* big = ui.type.display;
    const float unit_w = unit.empty() ? 0.0f : text_width(ui.type.body, unit) + 8.0f;
    const float width = text_width(big, text);
    const float right = rect.right() - 16.0f - unit_w;
    const float baseline = rect.y + rect.h / 2.0f + 14.0f;
    if (entry_.whole_marked() && !text.empty()) {
        list.AddRectFilled({right - width - 6.0f, rect.y + 12.0f}, {right + 4.0f, rect.bottom() - 12.0f},
                           ink.tint, 4.0f);
    }
    text_at(big, right - width, baseline, ink.ink, text);
    if (!entry_.whole_marked()) {
        list.AddRectFilled({right + 1.0f, rect.y + 16.0f}, {right + 3.0f, rect.bottom() - 16.0f}, ink.focus);
    }
    if (!unit.empty()) text_at(ui.type.body, right + 8.0f, baseline, ink.ink_soft, unit);
}

void Keypad::draw_units(Ui& ui, const Rect& rect) {
    const auto units = units_of(entry_.spec().quantity);
    const look::Palette& ink = ui.inks();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled({rect.x, rect.y}, {rect.right(), rect.bottom()}, ink.well, look::control_rounding);
    const float width = rect.w / static_cast<float>(units.size());
    for (std::size_t i = 0; i < units.size(); ++i) {
        const Rect cell{rect.x + static_cast<float>(i) * width, rect.y, width, rect.h};
        const Touch touch = touch_area(ui, "keypad.unit." + std::to_string(i), cell);
        const Rect inner = cell.inset(4.0f);
        const bool on = units[i] == entry_.unit();
        if (on || touch.pressed) {
            list.AddRectFilled({inner.x, inner.y}, {inner.right(), inner.bottom()},
                               on ? ink.paper : ink.pressed, 6.0f);
        }
        if (on) list.AddRect({inner.x, inner.y}, {inner.right(), inner.bottom()}, ink.ink, 6.0f, 0, 1.5f);
        text_in(ui, inner, on ? ui.type.label_strong : ui.type.label, on ? ink.ink : ink.ink_soft,
                choice_label(units[i]), Align::middle);
        if (touch.focused) focus_ring(ui, inner, 6.0f);
        if (touch.tapped && !on) {
            entry_.change_unit(units[i]);
            unit_choice_ = std::pair(entry_.spec().quantity, units[i]);
            refusal_.clear();
        }
    }
}

void Keypad::draw_keys(Ui& ui, const Rect& rect) {
    struct Key {
        const char* id;
        const char* label; ///< nullptr where an icon is drawn
        Icon sign;
        char press; ///< 0 for the − and + keys
        int step;
        int column, row, wide, high;
    };
    const bool fractions = takes_fractions(entry_);
    const auto digit = [](const char* id, const char* label, int column, int row, int wide = 1) {
        return Key{id, label, Icon::plus, label[0], 0, column, row, wide, 1};
    };
    std::vector<Key> keys{
        digit("keypad.7", "7", 0, 0),
        digit("keypad.8", "8", 1, 0),
        digit("keypad.9", "9", 2, 0),
        digit("keypad.4", "4", 0, 1),
        digit("keypad.5", "5", 1, 1),
        digit("keypad.6", "6", 2, 1),
        digit("keypad.1", "1", 0, 2),
        digit("keypad.2", "2", 1, 2),
        digit("keypad.3", "3", 2, 2),
        digit("keypad.point", as_shown(".") == "," ? "," : ".", 0, 3),
        digit("keypad.0", "0", 1, 3, fractions ? 1 : 2),
    };
    keys.push_back({"keypad.back", nullptr, Icon::backspace, '\b', 0, 3, 0, 1, fractions ? 1 : 2});
    keys.push_back({"keypad.less", nullptr, Icon::minus, 0, -1, 3, fractions ? 1 : 2, 1, 1});
    keys.push_back({"keypad.more", nullptr, Icon::plus, 0, 1, 3, fractions ? 2 : 3, 1, 1});
    if (fractions) {
        keys.push_back({"keypad.space", words::keypad_space, Icon::plus, ' ', 0, 2, 3, 1, 1});
        keys.push_back({"keypad.bar", "/", Icon::plus, '/', 0, 3, 3, 1, 1});
    }
    const look::Palette& ink = ui.inks();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float key_w = (rect.w - 3.0f * look::grid) / 4.0f;
    const float key_h = (rect.h - 3.0f * look::grid) / 4.0f;
    for (const Key& key : keys) {
        const auto wide = static_cast<float>(key.wide);
        const auto high = static_cast<float>(key.high);
        const Rect place{rect.x + static_cast<float>(key.column) * (key_w + look::grid),
                         rect.y + static_cast<float>(key.row) * (key_h + look::grid),
                         wide * key_w + (wide - 1.0f) * look::grid,
                         high * key_h + (high - 1.0f) * look::grid};
        // Held down, − and + and backspace repeat.
        const bool repeats = key.step != 0 || key.press == '\b';
        ImGui::PushButtonRepeat(repeats);
        const Touch touch = touch_area(ui, key.id, place);
        ImGui::PopButtonRepeat();
        if (touch.pressed && repeats) ui.frames_wanted = std::max(ui.frames_wanted, 2);
        const bool working = key.column == 3;
        list.AddRectFilled({place.x, place.y}, {place.right(), place.bottom()},
                           touch.pressed ? ink.pressed
                           : working     ? ink.tint
                                         : ink.well,
                           look::control_rounding);
        if (key.label == nullptr) {
            draw_icon(list, key.sign, {place.x + place.w / 2.0f, place.y + place.h / 2.0f}, 22.0f, ink.ink,
                      2.0f);
        } else {
            const bool word = key.label[1] != '\0';
            text_in(ui, place, word ? ui.type.label : ui.type.large, ink.ink, key.label, Align::middle);
        }
        if (touch.focused) focus_ring(ui, place, look::control_rounding);
        if (!touch.tapped) continue;
        if (key.step != 0) {
            entry_.step(key.step);
            refusal_.clear();
        } else {
            press(key.press);
        }
    }
}

void Keypad::draw(Ui& ui, const Rect& screen, const Rect& place, bool from_below) {
    if (!open_) return;
    const bool was_out = out_ > 0.0f;
    bool leave = begin_sheet(ui, "keypad", screen, place, from_below, out_);
    if (was_out) read_keyboard();
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const look::Palette& ink = ui.inks();
    const float left = at.x + pad;
    // Where wider than high, the keys are beside the figure.
    const bool flat = place.w > place.h;
    const float width = flat ? 0.5f * (place.w - 3.0f * pad) : place.w - 2.0f * pad;
    float y = at.y + 12.0f;

    text_in(ui, {left, y, width, 24.0f}, ui.type.body_strong, ink.ink, label_);
    y += 30.0f;
    const bool tight = place.h < 270.0f;
    const float value_h = tight ? look::target : place.h < 520.0f ? 60.0f : 72.0f;
    draw_value(ui, {left, y, width, value_h});
    y += value_h + 6.0f;

    // The limits, replaced by the sentence of a refusal; two lines are reserved for it wherever there is
    // room.
    const float said_h = tight ? 24.0f : 42.0f;
    ImGui::PushClipRect({left, y}, {left + width, y + said_h + 4.0f}, true);
    if (refusal_.empty()) {
        text_in(ui, {left, y, width, 20.0f}, ui.type.small, ink.ink_soft, entry_.limits_text());
    } else {
        ImFont* font = text_width(ui.type.label, refusal_) > 1.9f * width ? ui.type.small : ui.type.label;
        ImGui::GetWindowDrawList()->AddText(font, font->FontSize, {left, y}, ink.mark,
                                            broken_at_spaces(font, refusal_, width).c_str());
    }
    ImGui::PopClipRect();
    y += said_h;

    if (units_of(entry_.spec().quantity).size() > 1) {
        draw_units(ui, {left, y, width, look::target});
        y += look::target + look::grid;
    }
    const float footer_h = 52.0f;
    const float footer_y = at.y + place.h - pad - footer_h;
    const float room_h = flat ? place.h - 2.0f * pad : footer_y - look::grid - 4.0f - y;
    const float keys_h = std::min(room_h, 4.0f * 68.0f + 3.0f * look::grid);
    draw_keys(ui, {flat ? left + width + pad : left, flat ? at.y + pad : y, width, keys_h});

    const float third = may_clear_ ? (width - 2.0f * look::grid) / 3.0f : (width - look::grid) / 2.0f;
    if (button_at(ui, "keypad.cancel", {left, footer_y, third, footer_h}, words::keypad_cancel,
                  ButtonKind::plain))
        leave = true;
    if (may_clear_ && button_at(ui, "keypad.clear", {left + third + look::grid, footer_y, third, footer_h},
                                words::keypad_clear, ButtonKind::plain)) {
        clear_amount();
    }
    if (button_at(ui, "keypad.ok", {left + width - third, footer_y, third, footer_h}, words::keypad_set,
                  ButtonKind::main))
        set();
    end_sheet(ui);
    if (leave) close();
    if (result_)
        ui.frames_wanted = std::max(ui.frames_wanted, 2); // the field collects the result in the next frame
}

} // namespace evenfall::shell::widgets
