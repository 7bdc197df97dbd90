#include "steps/step_panels.hpp"

#include "evenfall.hpp"
#include "look/words_glue.hpp"
#include "look/words_steps.hpp"
#include "widgets/button.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
template <class T>
std::string name_of(const std::vector<T>& list, int item, const char* otherwise) {
    if (item < 0 || item >= static_cast<int>(list.size())) return otherwise;
    const std::string& name = list[static_cast<std::size_t>(item)].name;
    return name.empty() ? std::string(otherwise) + " " + std::to_string(item + 1) : name;
}

std::string what(const PanelContext& context, const ledger::Line& line) {
    const auto& d = context.document();
    const auto numbered = [&line](const char* w) {
        return std::string(w) + " " + std::to_string(line.item + 1);
    };
    const auto named = [](const char* w, const std::string& name) { return std::string(w) + " " + name; };
    switch (line.kind) {
    case ledger::Kind::wood:
        return named(words::line_wood, segment_name(d, line.segment));
    case ledger::Kind::hole_wood:
        return numbered(words::line_hole_wood);
    case ledger::Kind::hole_water:
        return numbered(words::line_hole_water);
    case ledger::Kind::pocket_wood:
        return named(words::line_pocket_wood, name_of(d.pockets, line.item, words::new_pocket));
    case ledger::Kind::pocket_water:
        return named(words::line_pocket_water, name_of(d.pockets, line.item, words::new_pocket));
    case ledger::Kind::bore_wood:
        return named(words::line_bore_wood, name_of(d.parts, line.item, words::new_part));
    case ledger::Kind::fill:
        return numbered(words::line_fill);
    case ledger::Kind::cap:
        return numbered(words::line_cap);
    case ledger::Kind::glue:
        return numbered(line.mass_kg < 0.0 ? words::line_glue_wood : words::line_glue);
    case ledger::Kind::hinge:
        return numbered(line.mass_kg < 0.0 ? words::line_hinge_wood : words::line_hinge);
    case ledger::Kind::hanger:
        return line.mass_kg < 0.0
                   ? named(words::line_bore_wood, name_of(d.hangers, line.item, words::new_hanger))
                   : name_of(d.hangers, line.item, words::new_hanger);
    case ledger::Kind::part:
        return name_of(d.parts, line.item, words::new_part);
    case ledger::Kind::tail:
        return line.item == 0 ? words::line_tail : words::line_tenon;
    case ledger::Kind::coat:
        return name_of(d.coats, line.item, words::new_coat);
    case ledger::Kind::air:
        return words::line_air;
    }
    return {};
}

} // namespace

void ledger_rows(PanelContext& context) {
    widgets::subheading(context.ui, words::ledger_group, help::Topic::ledger);
    widgets::note(context.ui, words::ledger_note);
    const bool open = context.view.ledger_open;
    widgets::gap();
    if (widgets::button(context.ui, "water.ledger", open ? words::ledger_hide : words::ledger_show))
        context.view.ledger_open = !open;
    if (!open) return;
    for (int s = 0; s < stage_count; ++s) {
        const auto stage = static_cast<Stage>(s);
        bool first = true;
        for (const auto& line : context.evaluation().ledger) {
            if (line.stage != stage) continue;
            if (first) widgets::subheading(context.ui, stage_name(stage));
            first = false;
            const std::string volume =
                line.displaced_m3 == 0.0
                    ? std::string(words::displaces_nothing)
                    : std::string(words::displaces) + " " +
                          widgets::number_text(line.displaced_m3, widgets::Unit::cm3, 2) + " cm\xC2\xB3";
            const std::string below =
                segment_name(context.document(), line.segment) + words::separator + volume;
            widgets::figure_row(context.ui, what(context, line),
                                number_of(context, line.mass_kg, Quantity::mass),
                                unit_of(context, Quantity::mass), below);
        }
    }
}

} // namespace evenfall::shell::steps
