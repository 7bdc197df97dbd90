#include "app/parts.hpp"

#include "evenfall.hpp"
#include "language.hpp"
#include "look/words.hpp"
#include "state/file_stem.hpp"
#include "widgets/button.hpp"
#include "widgets/choice.hpp"
#include "widgets/rows.hpp"
#include "widgets/scroll_area.hpp"
#include "widgets/words_of_panel.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace evenfall::shell {
namespace {

namespace words = look::words;
using widgets::Quantity;
using widgets::Unit;

/// The lures that can be opened. True when one was tapped.
bool draw_lures(AppParts& parts) {
    widgets::Ui& ui = parts.ui;
    widgets::subheading(ui, words::shelf_lures);
    for (const Demo& demo : parts.demos) {
        if (list_row(ui, "shelf.preset." + demo.name, {.title = demo.title, .has_chevron = true})) {
            if (!parts.host.another_lure()) return true;
            if (parts.session.open_json(demo.json)) {
                parts.another_lure();
                parts.say(words::opened + demo.title);
            }
            return true;
        }
    }
    if (list_row(ui, "shelf.new", {.title = words::shelf_new, .has_chevron = true})) {
        parts.card.open = true;
        parts.card.out = 0.0f;
        parts.card.refusal.clear();
        return true;
    }
    if (list_row(ui, "shelf.copy",
                 {.title = words::shelf_copy, .below = words::shelf_copy_below, .has_chevron = true})) {
        document::Document copy = parts.session.kept();
        if (copy.name.size() + std::string_view(words::name_of_copy).size() <= document::max_text)
            copy.name += words::name_of_copy;
        open_of_its_own(parts, {words::shelf_copy, std::move(copy)});
        return true;
    }
    return draw_compare_row(parts);
}

void share(AppParts& parts, const document::Document& document) {
    if (const std::string link = write_link(document); link.size() <= document::max_link_bytes)
        parts.host.share(link);
    else
        parts.toast.show(words::too_long_a_link, true, parts.now_s);
}

bool draw_hand_on(AppParts& parts) {
    widgets::Ui& ui = parts.ui;
    widgets::subheading(ui, words::shelf_hand_on);
    const document::Document& document = parts.session.kept();
    if (list_row(ui, "shelf.share", {.title = words::shelf_share, .has_chevron = true})) {
        share(parts, document);
        return true;
    }
    if (!document.log.empty() && list_row(ui, "shelf.share_without_log",
                                          {.title = words::shelf_share_without_log, .has_chevron = true})) {
        document::Document without_log = document;
        without_log.log.clear();
        share(parts, without_log);
        return true;
    }
    if (list_row(ui, "shelf.save", {.title = words::shelf_save, .has_chevron = true})) {
        parts.host.save_file(state::file_stem(document.name) + ".json", write_document(document));
        return true;
    }
    if (list_row(ui, "shelf.load", {.title = words::shelf_load, .has_chevron = true})) {
        parts.host.open_file();
        return true;
    }
    return false;
}

/// English and the languages that have a catalogue, each by its own name.
void language_choice(AppParts& parts) {
    std::vector<std::string_view> names{words::english};
    std::vector<std::string> codes{"en"};
    for (const evenfall::words::Catalogue& catalogue : evenfall::words::catalogues()) {
        names.push_back(catalogue.name);
        codes.emplace_back(catalogue.code);
    }
    const auto now = std::find(codes.begin(), codes.end(), parts.translator.code());
    if (const auto tapped =
            choice(parts.ui, "shelf.language", words::language, names, static_cast<int>(now - codes.begin())))
        parts.session.settings.language = codes[static_cast<std::size_t>(*tapped)];
}

void draw_bench(AppParts& parts) {
    widgets::Ui& ui = parts.ui;
    widgets::subheading(ui, words::shelf_bench);
    language_choice(parts);
    constexpr std::array<std::string_view, 2> themes{words::theme_light, words::theme_dark};
    state::Settings& settings = parts.session.settings;
    if (const auto tapped =
            choice(ui, "shelf.theme", words::theme, themes, settings.theme == state::Theme::dark ? 1 : 0)) {
        settings.theme = *tapped == 1 ? state::Theme::dark : state::Theme::light;
    }
    constexpr std::array<std::string_view, 2> sizes{words::text_usual, words::text_large};
    if (const auto tapped = choice(ui, "shelf.text", words::text_size, sizes, settings.large_text ? 1 : 0)) {
        settings.large_text = *tapped == 1;
    }
    constexpr std::array<std::string_view, 2> hands{words::hand_left, words::hand_right};
    if (const auto tapped = choice(ui, "shelf.hand", words::hand, hands, settings.left_handed ? 0 : 1))
        settings.left_handed = *tapped == 0;
    unit_choice(parts, "shelf.length", words::unit_length, Quantity::length);
    unit_choice(parts, "shelf.mass", words::unit_mass, Quantity::mass);
    unit_choice(parts, "shelf.fall", words::unit_fall, Quantity::fall);
    unit_choice(parts, "shelf.temperature", words::unit_temperature, Quantity::temperature);
}

} // namespace

bool open_of_its_own(AppParts& parts, state::WorkedOut lure) {
    if (!parts.host.another_lure()) return false;
    if (!parts.session.open(std::move(lure.document), std::move(lure.title))) return false;
    parts.another_lure();
    return true;
}

void unit_choice(AppParts& parts, const char* id, const char* label, Quantity quantity) {
    const auto units = widgets::units_of(quantity);
    std::vector<std::string_view> labels;
    int on = 0;
    for (std::size_t i = 0; i < units.size(); ++i) {
        labels.push_back(widgets::choice_label(units[i]));
        if (units[i] == parts.ui.units.of(quantity)) on = static_cast<int>(i);
    }
    if (const auto tapped = choice(parts.ui, id, label, labels, on)) {
        keep_unit(parts.session.settings, quantity, units[static_cast<std::size_t>(*tapped)]);
    }
}

widgets::Rect sheet_place(const Regions& where, float wide) {
    if (where.stacked) {
        widgets::Rect place = where.keypad;
        place.h = std::min(where.screen.h - 24.0f, 720.0f);
        place.y = where.keypad.bottom() - place.h;
        return place;
    }
    const float foot = where.bar.bottom() - look::gutter;
    const bool at_left = where.panel.x < where.sheet.x;
    return {at_left ? where.panel.x : where.panel.right() - wide, look::gutter, wide, foot - look::gutter};
}

void draw_shelf(AppParts& parts, const Regions& where) {
    widgets::Ui& ui = parts.ui;
    const widgets::Rect place = sheet_place(where, where.panel.w + 32.0f);
    bool leave = begin_sheet(ui, "shelf", where.screen, place, where.stacked, parts.shelf_out);
    ui.covered = parts.picker.is_open();
    const ImVec2 at = ImGui::GetCursorScreenPos();
    constexpr float head_h = 60.0f;
    text_in(ui, {at.x + 20.0f, at.y, place.w - 84.0f, head_h}, ui.type.title, ui.inks().ink, words::shelf);
    if (icon_button_at(ui, "shelf.close", {at.x + place.w - 56.0f, at.y + 6.0f, look::target, look::target},
                       widgets::Icon::close)) {
        leave = true;
    }
    widgets::begin_scroll_area(ui, "shelf.list", {at.x, at.y + head_h, place.w, place.h - head_h}, 20.0f);
    if (std::exchange(parts.shelf_to_top, false)) widgets::scroll_to_top();
    ImGui::SetCursorPosY(ImGui::GetCursorPosY() - 28.0f);
    if (draw_offer(parts) || draw_kept(parts) || draw_lures(parts) || draw_hand_on(parts) ||
        draw_everything(parts))
        leave = true;
    draw_bench(parts);
    widgets::gap();
    if (parts.install_offered &&
        list_row(ui, "shelf.install",
                 {.title = words::shelf_install, .below = words::shelf_install_below, .has_chevron = true})) {
        parts.host.install();
        leave = true;
    }
    if (list_row(ui, "shelf.help",
                 {.title = words::shelf_help, .below = words::shelf_help_below, .has_chevron = true})) {
        parts.host.show_help();
        leave = true;
    }
    if (list_row(ui, "shelf.first", {.title = words::shelf_first, .has_chevron = true})) {
        parts.host.first_steps();
        leave = true;
    }
    if (list_row(ui, "shelf.about",
                 {.title = words::shelf_about,
                  .below = words::shelf_version + std::string(version()),
                  .has_chevron = true})) {
        parts.host.about();
        leave = true;
    }
    widgets::end_scroll_area(ui);
    end_sheet(ui);
    if (leave) {
        parts.shelf_open = false;
        parts.empty_asked = false;
        parts.offered.reset();
    }
}

void keep_unit(state::Settings& settings, Quantity quantity, Unit unit) {
    switch (quantity) {
    case Quantity::length:
        settings.units.length = unit;
        break;
    case Quantity::mass:
        settings.units.mass = unit;
        break;
    case Quantity::fall:
        settings.units.fall = unit;
        break;
    case Quantity::temperature:
        settings.units.temperature = unit;
        break;
    case Quantity::retrieve:
        settings.retrieve.by = unit == Unit::km_per_h || unit == Unit::mile_per_h ? state::RetrieveBy::hour
                                                                                  : state::RetrieveBy::second;
        break;
    default:
        break;
    }
}

} // namespace evenfall::shell
