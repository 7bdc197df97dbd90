#include "steps/before_after.hpp"
#include "steps/step_panels.hpp"

#include "look/words_help.hpp"
#include "look/words_steps.hpp"
#include "output.hpp"
#include "widgets/button.hpp"
#include "widgets/words_of_panel.hpp"

#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;

std::string fall_text(const PanelContext& context, const Answers& answers) {
    if (answers.fall) return text_of(context, answers.fall->speed_m_s, Quantity::fall);
    if (answers.behaviour == Behaviour::suspends) return words::hangs_short;
    return answers.behaviour == Behaviour::floats ? words::floats_short : words::dash;
}

std::string hang_text(const PanelContext& context, const Answers& answers) {
    return answers.pitch_rad ? text_of(context, *answers.pitch_rad, Quantity::angle)
                             : std::string(words::no_answer);
}

void before_and_after(PanelContext& context, const LeadPlan& plan) {
    if (before_after_head(context, words::before, words::after, help::Topic::plan)) {
        const document::Targets& targets = context.document().targets;
        if (targets.by == document::TargetBy::fall)
            widgets::went_in(context.ui, words::went_asked_fall,
                             text_of(context, targets.fall_m_s, Quantity::fall));
        else
            widgets::went_in(context.ui, words::went_asked_weight, signed_mass(context, targets.in_water_kg));
        widgets::went_in(context.ui, words::went_asked_hang,
                         text_of(context, targets.pitch_rad, Quantity::angle));
    }
    const Answers& a = plan.before;
    const Answers& b = plan.after;
    before_after_row(context, words::row_fall, fall_text(context, a), fall_text(context, b));
    before_after_row(context, words::row_in_water, signed_mass(context, a.in_water.kg),
                     signed_mass(context, b.in_water.kg));
    before_after_row(context, words::row_hang, hang_text(context, a), hang_text(context, b));
    before_after_row(context, words::row_finished, text_of(context, a.mass.kg, Quantity::mass),
                     text_of(context, b.mass.kg, Quantity::mass));
    before_after_row(context, words::row_righting, text_of(context, a.bg_m, Quantity::length),
                     text_of(context, b.bg_m, Quantity::length));
}

} // namespace

void plan_rows(PanelContext& context) {
    const auto& offer = context.session.offer();
    if (!offer) {
        widgets::gap();
        const bool any = !context.document().holes.empty();
        if (widgets::button(context.ui, "lead.plan", words::plan_lead, widgets::ButtonKind::main, any)) {
            context.act = PanelContext::Act::plan;
        }
        if (const std::string missing = output::missing_coats_text(context.document()); !missing.empty()) {
            widgets::gap();
            widgets::note(context.ui, missing);
        }
        return;
    }
    if (offer->met) {
        widgets::info_box(context.ui, words::plan_met, words::plan_met_below);
    } else {
        Sentence text;
        for (const auto& problem : offer->shortfalls)
            text += (text.empty() ? "" : "\n") + problem.sentence;
        widgets::info_box(context.ui, words::plan_short, text);
    }
    before_and_after(context, *offer);
    widgets::gap();
    const int tapped =
        widgets::button_row(context.ui, {{"lead.drop", words::plan_drop, widgets::ButtonKind::plain},
                                         {"lead.keep", words::plan_keep, widgets::ButtonKind::main}});
    if (tapped == 0) context.act = PanelContext::Act::drop;
    if (tapped == 1) context.act = PanelContext::Act::keep;
}

} // namespace evenfall::shell::steps
