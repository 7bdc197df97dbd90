#include "steps/before_after.hpp"
#include "steps/step_panels.hpp"

#include "look/words_reach.hpp"
#include "look/words_steps.hpp"
#include "widgets/button.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using reach::Figures;

std::string fall_text(const PanelContext& context, const Figures& f) {
    if (!f.fall_m_s) return f.in_water_kg < 0.0 ? words::floats_short : words::dash;
    if (std::abs(*f.fall_m_s) < still_m_s) return words::hangs_short;
    return *f.fall_m_s < 0.0 ? words::floats_short : text_of(context, *f.fall_m_s, Quantity::fall);
}

std::string hang_text(const PanelContext& context, const Figures& f) {
    return f.pitch_rad ? text_of(context, *f.pitch_rad, Quantity::angle) : std::string(words::no_answer);
}

std::string chance_text(const Figures& f) {
    return widgets::value_text(f.chance, widgets::Unit::percent, 0);
}

/// The six figures in one line.
std::string figures_line(const PanelContext& context, const Figures& f) {
    return words::way_finished + text_of(context, f.mass_kg, Quantity::mass) + words::way_in_water +
           signed_mass(context, f.in_water_kg) + words::way_fall + fall_text(context, f) + words::way_hang +
           hang_text(context, f) + words::way_righting + text_of(context, f.bg_m, Quantity::length) +
           words::way_chance + chance_text(f);
}

void figures_table(PanelContext& context, const Figures& before, const Figures& after) {
    before_after_head(context, words::ways_lead_alone, words::ways_this, help::Topic::ways);
    const auto row = [&](const char* title, const auto& text) {
        before_after_row(context, title, text(before), text(after));
    };
    row(words::row_finished, [&](const Figures& f) { return text_of(context, f.mass_kg, Quantity::mass); });
    row(words::row_in_water, [&](const Figures& f) { return signed_mass(context, f.in_water_kg); });
    row(words::row_fall, [&](const Figures& f) { return fall_text(context, f); });
    row(words::row_hang, [&](const Figures& f) { return hang_text(context, f); });
    row(words::row_righting, [&](const Figures& f) { return text_of(context, f.bg_m, Quantity::length); });
    row(words::row_chance, chance_text);
}

/// All about one way, below its row.
void open_way(PanelContext& context, const reach::Ways& ways, const reach::Way& way) {
    figures_table(context, ways.before, way.after);
    for (const Sentence& says : way.also)
        widgets::note(context.ui, says);
    widgets::gap();
    const int tapped =
        widgets::button_row(context.ui, {{"lead.way.beside", words::ways_beside, widgets::ButtonKind::plain},
                                         {"lead.way.keep", words::ways_keep, widgets::ButtonKind::main}});
    const std::string change = way.change.text(context.ui.units);
    if (tapped == 0) context.motion.beside = {change, way.document};
    if (tapped == 1)
        context.changes.push_back(
            {change, [lure = way.document](const document::Document&) { return lure; }, true, true});
    widgets::gap();
}

void chance_row(PanelContext& context, state::WaySearch& search) {
    if (const auto set =
            widgets::optional_number_field(context.ui, "lead.way.chance", words::ways_chance, search.chance,
                                           0.5, {Quantity::percent, 0.01, reach::greatest_chance, 0.05, 0},
                                           words::ways_chance_any, words::ways_chance_below))
        search.chance = *set;
}

} // namespace

void ways_rows(PanelContext& context) {
    const auto& offer = context.session.offer();
    if (!section(context, {"section.lead.ways", words::ways_group, {}, offer && !offer->met})) return;
    state::WaySearch& search = context.motion.ways;
    if (search.work_on(context.session)) context.ui.frames_wanted = std::max(context.ui.frames_wanted, 2);
    for (const Problem& problem : search.refusal())
        widgets::problem_line(context.ui, problem.sentence);
    if (const reach::Ways* ways = search.found()) {
        widgets::note(context.ui, ways->met ? words::ways_met : words::ways_below);
        for (std::size_t i = 0; i < ways->ways.size(); ++i) {
            const reach::Way& way = ways->ways[i];
            const bool open = search.open == way.change;
            if (widgets::sentence_row(context.ui, "lead.way." + std::to_string(i),
                                      way.change.text(context.ui.units), figures_line(context, way.after),
                                      open))
                search.open = open ? Sentence() : way.change;
            if (open) open_way(context, *ways, way);
        }
        if (!search.done())
            widgets::figure_row(context.ui, words::ways_looking,
                                widgets::number_text(search.progress(), widgets::Unit::percent, 0), "%");
        else if (!ways->met && ways->ways.empty())
            widgets::paragraph(context.ui, words::ways_none);
    }
    chance_row(context, search);
}

} // namespace evenfall::shell::steps
