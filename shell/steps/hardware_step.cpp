#include "steps/fields.hpp"
#include "steps/step_panels.hpp"

#include "evenfall.hpp"
#include "look/words_drawer.hpp"
#include "look/words_steps.hpp"
#include "starter.hpp"
#include "widgets/button.hpp"
#include "widgets/pick_field.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <algorithm>
#include <array>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using state::ItemKind;
using state::on_part;

void segment_choice(PanelContext& context, Fields& f, document::Part& part) {
    const auto& document = context.document();
    std::vector<widgets::PickOption> options{{"", words::nearest, {}}};
    for (int s = 0; s < static_cast<int>(document.segment_names.size()); ++s) {
        options.push_back({std::to_string(s), segment_name(document, s), {}});
    }
    const std::string chosen = part.segment ? std::to_string(*part.segment) : std::string{};
    if (auto picked = widgets::pick_field(context.ui, f.id(".segment"), words::belongs_to, options, chosen)) {
        part.segment.reset();
        for (int s = 0; s < static_cast<int>(document.segment_names.size()); ++s) {
            if (std::to_string(s) == *picked) part.segment = s;
        }
        f.changed(words::belongs_to);
    }
}

/// A usual hook for this part; true where one was picked.
bool hook_choice(PanelContext& context, Fields& f, document::Part& part) {
    std::vector<widgets::PickOption> options;
    std::string chosen;
    for (const materials::Hook& hook : materials::hooks()) {
        const std::string size(hook.size);
        options.push_back({size, words::hook_of_size + size,
                           text_of(context, hook.mass_kg, Quantity::mass) + words::separator +
                               text_of(context, hook.reach_m, Quantity::length)});
        if (part.mass_kg == hook.mass_kg && part.reach_m == hook.reach_m) chosen = size;
    }
    const auto picked = widgets::pick_field(context.ui, f.id(".hook"), words::hook_size, options, chosen);
    if (!picked) return false;
    for (const materials::Hook& hook : materials::hooks()) {
        if (hook.size != *picked) continue;
        part.name = words::hook_of_size + *picked;
        part.material = "steel";
        part.mass_kg = hook.mass_kg;
        part.reach_m = hook.reach_m;
        part.mass_sigma_kg.reset();
    }
    return true;
}

void part_editor(PanelContext& context, int index) {
    using document::Part;
    Part part = context.document().parts[static_cast<std::size_t>(index)];
    Fields f(context, "hardware." + std::to_string(index), words::part_kind, index);
    f.text(".name", words::name, part.name);
    if (part.stage == Stage::rigged && hook_choice(context, f, part)) f.changed(words::hook_size);
    f.number<&Part::mass_kg>(".mass", words::mass, part, words::part_mass_below);
    f.material(".material", words::material, materials::Use::part, part.material);
    const std::array<std::string_view, 3> stages{words::stage_fitted, words::stage_painted_part,
                                                 words::stage_rigged_short};
    int stage = part.stage == Stage::hardware ? 0 : part.stage == Stage::painted ? 1 : 2;
    if (f.choice(".stage", {}, stages, stage, words::stage))
        part.stage =
            std::array{Stage::hardware, Stage::painted, Stage::rigged}[static_cast<std::size_t>(stage)];
    f.number<document::part_at<&Vec3::x>>(".x", words::place_x, part);
    f.number<document::part_at<&Vec3::z>>(".z", words::place_z, part, words::place_z_below);
    f.number<document::part_at<&Vec3::y>>(".y", words::place_y, part, words::place_y_below);
    f.number<&Part::embedded>(".embedded", words::embedded, part, words::embedded_below, {{}, 0.1, 0});
    // The core takes 3 % of the mass where no spread is given; the keypad starts from the same.
    constexpr double usual_share = 0.03;
    f.optional_number<&Part::mass_sigma_kg>(".sigma", words::mass_sigma, part, usual_share * part.mass_kg,
                                            words::mass_sigma_absent);
    f.optional_number<&Part::reach_m>(".reach", words::part_reach, part, 0.0, words::part_reach_absent,
                                      words::part_reach_below);
    segment_choice(context, f, part);
    f.put([&] { return on_part(index, [part](document::Part& p) { p = part; }); });
    widgets::gap();
    const int tapped =
        widgets::button_row(context.ui, {{f.id(".duplicate"), words::duplicate},
                                         {f.id(".drawer"), words::drawer_put_in},
                                         {f.id(".remove"), words::remove, widgets::ButtonKind::danger}});
    if (tapped == 0) context.change(f.said(words::duplicate), state::duplicate_part(index));
    if (tapped == 1) {
        if (part.name.empty())
            context.refusal = words::drawer_nameless;
        else if (!context.drawer.put(state::drawer_item_of(part)))
            context.refusal = words::drawer_full;
    }
    if (tapped == 2) {
        context.change(f.said(words::take_away), state::remove_part(index));
        context.view.selection = {};
    }
    widgets::gap();
}

void part_group(PanelContext& context, Stage stage, const char* title) {
    const auto& document = context.document();
    widgets::subheading(context.ui, title);
    ledger::Sum sum;
    bool any = false;
    for (int i = 0; i < static_cast<int>(document.parts.size()); ++i) {
        const auto& part = document.parts[static_cast<std::size_t>(i)];
        if (part.stage != stage) continue;
        any = true;
        sum += ledger::sum_of(context.evaluation().ledger, ledger::Kind::part, i);
        const std::string name = part.name.empty() ? std::string(words::new_part) : part.name;
        const std::string below = text_of(context, part.at_m.x, Quantity::length) + words::separator +
                                  materials::name_of(part.material);
        const bool chosen = context.row_chosen(ItemKind::part, i);
        if (widgets::list_row(context.ui, "hardware." + std::to_string(i),
                              {name, below, number_of(context, part.mass_kg, Quantity::mass),
                               unit_of(context, Quantity::mass), chosen, !chosen, true})) {
            context.choose(ItemKind::part, i);
        }
        if (chosen) part_editor(context, i);
    }
    if (!any) {
        widgets::note(context.ui, words::no_parts);
        return;
    }
    const double water = context.evaluation().answers.water_density_kg_m3;
    widgets::figure_row(context.ui, words::together, number_of(context, sum.mass.kg, Quantity::mass),
                        unit_of(context, Quantity::mass),
                        signed_mass(context, sum.in_water(water).kg) + " " + words::in_the_water,
                        help::Topic::parts);
}

} // namespace

void hardware_panel(PanelContext& context) {
    widgets::heading(context.ui, words::hardware_head, words::hardware_below);
    swim_change_rows(context);
    caution_section(context, "section.hardware.cautions", {{words::hooks_title, cautions::hooks}});
    hanger_rows(context);
    part_group(context, Stage::hardware, words::fitted_group);
    const auto& parts = context.document().parts;
    if (std::any_of(parts.begin(), parts.end(),
                    [](const document::Part& part) { return part.stage == Stage::painted; }))
        part_group(context, Stage::painted, words::painted_group);
    part_group(context, Stage::rigged, words::rigged_group);
    const bool room = context.document().parts.size() < document::max_hardware;
    widgets::gap();
    const int tapped = widgets::button_row(
        context.ui, {{"hardware.add", words::add_fitting, widgets::ButtonKind::plain, room},
                     {"hardware.dress", words::add_dressing, widgets::ButtonKind::plain, room}});
    if (tapped >= 0) {
        const Stage stage = tapped == 0 ? Stage::hardware : Stage::rigged;
        context.change(tapped == 0 ? words::add_fitting : words::add_dressing, state::add_part(stage));
        context.view.selection = {ItemKind::part, static_cast<int>(context.document().parts.size())};
    }
    drawer_rows(context);
    pocket_rows(context);
    tail_rows(context);
}

} // namespace evenfall::shell::steps
