// One hole a screen: large enough to be read from a step away.

#include "body.hpp"
#include "drawing/drill_view.hpp"
#include "look/words_drill.hpp"
#include "look/words_steps.hpp"
#include "output.hpp"
#include "steps/drill_steps.hpp"
#include "steps/step_panels.hpp"
#include "widgets/bars.hpp"
#include "widgets/button.hpp"
#include "widgets/words_of_panel.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using document::HoleUse;
using widgets::Rect;

/// What the screens go through, and the document whose holes they show.
struct Work {
    const document::Document* document = nullptr;
    std::vector<HoleStep> steps;
    const DoNow* advice = nullptr; ///< of the bench log; none: the plan's own holes
};

Work work_of(PanelContext& context) {
    Work work{&context.document(), {}, nullptr};
    if (context.view.step == state::Step::log) {
        work.advice = context.motion.bench.now(context.session);
        if (work.advice == nullptr) return work;
        work.document = &work.advice->document;
        if (work.advice->nothing_to_do) return work;
        for (const HoleStep& step : work.advice->holes) {
            if (step.work != HoleWork::leave_whole) work.steps.push_back(step);
        }
        return work;
    }
    for (std::size_t i = 0; i < work.document->holes.size(); ++i) {
        const document::Hole& hole = work.document->holes[i];
        if (hole.use != HoleUse::fixed && hole.depth_m > 0.0)
            work.steps.push_back(hole_step(*work.document, i, context.evaluation().body));
    }
    return work;
}

struct ScaleAfter {
    const char* words = "";
    double kg = 0.0;
};

/// What the scale should read once this step is done; absent where what is done does not say it.
std::optional<ScaleAfter> scale_after(PanelContext& context, const Work& work, const HoleStep& step) {
    if (work.advice != nullptr) {
        const Uncertainty* s = context.motion.bench.uncertainty(context.session);
        const bool changes = step.work == HoleWork::take_out || step.work == HoleWork::add;
        if (s == nullptr || !work.advice->lead_is_in || !changes) return std::nullopt;
        const double now_kg = s->stages[static_cast<std::size_t>(work.advice->stage)].mass_kg.value;
        const double by_kg = step.work == HoleWork::add ? step.fill_kg : -step.fill_kg;
        return ScaleAfter{words::scale_after_change, now_kg + by_kg};
    }
    // The piece with its pockets cut, what is done so far and this: wood out of the holes that are drilled,
    // or lead and caps in those that have them.
    const auto& holes = work.document->holes;
    const HoleUse use = holes[static_cast<std::size_t>(step.hole)].use;
    if (use == HoleUse::leaded) return std::nullopt;
    const bool leads = use == HoleUse::drilled;
    const auto counts = [&](const ledger::Line& line) {
        if (line.item == step.hole) return true;
        const HoleUse other = holes[static_cast<std::size_t>(line.item)].use;
        return other == HoleUse::fixed || other == HoleUse::leaded || (!leads && other == HoleUse::drilled);
    };
    const Stage before = leads ? Stage::hardware : Stage::carved;
    const ledger::Sum sum = ledger::sum_if(context.evaluation().ledger, [&](const ledger::Line& line) {
        if (line.stage <= before || line.kind == ledger::Kind::pocket_wood) return true;
        const bool lead = line.kind == ledger::Kind::fill || line.kind == ledger::Kind::cap;
        const bool of_hole = leads ? lead : line.kind == ledger::Kind::hole_wood;
        return of_hole && counts(line);
    });
    const char* drilled =
        work.document->pockets.empty() ? words::scale_after_drilling : words::scale_after_pockets;
    return ScaleAfter{leads ? words::scale_after_lead : drilled, sum.mass.kg};
}

/// The words under the figures.
std::string how_text(const PanelContext& context, const Work& work, const HoleStep& step) {
    const document::Hole& hole = work.document->holes[static_cast<std::size_t>(step.hole)];
    std::string text;
    const auto add = [&](const std::string& sentence) {
        if (!text.empty()) text += ' ';
        text += sentence;
    };
    if (hole.cap && (step.work == HoleWork::add || step.work == HoleWork::take_out)) add(words::cap_first);
    if (step.work == HoleWork::take_out) add(words::dry_after);
    if (hole.cap)
        add(std::string(words::cap_after) + " " + text_of(context, hole.cap->length_m, Quantity::length) +
            ".");
    return text;
}

/// A figure in large type under its label.
void large_figure(PanelContext& context, const Rect& rect, std::string_view label, const std::string& number,
                  std::string_view unit, const std::string& below) {
    widgets::Ui& ui = context.ui;
    const look::Palette& ink = ui.inks();
    ImFont* const font = rect.w < 110.0f ? ui.type.large : ui.type.display;
    text_in(ui, {rect.x, rect.y, rect.w, 18.0f}, ui.type.label, ink.ink_soft, label);
    figure_in(ui, {rect.x, rect.y + 18.0f, rect.w, 46.0f}, font, ink.ink, number, unit, widgets::Align::left);
    text_in(ui, {rect.x, rect.y + 64.0f, rect.w, 18.0f}, ui.type.label, ink.ink_soft, below);
}

void figures(PanelContext& context, const Work& work, const HoleStep& step, const Rect& rect) {
    const document::Hole& hole = work.document->holes[static_cast<std::size_t>(step.hole)];
    const bool inch = context.ui.units.of(Quantity::length) != widgets::Unit::mm;
    const auto length = [&](double m) { return number_of(context, m, Quantity::length); };
    const std::string_view unit = unit_of(context, Quantity::length);
    const float w = rect.w / 4.0f - 8.0f;
    const auto place = [&](int i) {
        return Rect{rect.x + static_cast<float>(i) * (w + 8.0f), rect.y, w, rect.h};
    };
    large_figure(context, place(0), words::big_bit, step.drills ? length(step.diameter_m) : words::dash,
                 step.drills ? unit : std::string_view{},
                 step.drills && !inch ? output::bit_inch_text(step.diameter_m) : std::string());
    large_figure(context, place(1), words::big_depth, step.drills ? length(step.depth_m) : words::dash,
                 step.drills ? unit : std::string_view{}, {});
    const char* lead = step.work == HoleWork::take_out ? words::big_out
                       : step.work == HoleWork::add    ? words::big_add
                                                       : words::big_lead;
    large_figure(context, place(2), lead, number_of(context, step.fill_kg, Quantity::mass),
                 unit_of(context, Quantity::mass),
                 text_of(context, step.column_m, Quantity::length) + " " + words::column_of);
    large_figure(context, place(3), words::big_place, length(hole.x_m), unit, {});
}

/// The tick: what is done next at this hole, in large at the foot.
void tick_button(PanelContext& context, const Work& work, const HoleStep& step, const Rect& rect) {
    const auto button = [&](const char* label, bool enabled) {
        return widgets::button_at(context.ui, "drill.done", rect, label, widgets::ButtonKind::main, enabled);
    };
    if (work.advice != nullptr && work.advice->lead_is_in) {
        if (button(words::drill_done, true))
            context.change(label_of(words::drill_done, words::hole_kind, step.hole),
                           state::done_now(*work.advice, step.hole));
        return;
    }
    const auto& own = context.document().holes;
    const auto index = static_cast<std::size_t>(step.hole);
    const HoleUse use = index < own.size() ? own[index].use : HoleUse::ballast;
    const bool drills = use == HoleUse::ballast;
    const char* label = drills ? words::drilled_label : words::leaded_label;
    if (!button(label, use != HoleUse::leaded)) return;
    const state::Edit mark = state::mark_hole(step.hole, drills ? HoleUse::drilled : HoleUse::leaded);
    if (work.advice == nullptr) {
        context.change(label_of(label, words::hole_kind, step.hole), mark);
        return;
    }
    context.change(label_of(label, words::hole_kind, step.hole),
                   [done = state::done_now(*work.advice, step.hole), mark](document::Document d) {
                       return mark(done(std::move(d)));
                   });
}

void foot(PanelContext& context, const Work& work, const Rect& rect) {
    const int count = static_cast<int>(work.steps.size());
    int& at = context.view.drill_screen;
    const float side = std::min(130.0f, 0.24f * rect.w);
    if (widgets::button_at(context.ui, "drill.back", {rect.x, rect.y, side, rect.h}, words::drill_back,
                           widgets::ButtonKind::plain, at > 0))
        --at;
    tick_button(context, work, work.steps[static_cast<std::size_t>(std::clamp(at, 0, count - 1))],
                {rect.x + side + 8.0f, rect.y, rect.w - 2.0f * side - 16.0f, rect.h});
    if (widgets::button_at(context.ui, "drill.next", {rect.right() - side, rect.y, side, rect.h},
                           words::drill_next, widgets::ButtonKind::plain, at + 1 < count))
        ++at;
}

void head(PanelContext& context, const Work& work, const Rect& rect) {
    widgets::Ui& ui = context.ui;
    std::string title = words::drill_by_steps;
    if (!work.steps.empty()) {
        const auto at = static_cast<std::size_t>(context.view.drill_screen);
        title = std::string(words::drill_hole) + " " +
                hole_label(context, *work.document, work.steps[at].hole) + " · " + std::to_string(at + 1) +
                " " + words::drill_of + " " + std::to_string(work.steps.size());
    }
    const Rect place{rect.x, rect.y, rect.w - look::target - 8.0f, rect.h};
    const help::Topic topic = work.steps.empty() ? help::Topic::none : help::Topic::lead_work;
    const widgets::Touch touch = widgets::help_area(ui, topic, place);
    help_text_in(ui, place, ui.type.title, ui.inks().ink, title, topic);
    if (touch.focused) focus_ring(ui, place, look::control_rounding);
    if (widgets::icon_button_at(ui, "drill.close",
                                {rect.right() - look::target, rect.y, look::target, rect.h},
                                widgets::Icon::close))
        context.view.drilling = false;
}

/// Which way up the segment lies: drilling it the other way round is the usual mistake.
void way_up(PanelContext& context, const document::Hole& hole, const Rect& rect) {
    widgets::Ui& ui = context.ui;
    const bool belly = hole.from == document::HoleFrom::belly;
    ImGui::GetWindowDrawList()->AddRectFilled({rect.x, rect.y}, {rect.right(), rect.bottom()},
                                              ui.inks().caution, look::control_rounding);
    ImFont* const font = ui.phone ? ui.type.large : ui.type.display;
    text_in(ui, {rect.x + 12.0f, rect.y + 4.0f, rect.w - 24.0f, font->FontSize + 6.0f}, font, ui.inks().mark,
            belly ? words::belly_up : words::back_up);
    text_in(ui, {rect.x + 12.0f, rect.bottom() - 28.0f, rect.w - 24.0f, 24.0f}, ui.type.label, ui.inks().ink,
            belly ? words::belly_up_below : words::back_up_below);
}

} // namespace

void drill_screens(PanelContext& context, const Rect& rect) {
    widgets::Ui& ui = context.ui;
    card(ui, rect, ui.inks().card);
    const Rect in = rect.inset(look::gutter);
    const Work work = work_of(context);
    int& at = context.view.drill_screen;
    at = std::clamp(at, 0, std::max(0, static_cast<int>(work.steps.size()) - 1));
    head(context, work, {in.x, in.y, in.w, look::target});
    if (work.steps.empty()) {
        text_in(ui, {in.x, in.y + 64.0f, in.w, 28.0f}, ui.type.body, ui.inks().ink, words::drill_all_done);
        return;
    }
    const HoleStep& step = work.steps[static_cast<std::size_t>(at)];
    const document::Hole& hole = work.document->holes[static_cast<std::size_t>(step.hole)];
    const float banner_h = (ui.phone ? 28.0f : 40.0f) + 40.0f;
    way_up(context, hole, {in.x, in.y + look::target + 8.0f, in.w, banner_h});
    const float foot_h = 56.0f;
    foot(context, work, {in.x, in.bottom() - foot_h, in.w, foot_h});
    std::string text = how_text(context, work, step);
    if (const auto scale = scale_after(context, work, step)) {
        if (!text.empty()) text += '\n';
        text += std::string(scale->words) + " " + text_of(context, scale->kg, Quantity::mass) + ".";
    }
    ImFont* const font = ui.phone ? ui.type.label : ui.type.body;
    const std::string lines = widgets::broken_at_spaces(font, text, in.w);
    const float text_h = font->CalcTextSizeA(font->FontSize, FLT_MAX, 0.0f, lines.c_str()).y;
    const float text_y = in.bottom() - foot_h - 12.0f - text_h;
    ImGui::GetWindowDrawList()->AddText(font, font->FontSize, {in.x, text_y}, ui.inks().ink, lines.c_str());
    const float figures_h = 84.0f;
    const float figures_y = text_y - 8.0f - figures_h;
    figures(context, work, step, {in.x, figures_y, in.w, figures_h});
    const float top = in.y + look::target + 8.0f + banner_h + 8.0f;
    drawing::drill_view(ui, *work.document, context.evaluation().body, step,
                        {in.x, top, in.w, figures_y - 8.0f - top});
}

void drill_button(PanelContext& context, std::string_view id) {
    if (!widgets::button(context.ui, id, words::drill_by_steps)) return;
    context.view.drilling = true;
    context.view.drill_screen = 0;
}

} // namespace evenfall::shell::steps
