#include "app/parts.hpp"

#include "evenfall.hpp"
#include "look/words.hpp"
#include "look/words_card.hpp"
#include "widgets/button.hpp"
#include "widgets/choice.hpp"
#include "widgets/number_field.hpp"
#include "widgets/rows.hpp"
#include "widgets/scroll_area.hpp"
#include "widgets/words_of_panel.hpp"

#include <utility>

namespace evenfall::shell {
namespace {

namespace words = look::words;
using starter::LureCard;
using widgets::NumberSpec;
using widgets::Quantity;

template <class E, std::size_t N>
void pick_one(widgets::Ui& ui, const char* id, const char* label,
              const std::array<std::string_view, N>& names, E& on) {
    if (const auto tapped = widgets::choice(ui, id, label, names, static_cast<int>(on)))
        on = static_cast<E>(*tapped);
}

void body_rows(AppParts& parts, LureCard& card) {
    widgets::Ui& ui = parts.ui;
    pick_one(ui, "card.form", words::card_form, words::card_forms, card.form);
    const NumberSpec length{Quantity::length, starter::least_length_m, starter::greatest_length_m, {}};
    if (const auto set = widgets::number_field(ui, "card.length", words::card_length, card.length_m, length))
        card.length_m = *set;
    const NumberSpec across{Quantity::length, 0.005, 0.2, {}};
    const double height_m = card.height_m.value_or(starter::usual_height_m(card.form, card.length_m));
    const auto usual = [&](double m) {
        return std::string(words::card_usual) + " " +
               widgets::value_text(m, parts.ui.units.of(Quantity::length));
    };
    if (const auto set = widgets::optional_number_field(ui, "card.height", words::card_height, card.height_m,
                                                        height_m, across, usual(height_m)))
        card.height_m = *set;
    const double thickness_m = card.thickness_m.value_or(starter::usual_thickness_m(card.form, height_m));
    if (const auto set =
            widgets::optional_number_field(ui, "card.thickness", words::card_thickness, card.thickness_m,
                                           thickness_m, across, usual(thickness_m)))
        card.thickness_m = *set;
    card.segments +=
        widgets::stepper(ui, "card.segments", words::card_segments, card.segments, 1, starter::most_segments);
    std::vector<widgets::PickOption> woods;
    for (const auto& wood : materials::woods())
        woods.push_back({std::string(wood.id), std::string(wood.name), {}});
    if (const auto picked = widgets::pick_field(ui, "card.wood", words::card_wood, woods, card.wood))
        card.wood = *picked;
}

void rig_rows(AppParts& parts, LureCard& card) {
    widgets::Ui& ui = parts.ui;
    pick_one(ui, "card.hooks", words::card_hooks, words::card_hook_counts, card.hooks);
    pick_one(ui, "card.tail", words::card_tail, words::card_tails, card.tail);
    pick_one(ui, "card.fall", words::card_fall, words::card_falls, card.fall);
    if (card.fall == starter::WantedFall::by_speed) {
        const NumberSpec speed{Quantity::fall, starter::least_speed_m_s, starter::greatest_speed_m_s, {}};
        if (const auto set =
                widgets::number_field(ui, "card.speed", words::card_speed, card.speed_m_s, speed))
            card.speed_m_s = *set;
    }
}

/// Opens a lure in place of the one on the bench; false where the builder keeps that.
bool open_lure(AppParts& parts, document::Document lure, const char* said) {
    if (!parts.host.another_lure()) return true;
    if (!parts.session.open(std::move(lure), words::card_head)) return false;
    parts.another_lure();
    parts.session.view.step = state::Step::lead;
    parts.say(said);
    return true;
}

/// The card has done its work when this says so.
bool make_rows(AppParts& parts) {
    widgets::Ui& ui = parts.ui;
    NewLureCard& card = parts.card;
    if (!card.refusal.empty()) widgets::problem_line(ui, card.refusal);
    widgets::gap();
    if (widgets::button(ui, "card.make", words::card_make, widgets::ButtonKind::main)) {
        auto lure = starter::new_lure(card.choices);
        if (lure) return open_lure(parts, std::move(*lure), words::card_made);
        card.refusal = sentences(lure.problems(), parts.session.settings.units);
    }
    widgets::gap();
    if (list_row(ui, "card.bare",
                 {.title = words::card_bare, .below = words::card_bare_below, .has_chevron = true})) {
        const bool done = open_lure(parts, state::new_lure(), words::card_bare);
        parts.session.view.step = state::Step::shape;
        return done;
    }
    return false;
}

} // namespace

void draw_new_card(AppParts& parts, const Regions& where) {
    widgets::Ui& ui = parts.ui;
    NewLureCard& card = parts.card;
    const widgets::Rect place = sheet_place(where, where.panel.w + 32.0f);
    bool leave = begin_sheet(ui, "card", where.screen, place, where.stacked, card.out);
    ui.covered = parts.picker.is_open() || parts.keypad.is_open();
    const ImVec2 at = ImGui::GetCursorScreenPos();
    constexpr float head_h = 60.0f;
    text_in(ui, {at.x + 20.0f, at.y, place.w - 84.0f, head_h}, ui.type.title, ui.inks().ink,
            words::card_head);
    if (icon_button_at(ui, "card.close", {at.x + place.w - 56.0f, at.y + 6.0f, look::target, look::target},
                       widgets::Icon::close)) {
        leave = true;
    }
    widgets::begin_scroll_area(ui, "card.list", {at.x, at.y + head_h, place.w, place.h - head_h}, 20.0f);
    widgets::note(ui, words::card_below);
    const LureCard before = card.choices;
    unit_choice(parts, "card.units", words::card_units, Quantity::length);
    body_rows(parts, card.choices);
    rig_rows(parts, card.choices);
    if (!(card.choices == before)) card.refusal.clear();
    if (make_rows(parts)) leave = true;
    widgets::end_scroll_area(ui);
    end_sheet(ui);
    if (leave) card.open = false;
}

} // namespace evenfall::shell
