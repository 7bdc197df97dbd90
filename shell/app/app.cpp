#include "app/app.hpp"

#include "app/parts.hpp"
#include "drawing/sheet.hpp"
#include "drawing/water_sheet.hpp"
#include "evenfall.hpp"
#include "look/words.hpp"
#include "state/edits.hpp"
#include "steps/panel.hpp"
#include "widgets/button.hpp"
#include "widgets/scroll_area.hpp"

#include <algorithm>
#include <array>
#include <span>
#include <utility>

namespace evenfall::shell {
namespace {

namespace words = look::words;
using widgets::Icon;
using widgets::Rect;

constexpr std::array<std::string_view, state::step_count> step_ids{
    "step.shape",  "step.joints", "step.hardware", "step.lead",
    "step.finish", "step.water",  "step.log",      "step.sheet"};
static_assert(!step_ids.back().empty());

/// "Basswood · 3 segments": the wood without what tells it from its relatives.
std::string line_below_name(const document::Document& document) {
    const materials::Wood* wood = materials::find_wood(document.wood.species);
    const std::size_t segments = document.joints.size() + 1;
    const std::string_view name = wood != nullptr ? wood->name : std::string_view(document.wood.species);
    return std::string(name.substr(0, name.find(','))) + " · " + std::to_string(segments) + " " +
           (segments == 1 ? words::segment : words::segments);
}

void undo_or_redo(AppParts& parts, bool back) {
    const state::History& history = parts.session.history();
    const std::string label = back ? history.undo_label() : history.redo_label();
    if (label.empty()) return;
    if (back) {
        parts.session.undo();
    } else {
        parts.session.redo();
    }
    parts.say((back ? words::undone : words::redone) + label);
}

void name_block(AppParts& parts, const Rect& rect) {
    widgets::Ui& ui = parts.ui;
    const document::Document& document = parts.session.document();
    const widgets::Touch touch = widgets::touch_area(ui, "lure.name", rect);
    const look::Palette& ink = ui.inks();
    if (touch.pressed) {
        ImGui::GetWindowDrawList()->AddRectFilled({rect.x - 8.0f, rect.y}, {rect.right(), rect.bottom()},
                                                  ink.pressed, look::control_rounding);
    }
    const float top = rect.y + (rect.h - 48.0f) / 2.0f;
    text_in(ui, {rect.x, top, rect.w - 8.0f, 28.0f}, ui.type.title, ink.ink, document.name);
    text_in(ui, {rect.x, top + 28.0f, rect.w - 8.0f, 20.0f}, ui.type.small, ink.ink_soft,
            line_below_name(document));
    if (touch.focused) focus_ring(ui, rect, look::control_rounding);
    if (touch.tapped) parts.host.ask_text("lure.name", words::name_of_lure, document.name);
    if (const auto answer = ui.answered.find("lure.name"); answer != ui.answered.end()) {
        const std::string name = std::exchange(answer->second, {});
        ui.answered.erase(answer);
        if (!name.empty() && name != document.name) {
            parts.session.apply(
                {words::rename, state::on_document([name](document::Document& d) { d.name = name; })});
        }
    }
}

void draw_strip(AppParts& parts, const Regions& where) {
    widgets::Ui& ui = parts.ui;
    const look::Palette& ink = ui.inks();
    const Rect strip = where.strip;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled({0.0f, 0.0f}, {where.screen.w, strip.bottom()}, ink.card);
    list.AddRectFilled({0.0f, strip.bottom() - 1.0f}, {where.screen.w, strip.bottom()}, ink.rule);

    const float edge = where.phone ? 16.0f : 20.0f;
    const float head_h = where.tiny ? 52.0f : where.two_lines ? 56.0f : strip.h;
    constexpr float key = look::target;
    const float keys_x = strip.right() - edge + 8.0f - 3.0f * key;
    const float key_y = strip.y + (head_h - key) / 2.0f;
    const float name_w = where.two_lines ? keys_x - strip.x - edge - 8.0f
                                         : std::clamp(strip.w * 0.21f, where.low ? 130.0f : 170.0f, 260.0f);
    // Low and narrow, the figures need the room of the name.
    const bool named = where.low ? strip.w >= 824.0f : name_w >= 40.0f;
    if (named) name_block(parts, {strip.x + edge, strip.y + (head_h - 56.0f) / 2.0f, name_w, 56.0f});

    const auto all = strip_answers(parts.session, parts.motion.bench, ui.units);
    std::span<const widgets::Answer> answers = all;
    const float left = strip.x + edge + (named && !where.two_lines ? name_w + 16.0f : 0.0f);
    const Rect room = where.two_lines
                          ? Rect{left, strip.y + head_h, strip.w - 2.0f * edge, strip.h - head_h - 4.0f}
                          : Rect{left, strip.y, keys_x - left - 8.0f, strip.h};
    int columns = where.phone ? 3 : static_cast<int>(answers.size());
    if (where.low || where.tiny) {
        // As many as can be read, from what is asked for on: weight in water, fall, hang.
        columns = std::clamp(static_cast<int>(room.w / 75.0f), 1, columns);
        if (columns < static_cast<int>(answers.size()))
            answers = answers.subspan(1, static_cast<std::size_t>(columns));
    }
    if (const std::string asked = answer_strip(ui, room, answers, columns); !asked.empty()) {
        const auto tapped = std::find_if(answers.begin(), answers.end(),
                                         [&](const auto& answer) { return answer.id == asked; });
        ui.asked = asked_of(parts.session, parts.motion.bench, ui.units, *tapped);
    }

    const state::History& history = parts.session.history();
    if (icon_button_at(ui, "undo", {keys_x, key_y, key, key}, Icon::undo, history.can_undo()))
        undo_or_redo(parts, true);
    if (icon_button_at(ui, "redo", {keys_x + key, key_y, key, key}, Icon::redo, history.can_redo()))
        undo_or_redo(parts, false);
    if (icon_button_at(ui, "shelf.open", {keys_x + 2.0f * key, key_y, key, key}, Icon::shelf)) {
        parts.shelf_open = true;
        parts.shelf_out = 0.0f;
        parts.host.shelf_opens();
    }
}

void draw_bar(AppParts& parts, const Regions& where) {
    widgets::Ui& ui = parts.ui;
    const look::Palette& ink = ui.inks();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled({0.0f, where.bar.y}, {where.screen.w, where.screen.h}, ink.card);
    list.AddRectFilled({0.0f, where.bar.y}, {where.screen.w, where.bar.y + 1.0f}, ink.rule);
    const bool brief = where.phone || where.low;
    const char* hardware = brief ? words::step_hardware_short : words::step_hardware;
    const std::array<widgets::StepTab, state::step_count> tabs{
        {{step_ids[0], words::step_shape},
         {step_ids[1], words::step_joints},
         {step_ids[2], hardware},
         {step_ids[3], words::step_lead},
         {step_ids[4], words::step_finish},
         {step_ids[5], words::step_water},
         {step_ids[6], brief ? words::step_log_short : words::step_log},
         {step_ids[7], words::step_sheet}}};
    const float edge = where.bar.w < 640.0f ? 4.0f : look::gutter;
    const Rect inner{where.bar.x + edge, where.bar.y, where.bar.w - 2.0f * edge, where.bar.h};
    if (const auto step = step_bar(ui, inner, tabs, static_cast<int>(parts.session.view.step))) {
        parts.session.view.step = static_cast<state::Step>(*step);
        parts.session.view.drilling = false;
    }
}

/// Drawing and panel with what lies between them.
Rect middle_of(const Regions& where) {
    const float right = std::max(where.sheet.right(), where.panel.right());
    const float bottom = std::max(where.sheet.bottom(), where.panel.bottom());
    return {where.sheet.x, where.sheet.y, right - where.sheet.x, bottom - where.sheet.y};
}

bool is_drilling(const AppParts& parts) {
    return parts.session.view.drilling && parts.session.evaluation();
}

void draw_drawing(AppParts& parts, const Regions& where) {
    widgets::Ui& ui = parts.ui;
    card(ui, where.sheet, ui.inks().paper);
    const float inside = where.phone ? 6.0f : 12.0f;
    const Rect drawn = where.sheet.inset(inside);
    ImGui::PushClipRect({drawn.x, drawn.y}, {drawn.right(), drawn.bottom()}, true);
    if (drawn.w < 100.0f) {
        // Nothing could be made out in so little.
    } else if (parts.session.view.step == state::Step::water) {
        drawing::water_sheet(ui, parts.session, parts.motion, drawn);
    } else {
        parts.motion.clock.pause();
        parts.motion.swim.clock.pause();
        // The page lays the build sheet over the drawing, which then is not to be reached by the keyboard
        // either.
        const bool was_covered = ui.covered;
        ui.covered = was_covered || parts.session.view.step == state::Step::sheet;
        drawing::sheet(ui, parts.session, drawn, &parts.motion.backdrop,
                       parts.motion.bench.uncertainty(parts.session));
        ui.covered = was_covered;
    }
    ImGui::PopClipRect();
}

/// Returns why a change that the panel asked for was refused; empty where none was.
std::string draw_panel(AppParts& parts, const Regions& where) {
    widgets::Ui& ui = parts.ui;
    card(ui, where.panel, ui.inks().card);
    widgets::begin_scroll_area(ui, "panel", where.panel.inset(1.0f), look::gutter + 3.0f);
    if (parts.drawn_step != parts.session.view.step) {
        parts.drawn_step = parts.session.view.step;
        // The sheet can take in what lies on the shelf.
        if (parts.session.view.step == state::Step::sheet) parts.host.shelf_opens();
        widgets::scroll_to_top();
    }
    const unsigned refusals = parts.session.refusals();
    steps::panel(ui, parts.session, parts.motion, parts.drawer);
    widgets::end_scroll_area(ui);
    if (const auto beside = std::exchange(parts.motion.beside, std::nullopt)) compare_beside(parts, *beside);
    if (auto own = std::exchange(parts.motion.own, std::nullopt)) {
        const std::string said = words::opened + own->document.name;
        if (open_of_its_own(parts, std::move(*own))) parts.say(said);
    }
    if (const auto choice = parts.keypad.take_unit_choice())
        keep_unit(parts.session.settings, choice->first, choice->second);
    // A refusal from before is none of its business.
    return parts.session.refusals() == refusals ? std::string()
                                                : sentences(parts.session.problems(), parts.ui.units);
}

/// Undo and redo by keyboard; the keypad's own keys are its own.
void read_shortcuts(AppParts& parts) {
    if (parts.keypad.is_open() || parts.picker.is_open()) return;
    const ImGuiIO& io = ImGui::GetIO();
    if (!io.KeyCtrl && !io.KeySuper) return;
    if (ImGui::IsKeyPressed(ImGuiKey_Z, false)) undo_or_redo(parts, !io.KeyShift);
    if (ImGui::IsKeyPressed(ImGuiKey_Y, false)) undo_or_redo(parts, false);
}

/// The headline for assistive technology: "In water +1.42 g, Fall 1.9 s/ft …".
std::string headline(const std::vector<widgets::Answer>& answers) {
    std::string text;
    for (const widgets::Answer& answer : answers) {
        if (!text.empty()) text += ", ";
        text += answer.title + " " + answer.number;
        if (!answer.unit.empty()) text += " " + answer.unit;
    }
    return text;
}

/// Where the page shows the sheet: what lies over the drawing lies over the sheet as well.
void tell_of_sheet(AppParts& parts, const Regions& where, bool changed) {
    const bool batch = std::exchange(parts.shelf_moved, false) && !parts.session.view.sheet.with.empty();
    changed = changed || batch;
    if (changed) ++parts.sheet_revision;
    const bool beside = where.keypad.x >= where.sheet.right() || where.keypad.right() <= where.sheet.x;
    const bool covered =
        parts.sheet_open() || (!beside && (parts.keypad.is_open() || parts.picker.is_open()));
    if (parts.session.view.step != state::Step::sheet || covered) {
        if (parts.told_sheet) parts.host.hide_sheet();
        parts.told_sheet.reset();
        return;
    }
    const Rect at = where.sheet.inset(1.0f);
    const auto same = [](const Rect& a, const Rect& b) {
        return a.x == b.x && a.y == b.y && a.w == b.w && a.h == b.h;
    };
    if (parts.told_sheet && same(*parts.told_sheet, at) && !changed) return;
    parts.told_sheet = at;
    parts.host.show_sheet(at.x, at.y, at.w, at.h, parts.sheet_revision);
}

void tell_outside(AppParts& parts, const Regions& where) {
    state::Session& session = parts.session;
    if (parts.told_language != parts.translator.code()) {
        parts.told_language = parts.translator.code();
        parts.host.speaks(parts.told_language);
    }
    if (parts.told_drilling != is_drilling(parts)) {
        parts.told_drilling = is_drilling(parts);
        parts.host.keep_awake(parts.told_drilling);
    }
    tell_of_sheet(parts, where,
                  parts.told_revision != session.revision() ||
                      !(parts.told_view.sheet == session.view.sheet) ||
                      !(parts.told_settings.units == session.settings.units) ||
                      parts.told_settings.language != session.settings.language);
    if (session.problems().empty() && !parts.told_problems.empty()) parts.told_problems.clear();
    const std::string refusal = sentences(session.problems(), parts.ui.units);
    const bool again = std::exchange(parts.told_refusals, session.refusals()) != session.refusals();
    if (!refusal.empty() && (again || refusal != sentences(parts.told_problems, parts.ui.units))) {
        parts.told_problems = session.problems();
        parts.last_problem = refusal;
        // The keypad shows what it caused in its own place.
        // What a finger drags has its reason drawn beside it.
        if (!parts.keypad.is_open() && !session.view.touch.refused)
            parts.toast.show(refusal, true, parts.now_s);
        parts.host.announce(refusal);
    }
    const state::Backdrop& backdrop = parts.motion.backdrop;
    if (parts.told_picture != backdrop.revision() && !backdrop.held) {
        parts.told_picture = backdrop.revision();
        parts.host.keep_picture(backdrop.there() ? backdrop.marks_text() : std::string());
    }
    if (parts.told_drawer != parts.drawer.revision()) {
        parts.told_drawer = parts.drawer.revision();
        parts.host.keep_drawer(state::write_drawer(parts.drawer));
    }
    const bool document_moved = parts.told_revision != session.revision();
    if (document_moved)
        parts.host.announce(headline(strip_answers(session, parts.motion.bench, parts.ui.units)));
    if (document_moved || !(parts.told_settings == session.settings) || !(parts.told_view == session.view)) {
        parts.told_revision = session.revision();
        parts.told_settings = session.settings;
        parts.told_view = session.view;
        parts.host.changed();
    }
}

} // namespace

App::App(platform::Host& host) : parts_(std::make_unique<AppParts>(host)) {
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.LogFilename = nullptr;
    io.ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard;
    io.ConfigInputTextCursorBlink = false;
    io.ConfigWindowsMoveFromTitleBarOnly = true;
    io.MouseDragThreshold = 9.0f;
    ImGuiStyle& style = ImGui::GetStyle();
    style.WindowPadding = {0.0f, 0.0f};
    style.WindowBorderSize = 0.0f;
    style.WindowRounding = 0.0f;
    style.ChildBorderSize = 0.0f;
    style.ItemSpacing = {0.0f, 0.0f};
    style.FramePadding = {0.0f, 0.0f};
    style.DisabledAlpha = 1.0f;
    style.WindowMinSize = {1.0f, 1.0f};
    style.CircleTessellationMaxError = 0.2f;
    // Keyboard focus is drawn by the widgets themselves.
    style.Colors[ImGuiCol_NavHighlight] = {0.0f, 0.0f, 0.0f, 0.0f};
    style.Colors[ImGuiCol_NavWindowingHighlight] = {0.0f, 0.0f, 0.0f, 0.0f};
}

App::~App() = default;

void App::rebuild_fonts(double dpr) {
    parts_->ui.type = look::build_fonts(*ImGui::GetIO().Fonts, dpr);
    ImGui::GetIO().FontDefault = parts_->ui.type.label;
}

void App::set_decimal_sign(char sign) {
    parts_->translator.set_device_sign(sign);
}
void App::set_dark(bool dark) {
    parts_->session.settings.theme = dark ? state::Theme::dark : state::Theme::light;
}

void App::set_locale(const std::string& locale) {
    parts_->locale = locale;
    if (units::inches_rule(locale)) parts_->session.settings.units = units::inches;
}

look::Ink App::ground() const {
    return look::palette(parts_->session.settings.theme == state::Theme::dark ? look::Scheme::dark
                                                                              : look::Scheme::light)
        .bench;
}

std::string App::said(const std::string& english) const {
    return std::string(parts_->translator.said(english));
}

std::string App::untranslated_json() const {
    return document::compact_text(parts_->translator.unknown());
}

void App::set_calm(bool calm) {
    parts_->ui.calm = calm;
}
void App::offer_install(bool offered) {
    parts_->install_offered = offered;
}
void App::say(const std::string& sentence) {
    parts_->say(sentence);
}
bool App::large_text() const {
    return parts_->session.settings.large_text;
}

void App::pinch(const platform::Pinch& pinch) {
    parts_->ui.pinch = pinch;
}

void App::frame(double now_s) {
    AppParts& parts = *parts_;
    widgets::Ui& ui = parts.ui;
    const ImGuiIO& io = ImGui::GetIO();
    const Regions where = regions(io.DisplaySize.x, io.DisplaySize.y, {}, parts.session.settings.left_handed);
    parts.now_s = now_s;
    ui.now_s = now_s;
    ui.ink = &look::palette(parts.session.settings.theme == state::Theme::dark ? look::Scheme::dark
                                                                               : look::Scheme::light);
    ui.units = {parts.session.settings.units, parts.session.settings.retrieve.by == state::RetrieveBy::hour};
    ui.phone = where.phone || where.low;
    ui.items.begin_frame();
    const std::string& language = parts.session.settings.language;
    parts.translator.choose(language.empty() ? parts.locale : language);
    parts.translator.begin_frame();
    ui.offered.clear();
    ui.frames_wanted = std::max(0, ui.frames_wanted - 1);
    if (!io.MouseDown[0]) ui.glide.owned = false;
    if (!io.MouseDown[0] && !io.MouseReleased[0]) ui.glide.caught = false;
    ui.covered = parts.keypad.is_open() || parts.picker.is_open() || parts.sheet_open();

    ImGui::SetNextWindowPos({0.0f, 0.0f});
    ImGui::SetNextWindowSize(io.DisplaySize);
    ImGui::Begin("bench", nullptr,
                 ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                     ImGuiWindowFlags_NoBackground | ImGuiWindowFlags_NoBringToFrontOnFocus |
                     ImGuiWindowFlags_NoScrollWithMouse);
    read_shortcuts(parts);
    ImGui::GetWindowDrawList()->AddRectFilled({0.0f, 0.0f}, io.DisplaySize, ui.inks().bench);
    draw_strip(parts, where);
    std::string refusal;
    if (is_drilling(parts)) {
        parts.motion.clock.pause();
        parts.motion.swim.clock.pause();
        steps::drill_panel(ui, parts.session, parts.motion, parts.drawer, middle_of(where));
    } else {
        draw_drawing(parts, where);
        refusal = draw_panel(parts, where);
    }
    draw_bar(parts, where);
    ImGui::End();

    remind(parts);
    // The sheet lies over the canvas: what is said has to be beside it.
    const bool beside =
        where.stacked || parts.session.view.step == state::Step::sheet || where.sheet.w < 200.0f;
    parts.toast.draw(ui, beside ? where.panel : where.sheet, now_s);
    ui.covered = true;
    if (parts.shelf_open) draw_shelf(parts, where);
    if (parts.card.open) draw_new_card(parts, where);
    if (parts.variants.open) draw_variants(parts, where);
    // All fields are drawn: what one of them collected from the keypad has been tried by now.
    parts.keypad.settle(refusal);
    parts.picker.draw(ui, where.screen, where.keypad, where.stacked);
    parts.keypad.draw(ui, where.screen, where.keypad, where.stacked);
    ui.pinch.reset();
    ui.items.finish_frame();
    if (const auto asked = std::exchange(ui.asked, std::nullopt))
        parts.host.explain(help::told(*asked, ui.units));
    tell_outside(parts, where);
}

bool App::wants_frames() const {
    return parts_->ui.frames_wanted > 0;
}

std::optional<double> App::next_frame_in_s(double now_s) const {
    return parts_->toast.goes_in(now_s);
}

void App::show_ways() {
    go_to_step("lead");
    parts_->session.view.sections["section.lead.ways"] = true;
}

bool App::go_to_step(std::string_view id) {
    for (std::size_t i = 0; i < step_ids.size(); ++i) {
        if (step_ids[i].substr(5) != id) continue;
        parts_->session.view.step = static_cast<state::Step>(i);
        parts_->session.view.drilling = false;
        return true;
    }
    return false;
}

} // namespace evenfall::shell
