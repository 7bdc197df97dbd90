#include "steps/fields.hpp"
#include "steps/step_panels.hpp"

#include "look/words_steps.hpp"
#include "widgets/button.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using state::ItemKind;
using state::on_pocket;

void pocket_editor(PanelContext& context, int index) {
    using document::Pocket;
    Pocket pocket = context.document().pockets[static_cast<std::size_t>(index)];
    const std::string id = "pockets." + std::to_string(index);
    Fields f(context, id, words::pocket_kind, index);
    f.text(".name", words::name, pocket.name);
    f.number<&Pocket::x_from_m>(".from", words::pocket_from, pocket, words::place_x);
    f.number<&Pocket::x_to_m>(".to", words::pocket_to, pocket, words::place_x);
    f.number<&Pocket::width_m>(".width", words::pocket_width, pocket);
    f.number<&Pocket::y_m>(".y", words::place_y, pocket, words::place_y_below);
    f.optional_number<&Pocket::z_from_m>(".low", words::pocket_low, pocket, 0.0, words::through_belly);
    f.optional_number<&Pocket::z_to_m>(".high", words::pocket_high, pocket, 0.0, words::through_back);
    f.toggle(".floods", words::floods, pocket.floods, words::floods_below);
    f.put([&] { return on_pocket(index, [pocket](document::Pocket& p) { p = pocket; }); });
    widgets::gap();
    if (widgets::button(context.ui, id + ".remove", words::remove, widgets::ButtonKind::danger)) {
        context.change(f.said(words::take_away), state::remove_pocket(index));
        context.view.selection = {};
    }
    widgets::gap();
}

} // namespace

void pocket_rows(PanelContext& context) {
    const auto& pockets = context.document().pockets;
    if (!section(context,
                 {"section.hardware.pockets", words::pockets_group, {}, false, {state::ItemKind::pocket}}))
        return;
    if (pockets.empty()) widgets::note(context.ui, words::no_pockets);
    for (int i = 0; i < static_cast<int>(pockets.size()); ++i) {
        const auto& pocket = pockets[static_cast<std::size_t>(i)];
        const std::string name = pocket.name.empty() ? std::string(words::new_pocket) : pocket.name;
        const std::string below = number_of(context, pocket.x_from_m, Quantity::length) + " \xE2\x80\x93 " +
                                  text_of(context, pocket.x_to_m, Quantity::length);
        const bool chosen = context.row_chosen(ItemKind::pocket, i);
        if (widgets::list_row(context.ui, "pockets." + std::to_string(i),
                              {name, below, number_of(context, pocket.width_m, Quantity::length),
                               unit_of(context, Quantity::length), chosen, !chosen, true})) {
            context.choose(ItemKind::pocket, i);
        }
        if (chosen) pocket_editor(context, i);
    }
    const bool room = pockets.size() < document::max_pockets;
    widgets::gap();
    if (widgets::button(context.ui, "pockets.add", words::add_pocket, widgets::ButtonKind::plain, room)) {
        context.change(words::add_pocket, state::add_pocket());
        context.view.selection = {ItemKind::pocket, static_cast<int>(pockets.size())};
    }
}

} // namespace evenfall::shell::steps
