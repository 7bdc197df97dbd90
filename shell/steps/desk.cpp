#include "steps/desk.hpp"

#include "evenfall.hpp"
#include "look/words_steps.hpp"
#include "widgets/pick_field.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <algorithm>

namespace evenfall::shell::steps {

namespace words = look::words;

void PanelContext::choose(state::ItemKind kind, int index) {
    // A second tap on a row closes it.
    view.selection = chosen(kind, index) ? state::Selection{} : state::Selection{kind, index};
}

bool PanelContext::row_chosen(state::ItemKind kind, int index) {
    if (!chosen(kind, index)) return false;
    if (view.reveal) ImGui::SetScrollHereY(0.05f);
    view.reveal = false;
    return true;
}

bool section(PanelContext& context, const Section& which) {
    const std::string id = which.id;
    state::ViewState& view = context.view;
    const bool sought = view.reveal && std::find(which.holds.begin(), which.holds.end(),
                                                 view.selection.kind) != which.holds.end();
    if (sought) view.sections[id] = true;
    const bool open = view.open(id, which.at_first);
    // The heading stays under the finger; the rows come or go below it from the next frame on.
    if (widgets::section_row(context.ui, id, which.title, which.said, open)) view.sections[id] = !open;
    return open;
}

void caution_section(PanelContext& context, const char* id, const std::vector<Caution>& cautions) {
    if (!section(context, {id, words::cautions_group, {}, true})) return;
    for (const Caution& caution : cautions)
        widgets::caution_box(context.ui, caution.title, caution.text);
    widgets::gap();
}

std::string label_of(std::string_view what, std::string_view kind, int index) {
    return std::string(what) + " " + words::of + " " + std::string(kind) + " " + std::to_string(index + 1);
}

void number(PanelContext& context, const std::string& id, std::string_view label, double value,
            const NumberSpec& spec, const std::string& history,
            const std::function<state::Edit(double)>& edit, std::string_view below) {
    if (const auto set = widgets::number_field(context.ui, id, label, value, spec, below))
        context.change(history, edit(*set));
}

void optional_number(PanelContext& context, const std::string& id, std::string_view label,
                     std::optional<double> value, double start, const NumberSpec& spec,
                     std::string_view absent, const std::string& history,
                     const std::function<state::Edit(std::optional<double>)>& edit, std::string_view below) {
    const auto set = widgets::optional_number_field(context.ui, id, label, value, start, spec, absent, below);
    if (set) context.change(history, edit(*set));
}

std::optional<std::string> pick_material(PanelContext& context, const std::string& id, std::string_view label,
                                         materials::Use use, std::string_view chosen, std::string_view none,
                                         std::string_view none_below) {
    std::vector<widgets::PickOption> options;
    if (!none.empty()) options.push_back({"", std::string(none), std::string(none_below)});
    for (const auto& solid : materials::solids()) {
        if (!solid.serves(use)) continue;
        options.push_back(
            {std::string(solid.id), std::string(solid.name),
             widgets::value_text(solid.density_kg_m3.value, context.ui.units.of(Quantity::density)) +
                 words::separator + std::string(solid.density_kg_m3.source)});
    }
    return widgets::pick_field(context.ui, id, label, options, chosen);
}

std::string text_of(const PanelContext& context, double value, Quantity quantity) {
    return widgets::value_text(value, context.ui.units.of(quantity),
                               quantity == Quantity::thickness ? fine_decimals(context) : -1);
}

int fine_decimals(const PanelContext& context) {
    return context.ui.units.of(Quantity::thickness) == widgets::Unit::mm ? 2 : -1;
}

std::string number_of(const PanelContext& context, double value, Quantity quantity) {
    return widgets::number_text(value, context.ui.units.of(quantity));
}

std::string fall_end_text(const PanelContext& context, double speed_m_s) {
    return widgets::fall_end_text(speed_m_s, context.ui.units.of(Quantity::fall));
}

std::string_view unit_of(const PanelContext& context, Quantity quantity) {
    return widgets::symbol(context.ui.units.of(quantity));
}

std::string titled(const PanelContext& context, std::string_view title, Quantity quantity) {
    std::string text(title);
    text += ' ';
    text += unit_of(context, quantity);
    return text;
}

std::string signed_mass(const PanelContext& context, double mass_kg) {
    return units::with_plus(mass_kg, text_of(context, mass_kg, Quantity::mass));
}

std::string_view provenance_words(materials::Provenance provenance) {
    switch (provenance) {
    case materials::Provenance::read:
        return words::figure_read;
    case materials::Provenance::second_hand:
        return words::figure_second_hand;
    case materials::Provenance::computed:
        return words::figure_computed;
    case materials::Provenance::memory:
        return words::figure_memory;
    case materials::Provenance::practice:
        return words::figure_practice;
    }
    return {};
}

std::string segment_name(const document::Document& document, int segment) {
    const auto index = static_cast<std::size_t>(segment);
    if (segment >= 0 && index < document.segment_names.size() && !document.segment_names[index].empty()) {
        return document.segment_names[index];
    }
    return std::string(words::segment_title) + " " + std::to_string(segment + 1);
}

} // namespace evenfall::shell::steps
