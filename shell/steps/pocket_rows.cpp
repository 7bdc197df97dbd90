#include "steps/step_panels.hpp"

#include "look/words_steps.hpp"
#include "widgets/button.hpp"
#include "widgets/choice.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using state::ItemKind;
using state::on_pocket;

void pocket_editor(Desk& desk, int index) {
    const auto& pocket = desk.document().pockets[static_cast<std::size_t>(index)];
    const std::string id = "pockets." + std::to_string(index);
    const auto label = [index](const char* what) { return label_of(what, words::pocket_kind, index); };
    const NumberSpec along{Quantity::length, 0.0, longest_m, {}, -1};
    const NumberSpec across{Quantity::length, -widest_m, widest_m, {}, -1};
    if (auto named = widgets::text_field(desk.ui, id + ".name", words::name, pocket.name)) {
        desk.change(label(words::name),
                    on_pocket(index, [text = *named](preset::Pocket& p) { p.name = text; }));
    }
    number(
        desk, id + ".from", words::pocket_from, pocket.x_from_m, along, label(words::pocket_from),
        [index](double v) { return on_pocket(index, [v](preset::Pocket& p) { p.x_from_m = v; }); },
        words::place_x);
    number(
        desk, id + ".to", words::pocket_to, pocket.x_to_m, along, label(words::pocket_to),
        [index](double v) { return on_pocket(index, [v](preset::Pocket& p) { p.x_to_m = v; }); },
        words::place_x);
    number(desk, id + ".width", words::pocket_width, pocket.width_m,
           {Quantity::length, 0.0002, 2.0 * widest_m, {}, -1}, label(words::pocket_width),
           [index](double v) { return on_pocket(index, [v](preset::Pocket& p) { p.width_m = v; }); });
    number(
        desk, id + ".y", words::place_y, pocket.y_m, across, label(words::place_y),
        [index](double v) { return on_pocket(index, [v](preset::Pocket& p) { p.y_m = v; }); },
        words::place_y_below);
    optional_number(desk, id + ".low", words::pocket_low, pocket.z_from_m, 0.0, across, words::through_belly,
                    label(words::pocket_low), [index](std::optional<double> v) {
                        return on_pocket(index, [v](preset::Pocket& p) { p.z_from_m = v; });
                    });
    optional_number(desk, id + ".high", words::pocket_high, pocket.z_to_m, 0.0, across, words::through_back,
                    label(words::pocket_high), [index](std::optional<double> v) {
                        return on_pocket(index, [v](preset::Pocket& p) { p.z_to_m = v; });
                    });
    if (widgets::toggle(desk.ui, id + ".floods", words::floods, pocket.floods, words::floods_below)) {
        desk.change(label(words::floods), on_pocket(index, [](preset::Pocket& p) { p.floods = !p.floods; }));
    }
    widgets::gap();
    if (widgets::button(desk.ui, id + ".remove", words::remove, widgets::ButtonKind::danger)) {
        desk.change(label(words::take_away), state::remove_pocket(index));
        desk.view.selection = {};
    }
    widgets::gap();
}

} // namespace

void pocket_rows(Desk& desk) {
    const auto& pockets = desk.document().pockets;
    widgets::subheading(desk.ui, words::pockets_group);
    if (pockets.empty()) widgets::note(desk.ui, words::no_pockets);
    for (int i = 0; i < static_cast<int>(pockets.size()); ++i) {
        const auto& pocket = pockets[static_cast<std::size_t>(i)];
        const std::string name = pocket.name.empty() ? std::string(words::new_pocket) : pocket.name;
        const std::string below = number_of(desk, pocket.x_from_m, Quantity::length) + " \xE2\x80\x93 " +
                                  text_of(desk, pocket.x_to_m, Quantity::length);
        const bool chosen = desk.row_chosen(ItemKind::pocket, i);
        if (widgets::list_row(desk.ui, "pockets." + std::to_string(i),
                              {name, below, number_of(desk, pocket.width_m, Quantity::length),
                               unit_of(desk, Quantity::length), chosen, !chosen, true})) {
            desk.choose(ItemKind::pocket, i);
        }
        if (chosen) pocket_editor(desk, i);
    }
    const bool room = pockets.size() < preset::max_pockets;
    widgets::gap();
    if (widgets::button(desk.ui, "pockets.add", words::add_pocket, widgets::ButtonKind::plain, room)) {
        desk.change(words::add_pocket, state::add_pocket());
        desk.view.selection = {ItemKind::pocket, static_cast<int>(pockets.size())};
    }
}

} // namespace evenfall::shell::steps
