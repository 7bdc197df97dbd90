#include "steps/drill_steps.hpp"

#include "body.hpp"
#include "look/words_drill.hpp"
#include "look/words_steps.hpp"
#include "widgets/choice.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using document::HoleUse;

std::string lead_text(const PanelContext& context, const HoleStep& step) {
    switch (step.work) {
    case HoleWork::leave_whole:
        return words::work_leave;
    case HoleWork::leave_empty:
        return words::work_empty;
    case HoleWork::take_out:
        return number_of(context, -step.fill_kg, Quantity::mass);
    case HoleWork::add:
        return units::with_plus(step.fill_kg, number_of(context, step.fill_kg, Quantity::mass));
    case HoleWork::fill:
        break;
    }
    return number_of(context, step.fill_kg, Quantity::mass);
}

constexpr std::array<HoleUse, 3> stages_of_work{HoleUse::ballast, HoleUse::drilled, HoleUse::leaded};
constexpr std::array<std::string_view, 3> done_words{words::done_to_drill, words::done_drilled,
                                                     words::done_leaded};
constexpr std::array<std::string_view, 3> done_labels{words::to_drill_label, words::drilled_label,
                                                      words::leaded_label};

/// How far one hole is; returns another stage where it was tapped.
std::optional<int> tick(PanelContext& context, const std::string& id, const std::string& label, HoleUse use) {
    const auto on = static_cast<int>(std::find(stages_of_work.begin(), stages_of_work.end(), use) -
                                     stages_of_work.begin());
    return widgets::choice(context.ui, id, label, done_words, on);
}

} // namespace

std::string hole_label(const PanelContext& context, const document::Document& document, int hole) {
    const document::Hole& h = document.holes[static_cast<std::size_t>(hole)];
    const std::string name =
        h.name.empty() ? segment_name(document, shape::nearest_segment(context.evaluation().body, h.x_m))
                       : h.name;
    return evenfall::hole_label(static_cast<std::size_t>(hole), name);
}

void work_table(PanelContext& context, const document::Document& document, std::span<const HoleStep> steps) {
    constexpr std::array<widgets::TableColumn, 4> columns{{{0.0f, 0.40f, widgets::Align::left},
                                                           {0.40f, 0.58f, widgets::Align::right},
                                                           {0.58f, 0.77f, widgets::Align::right},
                                                           {0.77f, 1.0f, widgets::Align::right}}};
    const std::string bit = titled(context, words::col_bit, Quantity::length);
    const std::string depth = titled(context, words::col_depth, Quantity::length);
    const std::string lead = titled(context, words::col_lead, Quantity::mass);
    const std::array<std::string_view, 4> titles{words::col_hole, bit, depth, lead};
    widgets::table_head(context.ui, columns, titles, help::Topic::lead_work);
    for (const HoleStep& step : steps) {
        const std::string title = hole_label(context, document, step.hole);
        const std::string bit_text =
            step.drills ? number_of(context, step.diameter_m, Quantity::length) : words::dash;
        const std::string depth_text =
            step.drills ? number_of(context, step.depth_m, Quantity::length) : words::dash;
        const std::string lead_words = lead_text(context, step);
        const std::array<widgets::Cell, 4> cells{
            {{title, {}, false}, {bit_text, {}, false}, {depth_text, {}, false}, {lead_words, {}, true}}};
        widgets::table_row(context.ui, {}, columns, cells);
    }
}

void done_rows(PanelContext& context) {
    const auto& holes = context.document().holes;
    const auto is_work = [](const document::Hole& h) { return h.use != HoleUse::fixed && h.depth_m > 0.0; };
    if (std::none_of(holes.begin(), holes.end(), is_work)) return;
    widgets::gap();
    drill_button(context, "lead.drill");
    widgets::subheading(context.ui, words::done_group);
    for (int i = 0; i < static_cast<int>(holes.size()); ++i) {
        const document::Hole& hole = holes[static_cast<std::size_t>(i)];
        if (!is_work(hole)) continue;
        const auto tapped = tick(context, "lead.done." + std::to_string(i),
                                 hole_label(context, context.document(), i), hole.use);
        if (!tapped) continue;
        const auto to = static_cast<std::size_t>(*tapped);
        context.change(label_of(done_labels[to], words::hole_kind, i),
                       state::mark_hole(i, stages_of_work[to]));
    }
}

void advice_ticks(PanelContext& context, const DoNow& now) {
    widgets::subheading(context.ui, words::done_group);
    for (const HoleStep& step : now.holes) {
        if (step.work == HoleWork::leave_whole) continue;
        const std::string id = "log.done." + std::to_string(step.hole);
        const std::string label = hole_label(context, now.document, step.hole);
        if (now.lead_is_in) {
            if (widgets::toggle(context.ui, id, label, false, words::done_change))
                context.change(label_of(words::done_change, words::hole_kind, step.hole),
                               state::done_now(now, step.hole));
            continue;
        }
        const auto tapped =
            tick(context, id, label, now.document.holes[static_cast<std::size_t>(step.hole)].use);
        if (!tapped) continue;
        const auto to = static_cast<std::size_t>(*tapped);
        const HoleUse use = stages_of_work[to];
        context.change(label_of(done_labels[to], words::hole_kind, step.hole),
                       [done = state::done_now(now, step.hole), mark = state::mark_hole(step.hole, use)](
                           document::Document d) { return mark(done(std::move(d))); });
    }
}

} // namespace evenfall::shell::steps
