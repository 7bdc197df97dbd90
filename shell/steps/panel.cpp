#include "steps/panel.hpp"

#include "steps/step_panels.hpp"
#include "widgets/words_of_panel.hpp"

namespace evenfall::shell::steps {

void panel(widgets::Ui& ui, state::Session& session, state::Motion& motion, state::Drawer& drawer) {
    if (!session.evaluation()) {
        for (const auto& problem : session.problems())
            widgets::problem_line(ui, problem.sentence);
        return;
    }
    // Shown in every step: warnings about the finished lure are best read before the wood is cut.
    for (const auto& warning : session.evaluation()->answers.warnings)
        widgets::problem_line(ui, warning.sentence);
    Desk desk{ui, session, motion, drawer, session.view, Desk::Act::none, {}};
    switch (session.view.step) {
    case state::Step::shape:
        shape_panel(desk);
        break;
    case state::Step::joints:
        joints_panel(desk);
        break;
    case state::Step::hardware:
        hardware_panel(desk);
        break;
    case state::Step::lead:
        lead_panel(desk);
        break;
    case state::Step::finish:
        finish_panel(desk);
        break;
    case state::Step::water:
        water_panel(desk);
        break;
    case state::Step::log:
        log_panel(desk);
        break;
    case state::Step::sheet:
        sheet_panel(desk);
        break;
    }
    session.view = desk.view;
    bool taken = true;
    for (const auto& change : desk.changes)
        taken = session.apply(change) && taken;
    if (!desk.refusal.empty())
        session.refuse({{ProblemCode::cannot_be_met, "", "", std::move(desk.refusal)}});
    if (desk.put_down_draft && taken) {
        motion.draft.reading.reset();
        session.view.adding_reading = false;
    }
    switch (desk.act) {
    case Desk::Act::plan:
        session.plan_lead();
        break;
    case Desk::Act::keep:
        session.keep_offer();
        break;
    case Desk::Act::drop:
        session.abandon();
        break;
    case Desk::Act::finish:
        session.finish();
        break;
    case Desk::Act::none:
        break;
    }
}

} // namespace evenfall::shell::steps
