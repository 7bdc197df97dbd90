#include "steps/panel.hpp"

#include "state/missing.hpp"
#include "steps/drill_steps.hpp"
#include "steps/step_panels.hpp"
#include "widgets/words_of_panel.hpp"

namespace evenfall::shell::steps {

namespace {

/// Gives the session what was asked for while it was drawn.
void apply(PanelContext& context, state::Session& session, state::PanelState& motion) {
    session.view = context.view;
    if (context.retrieve) session.settings.retrieve = *context.retrieve;
    bool taken = true;
    for (const auto& change : context.changes)
        taken = session.apply(change) && taken;
    if (!context.refusal.empty())
        session.refuse({{ProblemCode::cannot_be_met, "", "", std::move(context.refusal)}});
    if (context.put_down_draft && taken) {
        motion.draft.reading.reset();
        session.view.adding_reading = false;
    }
    switch (context.act) {
    case PanelContext::Act::plan:
        session.plan_lead();
        break;
    case PanelContext::Act::keep:
        session.keep_offer();
        break;
    case PanelContext::Act::drop:
        session.abandon();
        break;
    case PanelContext::Act::finish:
        session.finish();
        break;
    case PanelContext::Act::none:
        break;
    }
}

} // namespace

void panel(widgets::Ui& ui, state::Session& session, state::PanelState& motion, state::Drawer& drawer) {
    if (!session.evaluation()) {
        for (const auto& problem : session.problems())
            widgets::problem_line(ui, problem.sentence);
        return;
    }
    // Shown in every step: warnings about the finished lure are best read before the wood is cut.
    const std::string missing = state::missing_words(session.document());
    const Problems warnings =
        state::warnings_shown(session.document(), session.evaluation()->answers.warnings);
    if (!missing.empty()) widgets::paragraph(ui, missing);
    for (const auto& warning : warnings)
        widgets::problem_line(ui, warning.sentence);
    if (!missing.empty() || !warnings.empty()) widgets::gap();
    PanelContext context{ui, session, motion, drawer, session.view, PanelContext::Act::none, {}};
    switch (session.view.step) {
    case state::Step::shape:
        shape_panel(context);
        break;
    case state::Step::joints:
        joints_panel(context);
        break;
    case state::Step::hardware:
        hardware_panel(context);
        break;
    case state::Step::lead:
        lead_panel(context);
        break;
    case state::Step::finish:
        finish_panel(context);
        break;
    case state::Step::water:
        water_panel(context);
        break;
    case state::Step::log:
        log_panel(context);
        break;
    case state::Step::sheet:
        sheet_panel(context);
        break;
    }
    apply(context, session, motion);
}

void drill_panel(widgets::Ui& ui, state::Session& session, state::PanelState& motion, state::Drawer& drawer,
                 const widgets::Rect& rect) {
    PanelContext context{ui, session, motion, drawer, session.view, PanelContext::Act::none, {}};
    drill_screens(context, rect);
    apply(context, session, motion);
}

} // namespace evenfall::shell::steps
