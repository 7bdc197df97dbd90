#include "steps/fields.hpp"
#include "steps/step_panels.hpp"

#include "document_fields.hpp"
#include "evenfall.hpp"
#include "look/words_help.hpp"
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
using state::ItemKind;
using state::on_coat;

constexpr std::array<std::string_view, 2> coat_kinds{words::coat_soaks, words::coat_film};
static_assert(coat_kinds.size() == document::table::coat_kinds.size());
constexpr std::array<Stage, 3> coat_stages{Stage::sealed, Stage::painted, Stage::clear_coated};

ledger::Sum coat_sum(const PanelContext& context, int coat) {
    return ledger::sum_of(context.evaluation().ledger, ledger::Kind::coat, coat);
}

void amount_rows(PanelContext& context, Fields& f, int index, document::Coat& coat) {
    if (traits_of(coat.kind).takes_room) {
        const std::array<std::string_view, 2> ways{words::by_thickness, words::by_mass};
        int by = coat.thickness_m ? 0 : 1;
        if (f.choice(".by", words::coat_by, ways, by)) {
            coat.mass_kg.reset();
            coat.thickness_m.reset();
            if (by == 1)
                coat.mass_kg = coat_sum(context, index).mass.kg;
            else
                coat.thickness_m = 0.0003; // one brushed coat, to start from
        }
    }
    if (coat.thickness_m) {
        f.number<&document::Coat::thickness_m>(".thickness", words::coat_thickness, coat,
                                               words::coat_thickness_below(context.ui.units.inches()),
                                               {Quantity::thickness, {}, fine_decimals(context)});
    } else if (coat.mass_kg) {
        f.number<&document::Coat::mass_kg>(".mass", words::coat_mass, coat, words::coat_mass_below);
    }
    f.optional_number<&document::Coat::spread>(".spread", words::spread, coat, 0.20,
                                               words::coat_spread_absent, words::coat_spread_below,
                                               {{}, 0.05, 0});
}

/// The coat's contribution to the weight in water.
void in_water_row(PanelContext& context, int index) {
    const CoatAnswer& felt = context.evaluation().answers.coats[static_cast<std::size_t>(index)];
    std::string below =
        widgets::value_text(felt.in_water_share, widgets::Unit::percent, 0) + " " + words::of_its_mass + "; ";
    below += felt.displaced_m3 > 0.0
                 ? words::film_grows + widgets::number_text(felt.displaced_m3, widgets::Unit::cm3, 2) +
                       words::film_grows_unit
                 : std::string(words::soak_grows_nothing);
    if (!widgets::figure_row(context.ui, words::felt_in_water, signed_mass(context, felt.in_water.kg), {},
                             below, help::Topic::coat_in_water))
        return;
    widgets::went_in(context.ui, words::went_mass, text_of(context, felt.mass.kg, Quantity::mass));
    widgets::went_in(context.ui, words::went_volume,
                     widgets::value_text(felt.displaced_m3, widgets::Unit::cm3, 2));
    widgets::went_in(context.ui, words::went_water,
                     text_of(context, context.evaluation().answers.water_density_kg_m3, Quantity::density));
}

void coat_editor(PanelContext& context, int index) {
    document::Coat coat = context.document().coats[static_cast<std::size_t>(index)];
    Fields f(context, "finish." + std::to_string(index), words::coat_kind, index);
    f.text(".name", words::name, coat.name);
    f.material(".material", words::material, materials::Use::coat, coat.material);
    amount_rows(context, f, index, coat);
    const std::array<std::string_view, 3> stages{words::stage_sealed_short, words::stage_painted_short,
                                                 words::stage_clear_short};
    int on = 0;
    for (int s = 0; s < 3; ++s)
        on = coat.stage == coat_stages[static_cast<std::size_t>(s)] ? s : on;
    if (f.choice(".stage", words::stage, stages, on)) coat.stage = coat_stages[static_cast<std::size_t>(on)];
    if (f.choice(".kind", words::coat_works, coat_kinds, coat.kind, words::coat_works_label) &&
        !traits_of(coat.kind).takes_room && coat.thickness_m) {
        // What soaks in has no thickness: the same mass then.
        coat.thickness_m.reset();
        coat.mass_kg = coat_sum(context, index).mass.kg;
    }
    const auto surface = [&](std::string_view key, std::string_view label, bool& coated,
                             std::string_view below) {
        const bool before = coated;
        f.toggle(key, label, coated, below);
        if (coated != before) f.changed(words::surfaces_word);
    };
    surface(".skin", words::on_skin, coat.on_skin, {});
    surface(".faces", words::on_faces, coat.on_joint_faces, words::on_faces_below);
    if (!context.document().pockets.empty())
        surface(".pockets", words::on_pockets, coat.on_pockets, words::on_pockets_below);
    f.text(".note", words::coat_note, coat.note);
    f.put([&] { return on_coat(index, [coat](document::Coat& c) { c = coat; }); });
    in_water_row(context, index);
    const int count = static_cast<int>(context.document().coats.size());
    widgets::gap();
    const int tapped = widgets::button_row(
        context.ui, {{f.id(".earlier"), words::earlier, widgets::ButtonKind::plain, index > 0},
                     {f.id(".later"), words::later, widgets::ButtonKind::plain, index + 1 < count},
                     {f.id(".remove"), words::remove, widgets::ButtonKind::danger}});
    if (tapped == 0 || tapped == 1) {
        const int by = tapped == 0 ? -1 : 1;
        context.change(f.said(words::order_word), state::move_coat(index, by));
        context.view.selection = {ItemKind::coat, index + by};
    }
    if (tapped == 2) {
        context.change(f.said(words::take_away), state::remove_coat(index));
        context.view.selection = {};
    }
    widgets::gap();
}

std::string coat_line(const PanelContext& context, const document::Coat& coat) {
    std::string text = materials::name_of(coat.material);
    text += words::separator;
    text += coat.thickness_m ? text_of(context, *coat.thickness_m, Quantity::thickness)
                             : std::string(coat_kinds[static_cast<std::size_t>(coat.kind)]);
    text += words::separator;
    text += stage_name(coat.stage);
    if (!coat.note.empty()) text = coat.note + words::separator + text;
    return text;
}

/// Of CA and epoxy where a coat is of them or none is there yet.
void coat_cautions(PanelContext& context) {
    const auto& coats = context.document().coats;
    const auto of = [&](std::string_view material) {
        return coats.empty() ||
               std::any_of(coats.begin(), coats.end(),
                           [material](const document::Coat& coat) { return coat.material == material; });
    };
    std::vector<Caution> list;
    if (of("ca")) list.push_back({words::ca_title, cautions::ca});
    list.push_back({words::sanding_title, cautions::sanding});
    list.push_back({words::spray_title, cautions::spray});
    if (of("epoxy")) list.push_back({words::epoxy_title, cautions::epoxy});
    caution_section(context, "section.finish.cautions", list);
}

} // namespace

void finish_panel(PanelContext& context) {
    const auto& coats = context.document().coats;
    const double water = context.evaluation().answers.water_density_kg_m3;
    widgets::heading(context.ui, words::finish_head, words::finish_below);
    coat_cautions(context);
    if (coats.empty()) widgets::paragraph(context.ui, words::no_coats);
    for (int i = 0; i < static_cast<int>(coats.size()); ++i) {
        const auto& coat = coats[static_cast<std::size_t>(i)];
        const std::string name = coat.name.empty() ? std::string(words::new_coat) : coat.name;
        const std::string below = coat_line(context, coat);
        const ledger::Sum sum = coat_sum(context, i);
        const bool chosen = context.row_chosen(ItemKind::coat, i);
        if (widgets::list_row(context.ui, "finish." + std::to_string(i),
                              {name, below, number_of(context, sum.mass.kg, Quantity::mass),
                               unit_of(context, Quantity::mass), chosen, !chosen, true})) {
            context.choose(ItemKind::coat, i);
        }
        if (chosen) coat_editor(context, i);
    }
    if (!coats.empty()) {
        const ledger::Sum all = ledger::sum_of(context.evaluation().ledger, ledger::Kind::coat);
        widgets::figure_row(context.ui, words::together, number_of(context, all.mass.kg, Quantity::mass),
                            unit_of(context, Quantity::mass),
                            signed_mass(context, all.in_water(water).kg) + " " + words::in_the_water,
                            help::Topic::coats);
        widgets::note(context.ui, words::coats_insight);
    }
    widgets::subheading(context.ui, words::add_coat_group);
    const bool room = coats.size() < document::max_coats;
    widgets::gap();
    const int tapped = widgets::button_row(
        context.ui, {{"finish.add_sealer", words::add_sealer, widgets::ButtonKind::plain, room},
                     {"finish.add_paint", words::add_paint, widgets::ButtonKind::plain, room},
                     {"finish.add_clear", words::add_clear, widgets::ButtonKind::plain, room}});
    if (tapped >= 0) {
        const Stage stage = coat_stages[static_cast<std::size_t>(tapped)];
        context.change(std::string(words::add) + " " + words::coat_kind, state::add_coat(stage));
        context.view.selection = {};
    }
    resin_rows(context);
}

} // namespace evenfall::shell::steps
