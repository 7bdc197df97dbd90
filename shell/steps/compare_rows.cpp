#include "steps/step_panels.hpp"

#include "base/trade.hpp"
#include "bench/compare.hpp"
#include "look/words_choice.hpp"
#include "look/words_steps.hpp"
#include "widgets/button.hpp"
#include "widgets/choice.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"
#include "workshop/stock.hpp"

#include <array>
#include <span>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using widgets::Align;

/// Rows of a name and figures; a tap on one shows why its plan falls short. Woods have their hardness beside
/// their density.
void table(Desk& desk, const std::string& id, const char* first, const std::string& second,
           const std::vector<compare::Option>& options,
           std::string (*figure)(const Desk&, const compare::Option&), bool hardness = false) {
    const std::array<widgets::Column, 4> four{{{0.0f, 0.38f, Align::left},
                                               {0.38f, 0.62f, Align::right},
                                               {0.80f, 1.0f, Align::right},
                                               {0.62f, 0.80f, Align::right}}};
    const std::array<widgets::Column, 3> three{
        {{0.0f, 0.52f, Align::left}, {0.52f, 0.76f, Align::right}, {0.76f, 1.0f, Align::right}}};
    const std::span<const widgets::Column> columns =
        hardness ? std::span<const widgets::Column>(four) : std::span<const widgets::Column>(three);
    const std::string fill = titled(desk, words::col_fill, Quantity::mass);
    const std::array<std::string_view, 4> titles{first, second, fill, words::col_hard};
    widgets::table_head(desk.ui, columns, std::span(titles).first(columns.size()));
    for (const compare::Option& option : options) {
        const std::string middle = figure(desk, option);
        const std::string last = option.met && option.fill_kg
                                     ? number_of(desk, *option.fill_kg, Quantity::mass)
                                     : std::string(words::not_met);
        const std::string hard = option.hardness_n
                                     ? widgets::number_text(*option.hardness_n, widgets::Unit::one, 0)
                                     : std::string(words::no_figure);
        const std::array<widgets::Cell, 4> cells{
            {{option.name, {}, false}, {middle, {}, false}, {last, {}, option.met}, {hard, {}, false}}};
        const std::string key = id + "." + option.id;
        const bool chosen = desk.motion.compared == key;
        if (widgets::table_row(desk.ui, key, columns, std::span(cells).first(columns.size()), chosen))
            desk.motion.compared = chosen ? std::string() : key;
        if (chosen && !option.why.empty()) widgets::problem_line(desk.ui, option.why);
    }
}

/// The table is computed on request, and again when the kept lure has changed, but not during a drag.
template <class Ask>
const std::vector<compare::Option>* asked(Desk& desk, state::Compared& kept, Ask ask) {
    if (kept.revision == desk.session.revision()) return kept.options ? &*kept.options : nullptr;
    kept.revision = desk.session.revision();
    auto made = ask(desk.session.kept());
    kept.options = made.ok() ? std::optional(std::move(made).value()) : std::nullopt;
    return kept.options ? &*kept.options : nullptr;
}

bool shown(Desk& desk, state::Compared& kept, const char* id, const char* show) {
    if (kept.wanted) {
        if (widgets::button(desk.ui, id, words::compare_hide, widgets::ButtonKind::quiet))
            kept.wanted = false;
    } else if (widgets::button(desk.ui, id, show)) {
        kept.wanted = true;
    }
    return kept.wanted;
}

/// A common size of each, to start from.
double usual_size_m(stock::Form form) {
    return form == stock::Form::rod ? stock::Stock{}.size_m : form == stock::Form::shot ? 0.003 : 0.001;
}

} // namespace

void wood_table_rows(Desk& desk) {
    widgets::subheading(desk.ui, words::woods_group);
    if (!shown(desk, desk.motion.woods, "woods.show", words::woods_show)) return;
    widgets::note(desk.ui, words::woods_below);
    const auto* options = asked(desk, desk.motion.woods, compare::woods);
    if (options == nullptr) return;
    table(
        desk, "woods", words::col_wood, std::string(unit_of(desk, Quantity::density)), *options,
        [](const Desk& d, const compare::Option& o) {
            return number_of(d, o.density_kg_m3, Quantity::density) + " ±" +
                   widgets::number_text(o.spread, widgets::Unit::percent, 0) + " %";
        },
        true);
}

void metal_table_rows(Desk& desk) {
    widgets::subheading(desk.ui, words::metals_group);
    if (!shown(desk, desk.motion.metals, "metals.show", words::metals_show)) return;
    widgets::note(desk.ui, words::metals_below);
    const auto* options = asked(desk, desk.motion.metals, compare::metals);
    if (options == nullptr) return;
    table(
        desk, "metals", words::col_metal, titled(desk, words::col_deepest, Quantity::length), *options,
        [](const Desk& d, const compare::Option& o) { return number_of(d, o.deepest_m, Quantity::length); });
}

void stock_rows(Desk& desk) {
    using stock::Form;
    stock::Stock& wish = desk.motion.stock;
    const auto listed = stock::list(desk.document(), desk.evaluation(), wish);
    if (!listed.ok() || listed->holes.empty()) return;
    widgets::subheading(desk.ui, words::stock_group);
    if (const auto tapped =
            widgets::choice(desk.ui, "stock.form", words::stock_forms, static_cast<int>(wish.form))) {
        wish.form = static_cast<Form>(*tapped);
        wish.size_m = usual_size_m(wish.form);
    }
    const char* size = wish.form == Form::sheet ? words::stock_thickness : words::stock_diameter;
    if (const auto set = widgets::number_field(desk.ui, "stock.size", size, wish.size_m,
                                               {Quantity::length, 0.0001, 0.05, {}, -1}))
        wish.size_m = *set;
    if (const auto picked = pick_material(desk, "stock.material", words::material, materials::Use::ballast,
                                          wish.material, words::stock_as_filled))
        wish.material = *picked;
    const auto row = [&](const std::string& title, const auto& amount, std::string_view below) {
        switch (wish.form) {
        case Form::rod:
            widgets::figure_row(desk.ui, title, number_of(desk, amount.length_m, Quantity::length),
                                unit_of(desk, Quantity::length), below);
            break;
        case Form::shot: {
            const std::string off = words::stock_off + signed_mass(desk, amount.over_kg);
            widgets::figure_row(desk.ui, title, std::to_string(amount.count), {},
                                below.empty() ? std::string_view(off) : below);
            break;
        }
        case Form::sheet:
            widgets::figure_row(
                desk.ui, title,
                widgets::number_text(units::cm2_from_m2(amount.area_m2), widgets::Unit::one, 2),
                words::stock_area_unit, below);
            break;
        }
    };
    for (const auto& hole : listed->holes) {
        const auto& drawn = desk.document().holes[static_cast<std::size_t>(hole.hole)];
        std::string title = std::to_string(hole.hole + 1);
        if (!drawn.name.empty())
            title = drawn.name.rfind(title, 0) == 0 ? drawn.name : title + " " + drawn.name;
        row(title, hole, hole.enters == false ? words::stock_too_thick : std::string_view{});
    }
    row(words::together, *listed, {});
}

} // namespace evenfall::shell::steps
