#include "steps/step_panels.hpp"

#include "evenfall.hpp"
#include "look/words_choice.hpp"
#include "look/words_steps.hpp"
#include "widgets/choice.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"
#include "workshop.hpp"

#include <array>
#include <span>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using widgets::Align;

/// Rows of a name and figures; a tap on one shows why its plan falls short, one on their head explains them.
/// Woods have their hardness beside their density.
void table(PanelContext& context, const std::string& id, const char* first, const std::string& second,
           const std::vector<compare::Option>& options,
           std::string (*figure)(const PanelContext&, const compare::Option&), help::Topic topic) {
    const bool hardness = topic == help::Topic::woods;
    const std::array<widgets::TableColumn, 4> four{{{0.0f, 0.38f, Align::left},
                                                    {0.38f, 0.62f, Align::right},
                                                    {0.80f, 1.0f, Align::right},
                                                    {0.62f, 0.80f, Align::right}}};
    const std::array<widgets::TableColumn, 3> three{
        {{0.0f, 0.52f, Align::left}, {0.52f, 0.76f, Align::right}, {0.76f, 1.0f, Align::right}}};
    const std::span<const widgets::TableColumn> columns =
        hardness ? std::span<const widgets::TableColumn>(four) : std::span<const widgets::TableColumn>(three);
    const std::string fill = titled(context, words::col_fill, Quantity::mass);
    const std::array<std::string_view, 4> titles{first, second, fill, words::col_hard};
    widgets::table_head(context.ui, columns, std::span(titles).first(columns.size()), topic);
    for (const compare::Option& option : options) {
        const std::string middle = figure(context, option);
        const std::string last = option.met && option.fill_kg
                                     ? number_of(context, *option.fill_kg, Quantity::mass)
                                     : std::string(words::not_met);
        const std::string hard = option.hardness_n
                                     ? widgets::number_text(*option.hardness_n, widgets::Unit::one, 0)
                                     : std::string(words::no_figure);
        const std::array<widgets::Cell, 4> cells{
            {{option.name, {}, false}, {middle, {}, false}, {last, {}, option.met}, {hard, {}, false}}};
        const std::string key = id + "." + option.id;
        const bool chosen = context.motion.compared == key;
        if (widgets::table_row(context.ui, key, columns, std::span(cells).first(columns.size()), chosen))
            context.motion.compared = chosen ? std::string() : key;
        if (chosen && !option.why.empty()) widgets::problem_line(context.ui, option.why);
    }
}

/// The table is computed on request, and again when the kept lure has changed, but not during a drag.
template <class Ask>
const std::vector<compare::Option>* asked(PanelContext& context, state::Compared& kept, Ask ask) {
    if (kept.revision == context.session.revision()) return kept.options ? &*kept.options : nullptr;
    kept.revision = context.session.revision();
    auto made = ask(context.session.kept());
    kept.options = made.ok() ? std::optional(std::move(made).value()) : std::nullopt;
    return kept.options ? &*kept.options : nullptr;
}

/// A common size of each, to start from.
double usual_size_m(stock::Form form) {
    return form == stock::Form::rod ? stock::Stock{}.size_m : form == stock::Form::shot ? 0.003 : 0.001;
}

} // namespace

void wood_table_rows(PanelContext& context) {
    if (!section(context, {"section.shape.woods", words::woods_group})) return;
    widgets::note(context.ui, words::woods_below);
    const auto* options = asked(context, context.motion.woods, compare::woods);
    if (options == nullptr) return;
    table(
        context, "woods", words::col_wood, std::string(unit_of(context, Quantity::density)), *options,
        [](const PanelContext& d, const compare::Option& o) {
            return number_of(d, o.density_kg_m3, Quantity::density) + " ±" +
                   widgets::number_text(o.spread, widgets::Unit::percent, 0) + " %";
        },
        help::Topic::woods);
}

void metal_table_rows(PanelContext& context) {
    if (!section(context, {"section.lead.metals", words::metals_group})) return;
    widgets::note(context.ui, words::metals_below);
    const auto* options = asked(context, context.motion.metals, compare::metals);
    if (options == nullptr) return;
    table(
        context, "metals", words::col_metal, titled(context, words::col_deepest, Quantity::length), *options,
        [](const PanelContext& d, const compare::Option& o) {
            return number_of(d, o.deepest_m, Quantity::length);
        },
        help::Topic::metals);
}

void stock_rows(PanelContext& context) {
    using stock::Form;
    stock::Stock& wish = context.motion.stock;
    const auto listed = stock::list(context.document(), context.evaluation(), wish);
    if (!listed.ok() || listed->holes.empty()) return;
    if (!section(context, {"section.lead.stock", words::stock_group})) return;
    if (const auto tapped =
            widgets::choice(context.ui, "stock.form", words::stock_forms, static_cast<int>(wish.form))) {
        wish.form = static_cast<Form>(*tapped);
        wish.size_m = usual_size_m(wish.form);
    }
    const char* size = wish.form == Form::sheet ? words::stock_thickness : words::stock_diameter;
    if (const auto set = widgets::number_field(context.ui, "stock.size", size, wish.size_m,
                                               {Quantity::length, 0.0001, 0.05, {}, -1}))
        wish.size_m = *set;
    if (const auto picked = pick_material(context, "stock.material", words::material, materials::Use::ballast,
                                          wish.material, words::stock_as_filled))
        wish.material = *picked;
    const auto row = [&](const std::string& title, const auto& amount, std::string_view below) {
        switch (wish.form) {
        case Form::rod:
            widgets::figure_row(context.ui, title, number_of(context, amount.length_m, Quantity::length),
                                unit_of(context, Quantity::length), below, help::Topic::stock);
            break;
        case Form::shot: {
            const std::string off = words::stock_off + signed_mass(context, amount.over_kg);
            widgets::figure_row(context.ui, title, std::to_string(amount.count), {},
                                below.empty() ? std::string_view(off) : below, help::Topic::stock);
            break;
        }
        case Form::sheet:
            widgets::figure_row(
                context.ui, title,
                widgets::number_text(units::cm2_from_m2(amount.area_m2), widgets::Unit::one, 2),
                words::stock_area_unit, below, help::Topic::stock);
            break;
        }
    };
    for (const auto& hole : listed->holes) {
        const auto& drawn = context.document().holes[static_cast<std::size_t>(hole.hole)];
        row(hole_label(static_cast<std::size_t>(hole.hole), drawn.name), hole,
            hole.enters == false ? words::stock_too_thick : std::string_view{});
    }
    row(words::together, *listed, {});
}

} // namespace evenfall::shell::steps
