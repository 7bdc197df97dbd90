#include "steps/step_panels.hpp"

#include "look/words_steps.hpp"
#include "widgets/button.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <array>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;

constexpr std::array<widgets::Column, 3> columns{{{0.0f, 0.34f, widgets::Align::left},
                                                  {0.34f, 0.67f, widgets::Align::right},
                                                  {0.67f, 1.0f, widgets::Align::right}}};

void row(Desk& desk, const char* title, const std::string& before, const std::string& after) {
    const std::array<widgets::Cell, 3> cells{{{title, {}, false}, {before, {}, false}, {after, {}, true}}};
    widgets::table_row(desk.ui, {}, columns, cells);
}

std::string fall_text(const Desk& desk, const Answers& answers) {
    if (answers.fall) return text_of(desk, answers.fall->speed_m_s, Quantity::fall);
    return answers.behaviour == Behaviour::floats ? words::floats_short : words::dash;
}

std::string hang_text(const Desk& desk, const Answers& answers) {
    return answers.pitch_rad ? text_of(desk, *answers.pitch_rad, Quantity::angle)
                             : std::string(words::no_answer);
}

void before_and_after(Desk& desk, const LeadPlan& plan) {
    const std::array<std::string_view, 3> titles{std::string_view{}, words::before, words::after};
    widgets::table_head(desk.ui, columns, titles);
    const Answers& a = plan.before;
    const Answers& b = plan.after;
    row(desk, words::row_fall, fall_text(desk, a), fall_text(desk, b));
    row(desk, words::row_in_water, signed_mass(desk, a.in_water_kg), signed_mass(desk, b.in_water_kg));
    row(desk, words::row_hang, hang_text(desk, a), hang_text(desk, b));
    row(desk, words::row_finished, text_of(desk, a.mass_kg, Quantity::mass),
        text_of(desk, b.mass_kg, Quantity::mass));
    row(desk, words::row_righting, text_of(desk, a.bg_m, Quantity::length),
        text_of(desk, b.bg_m, Quantity::length));
}

} // namespace

void plan_rows(Desk& desk) {
    const auto& offer = desk.session.offer();
    if (!offer) {
        widgets::gap();
        const bool any = !desk.document().holes.empty();
        if (widgets::button(desk.ui, "lead.plan", words::plan_lead, widgets::ButtonKind::main, any)) {
            desk.act = Desk::Act::plan;
        }
        return;
    }
    if (offer->met) {
        widgets::info_box(desk.ui, words::plan_met, words::plan_met_below);
    } else {
        std::string text;
        for (const auto& problem : offer->shortfalls)
            text += (text.empty() ? "" : "\n") + problem.sentence;
        widgets::info_box(desk.ui, words::plan_short, text);
    }
    before_and_after(desk, *offer);
    widgets::gap();
    const int tapped =
        widgets::button_row(desk.ui, {{"lead.drop", words::plan_drop, widgets::ButtonKind::plain},
                                      {"lead.keep", words::plan_keep, widgets::ButtonKind::main}});
    if (tapped == 0) desk.act = Desk::Act::drop;
    if (tapped == 1) desk.act = Desk::Act::keep;
}

} // namespace evenfall::shell::steps
