#include "steps/fields.hpp"
#include "steps/step_panels.hpp"

#include "ledger/fold.hpp"
#include "look/words_drawer.hpp"
#include "look/words_steps.hpp"
#include "materials/solids.hpp"
#include "widgets/button.hpp"
#include "widgets/pick_field.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <array>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using state::ItemKind;
using state::on_part;

void segment_choice(Desk& desk, Fields& f, document::Part& part) {
    const auto& document = desk.document();
    std::vector<widgets::PickOption> options{{"", words::nearest, {}}};
    for (int s = 0; s < static_cast<int>(document.segment_names.size()); ++s) {
        options.push_back({std::to_string(s), segment_name(document, s), {}});
    }
    const std::string chosen = part.segment ? std::to_string(*part.segment) : std::string{};
    if (auto picked = widgets::pick_field(desk.ui, f.id(".segment"), words::belongs_to, options, chosen)) {
        part.segment.reset();
        for (int s = 0; s < static_cast<int>(document.segment_names.size()); ++s) {
            if (std::to_string(s) == *picked) part.segment = s;
        }
        f.changed(words::belongs_to);
    }
}

void part_editor(Desk& desk, int index) {
    using document::Part;
    Part part = desk.document().parts[static_cast<std::size_t>(index)];
    Fields f(desk, "hardware." + std::to_string(index), words::part_kind, index);
    f.text(".name", words::name, part.name);
    f.number<&Part::mass_kg>(".mass", words::mass, part, words::part_mass_below);
    f.material(".material", words::material, materials::Use::part, part.material);
    const std::array<std::string_view, 2> stages{words::stage_fitted, words::stage_dressed_short};
    int dressed = part.stage == Stage::dressed ? 1 : 0;
    if (f.choice(".stage", {}, stages, dressed, words::stage))
        part.stage = dressed == 1 ? Stage::dressed : Stage::hardware;
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
    segment_choice(desk, f, part);
    f.put([&] { return on_part(index, [part](document::Part& p) { p = part; }); });
    widgets::gap();
    const int tapped =
        widgets::button_row(desk.ui, {{f.id(".duplicate"), words::duplicate},
                                      {f.id(".drawer"), words::drawer_put_in},
                                      {f.id(".remove"), words::remove, widgets::ButtonKind::danger}});
    if (tapped == 0) desk.change(f.said(words::duplicate), state::duplicate_part(index));
    if (tapped == 1) {
        if (part.name.empty())
            desk.refusal = words::drawer_nameless;
        else if (!desk.drawer.put(state::thing_of(part)))
            desk.refusal = words::drawer_full;
    }
    if (tapped == 2) {
        desk.change(f.said(words::take_away), state::remove_part(index));
        desk.view.selection = {};
    }
    widgets::gap();
}

void part_group(Desk& desk, Stage stage, const char* title) {
    const auto& document = desk.document();
    widgets::subheading(desk.ui, title);
    bool any = false;
    for (int i = 0; i < static_cast<int>(document.parts.size()); ++i) {
        const auto& part = document.parts[static_cast<std::size_t>(i)];
        if (part.stage != stage) continue;
        any = true;
        const std::string name = part.name.empty() ? std::string(words::new_part) : part.name;
        const auto* solid = materials::find_solid(part.material);
        const std::string below =
            text_of(desk, part.at_m.x, Quantity::length) + words::separator +
            std::string(solid != nullptr ? solid->name : std::string_view(part.material));
        const bool chosen = desk.row_chosen(ItemKind::part, i);
        if (widgets::list_row(desk.ui, "hardware." + std::to_string(i),
                              {name, below, number_of(desk, part.mass_kg, Quantity::mass),
                               unit_of(desk, Quantity::mass), chosen, !chosen, true})) {
            desk.choose(ItemKind::part, i);
        }
        if (chosen) part_editor(desk, i);
    }
    if (!any) {
        widgets::note(desk.ui, words::no_parts);
        return;
    }
    const ledger::Sum sum = ledger::sum_if(desk.evaluation().ledger, [stage](const ledger::Line& line) {
        return line.kind == ledger::Kind::part && line.stage == stage;
    });
    const double water = desk.evaluation().answers.water_density_kg_m3;
    widgets::figure_row(desk.ui, words::together, number_of(desk, sum.mass.kg, Quantity::mass),
                        unit_of(desk, Quantity::mass),
                        signed_mass(desk, sum.in_water(water).kg) + " " + words::in_the_water);
}

} // namespace

void hardware_panel(Desk& desk) {
    widgets::heading(desk.ui, words::hardware_head, words::hardware_below);
    part_group(desk, Stage::hardware, words::fitted_group);
    part_group(desk, Stage::dressed, words::dressed_group);
    const bool room = desk.document().parts.size() < document::max_hardware;
    widgets::gap();
    const int tapped = widgets::button_row(
        desk.ui, {{"hardware.add", words::add_fitting, widgets::ButtonKind::plain, room},
                  {"hardware.dress", words::add_dressing, widgets::ButtonKind::plain, room}});
    if (tapped >= 0) {
        const Stage stage = tapped == 0 ? Stage::hardware : Stage::dressed;
        desk.change(tapped == 0 ? words::add_fitting : words::add_dressing, state::add_part(stage));
        desk.view.selection = {ItemKind::part, static_cast<int>(desk.document().parts.size())};
    }
    drawer_rows(desk);
    pocket_rows(desk);
    tail_rows(desk);
    widgets::gap();
    widgets::caution_box(desk.ui, words::plastisol_title, words::plastisol_caution);
}

} // namespace evenfall::shell::steps
