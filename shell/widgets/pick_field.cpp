#include "widgets/pick_field.hpp"

#include "look/words.hpp"
#include "widgets/bars.hpp"
#include "widgets/button.hpp"
#include "widgets/rows.hpp"
#include "widgets/scroll_area.hpp"

#include <algorithm>
#include <utility>

namespace evenfall::shell::widgets {

std::optional<std::string> pick_field(Ui& ui, std::string_view id, std::string_view label,
                                      const std::vector<PickOption>& options, std::string_view chosen_key) {
    const Rect row = take_row(60.0f);
    const Touch touch = touch_area(ui, id, row);
    const look::Palette& ink = ui.inks();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const Rect field{row.x, row.y + 4.0f, row.w, row.h - 8.0f};
    list.AddRectFilled({field.x, field.y}, {field.right(), field.bottom()},
                       touch.pressed ? ink.pressed : ink.well, look::control_rounding);
    const auto chosen = std::find_if(options.begin(), options.end(),
                                     [&](const PickOption& o) { return o.key == chosen_key; });
    const std::string_view shown = chosen == options.end() ? chosen_key : std::string_view(chosen->label);
    text_in(ui, {field.x + 12.0f, field.y + 5.0f, field.w - 44.0f, 18.0f}, ui.type.small, ink.ink_soft,
            label);
    text_in(ui, {field.x + 12.0f, field.y + 23.0f, field.w - 44.0f, 25.0f}, ui.type.body, ink.ink, shown);
    draw_icon(list, Icon::down, {field.right() - 20.0f, field.y + field.h / 2.0f}, 16.0f, ink.ink_soft);
    if (touch.focused) focus_ring(ui, field, look::control_rounding);
    if (touch.tapped) ui.picker->open(id, label, options, chosen_key);
    auto result = ui.picker->collect(id);
    if (result && *result == chosen_key) return std::nullopt;
    return result;
}

void Picker::open(std::string_view field_id, std::string_view label, std::vector<PickOption> options,
                  std::string_view chosen) {
    open_ = true;
    out_ = 0.0f;
    field_ = field_id;
    label_ = label;
    chosen_ = chosen;
    options_ = std::move(options);
    result_.reset();
}

std::optional<std::string> Picker::collect(std::string_view field_id) {
    if (!result_ || field_ != field_id) return std::nullopt;
    return std::exchange(result_, std::nullopt);
}

void Picker::draw(Ui& ui, const Rect& screen, const Rect& place, bool from_below) {
    if (!open_) return;
    bool leave = begin_sheet(ui, "pick", screen, place, from_below, out_);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    constexpr float head_h = 60.0f;
    text_in(ui, {at.x + look::gutter, at.y, place.w - 80.0f, head_h}, ui.type.title, ui.inks().ink, label_);
    if (icon_button_at(ui, "pick.cancel", {at.x + place.w - 56.0f, at.y + 6.0f, look::target, look::target},
                       Icon::close)) {
        leave = true;
    }
    begin_scroll_area(ui, "pick.list", {at.x, at.y + head_h, place.w, place.h - head_h});
    for (const PickOption& option : options_) {
        const ListRow row{.title = option.label, .below = option.below, .chosen = option.key == chosen_};
        if (list_row(ui, "pick." + option.key, row)) {
            result_ = option.key;
            leave = true;
        }
    }
    end_scroll_area(ui);
    end_sheet(ui);
    if (leave) close();
    if (result_)
        ui.frames_wanted = std::max(ui.frames_wanted, 2); // the field collects the result in the next frame
}

} // namespace evenfall::shell::widgets
