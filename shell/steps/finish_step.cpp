#include "steps/step_panels.hpp"

#include "ledger/fold.hpp"
#include "look/words_steps.hpp"
#include "materials/solids.hpp"
#include "units/trade.hpp"
#include "widgets/button.hpp"
#include "widgets/choice.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <array>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using state::ItemKind;
using state::on_coat;

constexpr std::array<Stage, 3> coat_stages{Stage::sealed, Stage::painted, Stage::clear_coated};

ledger::Sum coat_sum(const Desk& desk, int coat) {
    ledger::Sum sum;
    for (const auto& line : desk.evaluation().ledger) {
        if (line.kind == ledger::Kind::coat && line.item == coat) sum += line;
    }
    return sum;
}

void amount_rows(Desk& desk, int index, const preset::Coat& coat, const std::string& id) {
    const auto label = [index](const char* what) { return label_of(what, words::coat_kind, index); };
    if (coat.kind == preset::CoatKind::film) {
        const std::array<std::string_view, 2> ways{words::by_thickness, words::by_mass};
        if (const auto tapped =
                widgets::choice(desk.ui, id + ".by", words::coat_by, ways, coat.thickness_m ? 0 : 1)) {
            const bool by_mass = *tapped == 1;
            const double mass = coat_sum(desk, index).mass_kg;
            desk.change(label(words::coat_by), on_coat(index, [by_mass, mass](preset::Coat& c) {
                            if (by_mass) {
                                c.mass_kg = mass;
                                c.thickness_m.reset();
                            } else {
                                c.mass_kg.reset();
                                c.thickness_m = 0.0003; // one brushed coat, to begin from
                            }
                        }));
        }
    }
    if (coat.thickness_m) {
        number(
            desk, id + ".thickness", words::coat_thickness, *coat.thickness_m,
            {Quantity::thickness, 0.0, 0.005, {}, fine_decimals(desk)}, label(words::coat_thickness),
            [index](double v) { return on_coat(index, [v](preset::Coat& c) { c.thickness_m = v; }); },
            words::coat_thickness_below);
    } else {
        number(
            desk, id + ".mass", words::coat_mass, coat.mass_kg.value_or(0.0),
            {Quantity::mass, 0.0, 0.5, {}, -1}, label(words::coat_mass),
            [index](double v) { return on_coat(index, [v](preset::Coat& c) { c.mass_kg = v; }); },
            words::coat_mass_below);
    }
    optional_number(
        desk, id + ".spread", words::spread, coat.spread, 0.20, {Quantity::percent, 0.0, 1.0, 0.05, 0},
        words::coat_spread_absent, label(words::spread),
        [index](std::optional<double> v) { return on_coat(index, [v](preset::Coat& c) { c.spread = v; }); },
        words::coat_spread_below);
}

/// What of the coat the water lets one feel.
void felt_row(Desk& desk, int index) {
    const CoatAnswer& felt = desk.evaluation().answers.coats[static_cast<std::size_t>(index)];
    std::string below = widgets::value_text(felt.felt_share, widgets::Unit::percent, 0) + " " + words::of_its_mass + "; ";
    below += felt.displaced_m3 > 0.0 ? words::film_grows + widgets::number_text(units::cm3_from_m3(felt.displaced_m3), widgets::Unit::none, 2) +
                                           words::film_grows_unit
                                     : std::string(words::soak_grows_nothing);
    widgets::figure_row(desk.ui, words::felt_in_water, signed_mass(desk, felt.in_water_kg), {}, below);
}

void coat_editor(Desk& desk, int index) {
    const auto& coat = desk.document().coats[static_cast<std::size_t>(index)];
    const std::string id = "finish." + std::to_string(index);
    const auto label = [index](const char* what) { return label_of(what, words::coat_kind, index); };
    if (auto named = widgets::text_field(desk.ui, id + ".name", words::name, coat.name)) {
        desk.change(label(words::name), on_coat(index, [text = *named](preset::Coat& c) { c.name = text; }));
    }
    material(desk, id + ".material", words::material, static_cast<unsigned>(materials::Use::coat),
             coat.material, label(words::material), [index](std::string key) {
                 return on_coat(index, [key](preset::Coat& c) { c.material = key; });
             });
    amount_rows(desk, index, coat, id);
    const std::array<std::string_view, 3> stages{words::stage_sealed_short, words::stage_painted_short,
                                                 words::stage_clear_short};
    int on = 0;
    for (int s = 0; s < 3; ++s)
        on = coat.stage == coat_stages[static_cast<std::size_t>(s)] ? s : on;
    if (const auto tapped = widgets::choice(desk.ui, id + ".stage", words::stage, stages, on)) {
        const Stage stage = coat_stages[static_cast<std::size_t>(*tapped)];
        desk.change(label(words::stage), on_coat(index, [stage](preset::Coat& c) { c.stage = stage; }));
    }
    const std::array<std::string_view, 2> kinds{words::coat_soaks, words::coat_film};
    if (const auto tapped =
            widgets::choice(desk.ui, id + ".kind", words::coat_works, kinds, static_cast<int>(coat.kind))) {
        const auto kind = static_cast<preset::CoatKind>(*tapped);
        const double mass = coat_sum(desk, index).mass_kg;
        desk.change(label(words::coat_works_label), on_coat(index, [kind, mass](preset::Coat& c) {
                        c.kind = kind;
                        if (kind == preset::CoatKind::soaks && c.thickness_m) {
                            // What soaks in has no thickness: the same mass then.
                            c.thickness_m.reset();
                            c.mass_kg = mass;
                        }
                    }));
    }
    if (widgets::toggle(desk.ui, id + ".skin", words::on_skin, coat.on_skin)) {
        desk.change(label(words::surfaces_word),
                    on_coat(index, [](preset::Coat& c) { c.on_skin = !c.on_skin; }));
    }
    if (widgets::toggle(desk.ui, id + ".faces", words::on_faces, coat.on_joint_faces,
                        words::on_faces_below)) {
        desk.change(label(words::surfaces_word),
                    on_coat(index, [](preset::Coat& c) { c.on_joint_faces = !c.on_joint_faces; }));
    }
    if (!desk.document().pockets.empty() &&
        widgets::toggle(desk.ui, id + ".pockets", words::on_pockets, coat.on_pockets, words::on_pockets_below)) {
        desk.change(label(words::surfaces_word),
                    on_coat(index, [](preset::Coat& c) { c.on_pockets = !c.on_pockets; }));
    }
    felt_row(desk, index);
    const int count = static_cast<int>(desk.document().coats.size());
    widgets::gap();
    const int tapped = widgets::button_row(
        desk.ui, {{id + ".earlier", words::earlier, widgets::ButtonKind::plain, index > 0},
                  {id + ".later", words::later, widgets::ButtonKind::plain, index + 1 < count},
                  {id + ".remove", words::remove, widgets::ButtonKind::danger}});
    if (tapped == 0 || tapped == 1) {
        const int by = tapped == 0 ? -1 : 1;
        desk.change(label(words::order_word), state::move_coat(index, by));
        desk.view.selection = {ItemKind::coat, index + by};
    }
    if (tapped == 2) {
        desk.change(label(words::take_away), state::remove_coat(index));
        desk.view.selection = {};
    }
    widgets::gap();
}

std::string coat_line(const Desk& desk, const preset::Coat& coat) {
    const auto* solid = materials::find_solid(coat.material);
    std::string text(solid != nullptr ? solid->name : std::string_view(coat.material));
    text += words::separator;
    text += coat.kind == preset::CoatKind::soaks ? std::string(words::coat_soaks)
            : coat.thickness_m                   ? text_of(desk, *coat.thickness_m, Quantity::thickness)
                                                 : std::string(words::coat_film);
    text += words::separator;
    text += stage_words(coat.stage);
    return text;
}

} // namespace

void finish_panel(Desk& desk) {
    const auto& coats = desk.document().coats;
    const double water = desk.evaluation().answers.water_density_kg_m3;
    widgets::heading(desk.ui, words::finish_head, words::finish_below);
    if (coats.empty()) widgets::paragraph(desk.ui, words::no_coats);
    ledger::Sum all;
    for (int i = 0; i < static_cast<int>(coats.size()); ++i) {
        const auto& coat = coats[static_cast<std::size_t>(i)];
        const std::string name = coat.name.empty() ? std::string(words::new_coat) : coat.name;
        const std::string below = coat_line(desk, coat);
        const ledger::Sum sum = coat_sum(desk, i);
        all += sum;
        const bool chosen = desk.row_chosen(ItemKind::coat, i);
        if (widgets::list_row(desk.ui, "finish." + std::to_string(i),
                              {name, below, number_of(desk, sum.mass_kg, Quantity::mass),
                               unit_of(desk, Quantity::mass), chosen, !chosen, true})) {
            desk.choose(ItemKind::coat, i);
        }
        if (chosen) coat_editor(desk, i);
    }
    if (!coats.empty()) {
        widgets::figure_row(desk.ui, words::together, number_of(desk, all.mass_kg, Quantity::mass),
                            unit_of(desk, Quantity::mass),
                            signed_mass(desk, all.in_water_kg(water)) + " " + words::in_the_water);
        widgets::note(desk.ui, words::coats_insight);
    }
    widgets::subheading(desk.ui, words::add_coat_group);
    const bool room = coats.size() < preset::max_coats;
    widgets::gap();
    const int tapped = widgets::button_row(
        desk.ui, {{"finish.add_sealer", words::add_sealer, widgets::ButtonKind::plain, room},
                  {"finish.add_paint", words::add_paint, widgets::ButtonKind::plain, room},
                  {"finish.add_clear", words::add_clear, widgets::ButtonKind::plain, room}});
    if (tapped >= 0) {
        const Stage stage = coat_stages[static_cast<std::size_t>(tapped)];
        desk.change(std::string(words::add) + " " + words::coat_kind, state::add_coat(stage));
        desk.view.selection = {};
    }
    resin_rows(desk);
    widgets::gap();
    widgets::caution_box(desk.ui, words::epoxy_title, words::epoxy_caution);
    widgets::gap();
    widgets::caution_box(desk.ui, words::ca_title, words::ca_caution);
}

} // namespace evenfall::shell::steps
