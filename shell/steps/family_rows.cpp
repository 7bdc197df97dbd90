#include "steps/step_panels.hpp"

#include "look/words_card.hpp"
#include "look/words_choice.hpp"
#include "look/words_reach.hpp"
#include "look/words_steps.hpp"
#include "widgets/button.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <algorithm>
#include <array>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using reach::Member;
using widgets::Align;

double fill_kg(const LeadPlan& plan) {
    double sum = 0.0;
    for (const HolePlan& hole : plan.holes)
        sum += hole.mass_kg;
    return sum;
}

/// The recipe of a member, for a new piece of wood.
document::Document recipe_of(const Member& member, std::string_view name) {
    document::Document lure = member.plan.document;
    const std::string end = ", " + std::string(name);
    if (lure.name.size() + end.size() <= document::max_text) lure.name += end;
    lure.log.clear();
    document::begin_anew(lure.holes);
    for (document::Hole& hole : lure.holes)
        hole.before.clear();
    return lure;
}

/// All about one member, below its row.
void open_member(PanelContext& context, const Member& member, std::string_view name) {
    for (const Problem& problem : member.plan.shortfalls)
        widgets::problem_line(context.ui, problem.sentence);
    if (widgets::button(context.ui, "lead.family.own", words::family_own))
        context.motion.own = {words::family_own, recipe_of(member, name)};
}

} // namespace

void family_rows(PanelContext& context) {
    if (!section(context, {"section.lead.family", words::family_group})) return;
    widgets::note(context.ui, words::family_below);
    const auto* family = context.motion.reach.family(context.session);
    if (family == nullptr) {
        widgets::note(context.ui, words::family_none);
        return;
    }
    constexpr std::array<widgets::TableColumn, 4> columns{{{0.0f, 0.36f, Align::left},
                                                           {0.36f, 0.56f, Align::right},
                                                           {0.56f, 0.79f, Align::right},
                                                           {0.79f, 1.0f, Align::right}}};
    const std::string fill = titled(context, words::col_fill, Quantity::mass);
    const std::string weight = titled(context, words::family_weight, Quantity::mass);
    const std::array<std::string_view, 4> titles{std::string_view{}, fill, weight, words::family_chance};
    widgets::table_head(context.ui, columns, titles, help::Topic::family);
    for (int i = 0; i < static_cast<int>(family->size()); ++i) {
        const Member& member = (*family)[static_cast<std::size_t>(i)];
        const std::string_view name = words::card_falls[static_cast<std::size_t>(member.fall)];
        const std::string lead = number_of(context, fill_kg(member.plan), Quantity::mass);
        const double in_water_kg = member.figures.in_water_kg;
        const std::string in_water =
            units::with_plus(in_water_kg, number_of(context, in_water_kg, Quantity::mass));
        const std::string chance = member.plan.met
                                       ? widgets::value_text(member.figures.chance, widgets::Unit::percent, 0)
                                       : std::string(words::not_met);
        const std::array<widgets::Cell, 4> cells{
            {{name, {}, false}, {lead, {}, false}, {in_water, {}, false}, {chance, {}, member.plan.met}}};
        const bool open = context.motion.family_open == i;
        if (widgets::table_row(context.ui, "lead.family." + std::to_string(i), columns, cells, open))
            context.motion.family_open = open ? -1 : i;
        if (open) open_member(context, member, name);
    }
    if (family->size() < reach::family_falls.size())
        context.ui.frames_wanted = std::max(context.ui.frames_wanted, 2);
}

} // namespace evenfall::shell::steps
