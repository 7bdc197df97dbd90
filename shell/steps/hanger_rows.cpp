#include "steps/fields.hpp"
#include "steps/step_panels.hpp"

#include "evenfall.hpp"
#include "look/words_glue.hpp"
#include "look/words_joints.hpp"
#include "look/words_steps.hpp"
#include "widgets/button.hpp"
#include "widgets/choice.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <array>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using document::Hanger;
using document::HangerKind;
using document::HangerOn;
using state::ItemKind;

constexpr std::array<std::string_view, 3> kinds{words::hanger_twisted, words::hanger_screw,
                                                words::hanger_straight};
constexpr std::array<std::string_view, 4> places{words::on_nose, words::on_tail, words::on_belly,
                                                 words::on_back};

void hanger_editor(PanelContext& context, int index) {
    Hanger h = context.document().hangers[static_cast<std::size_t>(index)];
    Fields f(context, "hangers." + std::to_string(index), words::hanger_kind, index);
    f.text(".name", words::name, h.name);
    f.choice(".kind", {}, kinds, h.kind, words::hanger_kind);
    f.choice(".on", words::hanger_on, places, h.on);
    if (h.on == HangerOn::nose || h.on == HangerOn::tail)
        f.number<&Hanger::z_m>(".z", words::place_z, h, words::place_z_below);
    else
        f.number<&Hanger::x_m>(".x", words::place_x, h);
    f.number<&Hanger::wire_m>(".wire", words::hanger_wire, h);
    f.number<&Hanger::eye_inside_m>(".eye", words::hanger_eye, h);
    if (h.kind != HangerKind::straight) f.number<&Hanger::depth_m>(".depth", words::hanger_depth, h);
    if (h.kind == HangerKind::twisted) {
        constexpr document::NumberField turns = document::field_of<&Hanger::turns>;
        const int by =
            widgets::stepper(context.ui, f.id(".turns"), words::twist_turns, static_cast<int>(h.turns),
                             static_cast<int>(turns.min), static_cast<int>(turns.max));
        if (by != 0) {
            h.turns = static_cast<int>(h.turns) + by;
            f.changed(words::twist_turns);
        }
    }
    if (h.kind != HangerKind::screw) {
        constexpr std::array<std::string_view, 3> glues{words::hinge_glue_none, words::hinge_glue_ca,
                                                        words::hinge_glue_epoxy};
        f.choice(".glue", words::hinge_glue, glues, h.glue);
    }
    f.optional_number<&Hanger::mass_kg>(".mass", words::hanger_mass, h, 0.0005, words::hanger_mass_absent);
    f.put([&] { return state::on_hanger(index, [h](Hanger& old) { old = h; }); });
    widgets::gap();
    if (widgets::button(context.ui, f.id(".remove"), words::remove, widgets::ButtonKind::danger)) {
        context.change(f.said(words::take_away), state::remove_hanger(index));
        context.view.selection = {};
    }
    widgets::gap();
}

} // namespace

void hanger_rows(PanelContext& context) {
    const auto& hangers = context.document().hangers;
    widgets::subheading(context.ui, words::hangers_group, help::Topic::parts);
    if (hangers.empty()) widgets::note(context.ui, words::no_hangers);
    for (int i = 0; i < static_cast<int>(hangers.size()); ++i) {
        const Hanger& hanger = hangers[static_cast<std::size_t>(i)];
        const std::string name = hanger.name.empty() ? std::string(words::new_hanger) : hanger.name;
        std::string below(kinds[static_cast<std::size_t>(hanger.kind)]);
        below.append(words::separator).append(places[static_cast<std::size_t>(hanger.on)]);
        if (hanger.on == HangerOn::belly || hanger.on == HangerOn::back)
            below.append(" ").append(text_of(context, hanger.x_m, Quantity::length));
        const ledger::Sum sum = ledger::sum_of(context.evaluation().ledger, ledger::Kind::hanger, i);
        const bool chosen = context.row_chosen(ItemKind::hanger, i);
        if (widgets::list_row(context.ui, "hangers." + std::to_string(i),
                              {name, below, number_of(context, sum.mass.kg, Quantity::mass),
                               unit_of(context, Quantity::mass), chosen, !chosen, true})) {
            context.choose(ItemKind::hanger, i);
        }
        if (chosen) hanger_editor(context, i);
    }
    const bool room = hangers.size() < document::max_hangers;
    widgets::gap();
    if (widgets::button(context.ui, "hangers.add", words::add_hanger, widgets::ButtonKind::plain, room)) {
        context.change(words::add_hanger, state::add_hanger());
        context.view.selection = {ItemKind::hanger, static_cast<int>(hangers.size())};
    }
}

} // namespace evenfall::shell::steps
