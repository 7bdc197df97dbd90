#include "steps/step_panels.hpp"

#include "look/words_picture.hpp"
#include "look/words_steps.hpp"
#include "state/backdrop.hpp"
#include "state/drag.hpp"
#include "widgets/button.hpp"
#include "widgets/choice.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <algorithm>
#include <array>
#include <span>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;

void search_rows(PanelContext& context) {
    auto& backdrop = context.motion.backdrop;
    auto& found = context.motion.outline;
    if (!context.session.unfinished()) found.offered = false;
    if (backdrop.searching()) {
        // Part of the work per frame, so that the page stays responsive.
        context.ui.frames_wanted = std::max(context.ui.frames_wanted, 2);
        widgets::figure_row(context.ui, words::picture_finding,
                            widgets::number_text(backdrop.done_share(), widgets::Unit::percent, 0), "%");
        if (widgets::button(context.ui, "picture.stop", words::picture_stop)) {
            backdrop.stop_search();
            return;
        }
        const auto result = backdrop.search_on();
        if (!result) return;
        if (!result->ok()) {
            found.refusal = result->problems().front().sentence;
            return;
        }
        const picture::Profile profile = result->value();
        found.off_m = std::max(profile.off_top_m, profile.off_bottom_m);
        found.offered = true;
        context.changes.push_back(
            {words::picture_outline_label,
             [profile](const document::Document& d) { return picture::with_profile(d, profile); }, false});
        return;
    }
    if (found.offered) {
        widgets::info_box(context.ui, {},
                          std::string(words::picture_found) + " " + words::picture_off +
                              text_of(context, found.off_m, Quantity::length) + ".");
        const int tapped =
            widgets::button_row(context.ui, {{"picture.keep", words::picture_keep, widgets::ButtonKind::main},
                                             {"picture.back", words::picture_back}});
        if (tapped == 0) context.act = PanelContext::Act::finish;
        if (tapped == 1) context.act = PanelContext::Act::drop;
        return;
    }
    if (widgets::button(context.ui, "picture.find", words::picture_find)) {
        found = {};
        backdrop.start_search();
        context.ui.frames_wanted = std::max(context.ui.frames_wanted, 2);
    }
    widgets::problem_line(context.ui, found.refusal);
}

/// Rows that move the marks in steps, by keys or taps.
void mark_rows(PanelContext& context) {
    auto& backdrop = context.motion.backdrop;
    const std::span<const std::string_view> names(words::picture_mark_names.data(),
                                                  backdrop.by_rule() ? state::mark_count : 2);
    const int chosen = std::min(static_cast<int>(backdrop.chosen), static_cast<int>(names.size()) - 1);
    if (const auto tapped = widgets::choice(context.ui, "picture.mark", words::picture_mark, names, chosen))
        backdrop.chosen = static_cast<state::Mark>(*tapped);
    const int way = widgets::button_row(context.ui, {{"picture.fore", words::nudge_fore},
                                                     {"picture.aft", words::nudge_aft},
                                                     {"picture.down", words::nudge_down},
                                                     {"picture.up", words::nudge_up}});
    constexpr std::array<state::DragPoint, 4> ways{{{-1.0, 0.0}, {1.0, 0.0}, {0.0, -1.0}, {0.0, 1.0}}};
    if (way < 0) return;
    const auto& to = ways[static_cast<std::size_t>(way)];
    backdrop.nudge_mark(static_cast<state::Mark>(chosen), to.u, to.v);
}

} // namespace

void picture_rows(PanelContext& context) {
    auto& backdrop = context.motion.backdrop;
    constexpr const char* id = "section.shape.picture";
    // What was begun here is not left out of sight.
    if (backdrop.searching() || context.motion.outline.offered) context.view.sections[id] = true;
    if (!section(context, {id, words::picture_head})) return;
    if (!backdrop.there()) {
        widgets::note(context.ui, words::picture_below);
        if (widgets::button(context.ui, "picture.choose", words::picture_choose))
            context.ui.host->choose_picture();
        return;
    }
    widgets::note(context.ui, words::picture_marks);
    const std::array<std::string_view, 2> ways{words::picture_by_ends, words::picture_by_rule};
    if (const auto tapped = widgets::choice(context.ui, "picture.scale_by", words::picture_scale_by, ways,
                                            backdrop.by_rule() ? 1 : 0))
        backdrop.set_by_rule(*tapped == 1);
    if (const auto set =
            widgets::number_field(context.ui, "picture.apart", words::picture_apart, backdrop.rule_length_m(),
                                  {Quantity::length, 0.001, 2.0, {}, -1}, words::picture_apart_below)) {
        backdrop.set_apart_m(*set);
    }
    mark_rows(context);
    if (const auto set = widgets::number_field(context.ui, "picture.strength", words::picture_strength,
                                               static_cast<double>(backdrop.strength()),
                                               {Quantity::percent, 0.05, 1.0, 0.1, 0})) {
        backdrop.set_strength(*set);
    }
    search_rows(context);
    const int tapped =
        widgets::button_row(context.ui, {{"picture.choose", words::picture_other, widgets::ButtonKind::quiet},
                                         {"picture.away", words::picture_away, widgets::ButtonKind::quiet}});
    if (tapped == 0) context.ui.host->choose_picture();
    if (tapped == 1) {
        backdrop.take_away();
        context.motion.outline = {};
        if (context.session.unfinished()) context.act = PanelContext::Act::drop;
    }
}

} // namespace evenfall::shell::steps
