#include "steps/fields.hpp"
#include "steps/step_panels.hpp"

#include "evenfall.hpp"
#include "look/words_help.hpp"
#include "look/words_steps.hpp"
#include "widgets/choice.hpp"
#include "widgets/pick_field.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <array>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using state::on_document;

std::string gravity_text(const materials::Wood& wood) {
    const auto& figure = wood.sg_12 ? wood.sg_12 : wood.sg_green;
    if (!figure) return {};
    return "SG " + widgets::number_text(figure->value, widgets::Unit::one, 2) +
           (wood.sg_12 ? " at 12 %" : " green");
}

/// How closely it is carved, and what that does.
void carving_row(PanelContext& context) {
    constexpr std::array<std::string_view, 3> names{words::carving_careful, words::carving_usual,
                                                    words::carving_rough};
    document::Carving carving = context.document().shape.carving;
    Fields f(context, "shape");
    f.choice(".carving", words::carving, names, carving);
    f.put([&] { return on_document([carving](document::Document& d) { d.shape.carving = carving; }); });
    const Evaluation& evaluation = context.evaluation();
    widgets::note(context.ui,
                  ledger::carved_size_note(ledger::carved_size(context.document(), evaluation.body),
                                           evaluation.answers.water_density_kg_m3));
}

void wood_rows(PanelContext& context) {
    const auto& wood = context.document().wood;
    const auto* entry = materials::find_wood(wood.species);
    const std::string name(entry != nullptr ? entry->name : std::string_view(wood.species));
    if (!section(context, {"section.shape.wood", words::wood_group, name.substr(0, name.find(','))})) return;
    std::vector<widgets::PickOption> options;
    for (const auto& other : materials::woods()) {
        const auto& figure = other.sg_12 ? other.sg_12 : other.sg_green;
        options.push_back(
            {std::string(other.id), std::string(other.name),
             gravity_text(other) + words::separator +
                 std::string(figure ? provenance_words(figure->provenance) : std::string_view{})});
    }
    if (auto picked = widgets::pick_field(context.ui, "shape.wood", words::species, options, wood.species)) {
        context.change(words::species,
                       on_document([id = *picked](document::Document& d) { d.wood.species = id; }));
    }
    if (entry != nullptr) {
        const auto& figure = entry->sg_12 ? entry->sg_12 : entry->sg_green;
        if (figure) {
            widgets::note(context.ui, gravity_text(*entry) + ", " +
                                          std::string(provenance_words(figure->provenance)) + ": " +
                                          std::string(figure->source));
        }
    }
    document::Wood held = wood;
    Fields f(context, "shape");
    double moisture = held.moisture_percent / 100.0;
    constexpr document::NumberField percent = document::field_of<&document::Wood::moisture_percent>;
    f.number(".moisture", words::moisture, moisture,
             {Quantity::percent, percent.min / 100.0, percent.max / 100.0, 0.005, 1}, words::moisture_below);
    if (moisture != held.moisture_percent / 100.0) held.moisture_percent = 100.0 * moisture;
    const double table =
        entry != nullptr ? materials::wood_density_kg_m3(*entry, wood.moisture_percent) : 500.0;
    f.optional_number<&document::Wood::density_kg_m3>(".density", words::own_density, held, table,
                                                      words::from_table, words::own_density_below);
    f.optional_number<&document::Wood::density_spread>(".density_spread", words::density_spread, held,
                                                       wood.density_kg_m3 ? 0.02 : 0.10, words::usual,
                                                       words::density_spread_below);
    f.put([&] { return on_document([held](document::Document& d) { d.wood = held; }); });
    const double now = wood.density_kg_m3.value_or(table);
    if (widgets::figure_row(context.ui, words::density_now, number_of(context, now, Quantity::density),
                            unit_of(context, Quantity::density), {}, help::Topic::wood_density)) {
        widgets::went_in(context.ui, words::went_species, text_of(context, table, Quantity::density));
        widgets::went_in(context.ui, words::went_moisture, text_of(context, moisture, Quantity::percent));
    }
    carving_row(context);
}

void size_rows(PanelContext& context) {
    const auto& document = context.document();
    const std::string sides = number_of(context, state::drawn_length_m(document), Quantity::length) + " × " +
                              number_of(context, state::drawn_height_m(document), Quantity::length) + " × " +
                              text_of(context, state::drawn_width_m(document), Quantity::length);
    if (!section(context, {"section.shape.size", words::size_group, sides, true})) return;
    // No fields of the document: the whole drawing is scaled. At most what its curves may hold.
    const double longest_m = document::most_si(document::points_of<&document::Shape::back>.first);
    const double widest_m = 2.0 * document::most_si(document::points_of<&document::Shape::half_width>.second);
    number(context, "shape.length", words::length_field, state::drawn_length_m(document),
           {Quantity::length, 0.02, longest_m, {}, -1}, words::length_field, state::scale_whole,
           words::length_below);
    number(context, "shape.height", words::height_field, state::drawn_height_m(document),
           {Quantity::length, 0.003, widest_m, {}, -1}, words::height_field, state::scale_height,
           words::height_below);
    number(context, "shape.thickness", words::width_field, state::drawn_width_m(document),
           {Quantity::length, 0.002, widest_m, {}, -1}, words::width_field, state::scale_width,
           words::width_below);
    by_hand_rows(context);
}

state::Edit section_kind(document::SectionKind kind) {
    return on_document([kind](document::Document& d) {
        auto& section = d.shape.section;
        section.kind = kind;
        if (kind == document::SectionKind::chamfered && section.corner_cut.empty())
            section.corner_cut = {{0.0, 0.3}};
        if (kind == document::SectionKind::drawn && section.half_outline.size() < 3) {
            section.half_outline = {{0.0, -1.0}, {0.55, -0.85}, {0.9, -0.4}, {1.0, 0.1},
                                    {0.8, 0.6},  {0.4, 0.92},   {0.0, 1.0}};
        }
    });
}

void section_rows(PanelContext& context) {
    const auto& cut = context.document().shape.section;
    const std::array<std::string_view, 3> kinds{words::section_round, words::section_chamfer,
                                                words::section_free};
    const auto kind = static_cast<std::size_t>(cut.kind);
    if (!section(context, {"section.shape.section",
                           words::section_group,
                           std::string(kinds[kind]),
                           false,
                           {state::ItemKind::section_point}}))
        return;
    if (const auto tapped = widgets::choice(context.ui, "shape.section", kinds, static_cast<int>(kind))) {
        context.change(words::section_group, section_kind(static_cast<document::SectionKind>(*tapped)));
    }
    const std::array<const char*, 3> notes{words::section_round_note, words::section_chamfer_note,
                                           words::section_free_note};
    widgets::note(context.ui, notes[kind]);
    if (cut.curve().size() == 1 && cut.kind != document::SectionKind::drawn) {
        const bool round = cut.kind == document::SectionKind::rounded;
        number(context, round ? "shape.exponent" : "shape.corner_cut",
               round ? words::section_exponent : words::section_cut, cut.curve().front().value,
               spec_of(document::section_field(cut.kind).second, {{}, round ? 0.1 : 0.05, 2}),
               words::curve_corners, [](double v) {
                   return on_document([v](document::Document& d) {
                       if (!d.shape.section.curve().empty()) d.shape.section.curve().front().value = v;
                   });
               });
    }
    section_point_rows(context);
}

} // namespace

void shape_panel(PanelContext& context) {
    const auto& document = context.document();
    widgets::heading(context.ui, words::shape_head, words::shape_below);
    if (auto named = widgets::text_field(context.ui, "shape.name", words::name, document.name)) {
        context.change(words::name, on_document([text = *named](document::Document& d) { d.name = text; }));
    }
    if (auto noted = widgets::text_field(context.ui, "shape.note", words::note_field, document.note)) {
        context.change(words::note_field,
                       on_document([text = *noted](document::Document& d) { d.note = text; }));
    }
    size_rows(context);
    picture_rows(context);
    wood_rows(context);
    weighed_board_rows(context);
    wood_table_rows(context);
    section_rows(context);
    curve_rows(context);
    board_rows(context);
    measured_rows(context);
}

} // namespace evenfall::shell::steps
