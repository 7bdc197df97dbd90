#include "steps/fields.hpp"
#include "steps/step_panels.hpp"

#include "base/trade.hpp"
#include "look/words_drawer.hpp"
#include "look/words_joints.hpp"
#include "look/words_steps.hpp"
#include "materials/solids.hpp"
#include "state/drawer.hpp"
#include "widgets/button.hpp"
#include "widgets/choice.hpp"
#include "widgets/pick_field.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <array>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using state::Thing;
using state::ThingKind;

const char* kind_word(ThingKind kind) {
    constexpr std::array<const char*, 3> names{words::drawer_part, words::drawer_wire, words::drawer_stock};
    return names[static_cast<std::size_t>(kind)];
}

std::string material_word(const Thing& thing) {
    if (thing.kind == ThingKind::wire)
        return thing.temper == document::WireTemper::soft ? words::temper_soft : words::temper_spring;
    const auto* solid = materials::find_solid(thing.material);
    return std::string(solid != nullptr ? solid->name : std::string_view(thing.material));
}

void thing_editor(Desk& desk, std::size_t index) {
    Thing thing = desk.drawer.things()[index];
    const std::string id = "drawer." + std::to_string(index);
    bool changed = false;
    if (auto named = widgets::text_field(desk.ui, id + ".name", words::name, thing.name);
        named && !named->empty()) {
        thing.name = *named;
        changed = true;
    }
    if (thing.kind == ThingKind::part) {
        if (const auto set = widgets::number_field(desk.ui, id + ".mass", words::mass, thing.mass_kg,
                                                   spec_of(document::field_of<&document::Part::mass_kg>))) {
            thing.mass_kg = *set;
            changed = true;
        }
    } else if (const auto set =
                   widgets::number_field(desk.ui, id + ".diameter", words::drawer_diameter, thing.diameter_m,
                                         spec_of(document::field_of<&document::Fill::stock_diameter_m>))) {
        thing.diameter_m = *set;
        changed = true;
    }
    if (thing.kind == ThingKind::wire) {
        const std::array<std::string_view, 2> tempers{words::temper_spring, words::temper_soft};
        if (const auto tapped = widgets::choice(desk.ui, id + ".temper", words::drawer_temper, tempers,
                                                static_cast<int>(thing.temper))) {
            thing.temper = static_cast<document::WireTemper>(*tapped);
            changed = true;
        }
    } else {
        const unsigned use = static_cast<unsigned>(thing.kind == ThingKind::stock ? materials::Use::ballast
                                                                                  : materials::Use::part);
        std::vector<widgets::PickOption> options;
        for (const auto& solid : materials::solids()) {
            if ((solid.uses & use) != 0u)
                options.push_back({std::string(solid.id), std::string(solid.name), {}});
        }
        if (const auto picked =
                widgets::pick_field(desk.ui, id + ".material", words::material, options, thing.material)) {
            thing.material = *picked;
            changed = true;
        }
    }
    if (changed && !desk.drawer.replace(index, thing)) desk.refusal = words::drawer_same_name;
    widgets::gap();
    const bool fits = thing.kind == ThingKind::part;
    const bool room = desk.document().parts.size() < document::max_hardware;
    const int tapped =
        fits ? widgets::button_row(desk.ui,
                                   {{id + ".put_on", words::drawer_put_on, widgets::ButtonKind::plain, room},
                                    {id + ".out", words::drawer_throw_out, widgets::ButtonKind::danger}})
             : widgets::button_row(desk.ui,
                                   {{id + ".out", words::drawer_throw_out, widgets::ButtonKind::danger}}) +
                   1;
    if (fits && tapped == 0) {
        desk.change(words::drawer_put_on_label + thing.name, state::add_part_from(thing));
        desk.view.selection = {state::ItemKind::part, static_cast<int>(desk.document().parts.size())};
    }
    if (tapped == 1) {
        desk.drawer.throw_out(index);
        desk.motion.drawer_open.reset();
    }
    widgets::gap();
}

/// The pieces of a kind as options; the key is the index in the drawer.
std::vector<widgets::PickOption> things_of(const Desk& desk, ThingKind kind) {
    std::vector<widgets::PickOption> options;
    const auto& things = desk.drawer.things();
    for (std::size_t i = 0; i < things.size(); ++i) {
        if (things[i].kind != kind) continue;
        options.push_back({std::to_string(i), things[i].name,
                           text_of(desk, things[i].diameter_m, Quantity::length) + words::separator +
                               material_word(things[i])});
    }
    return options;
}

const Thing* picked_thing(Desk& desk, const std::string& id, const char* label, ThingKind kind) {
    std::vector<widgets::PickOption> options = things_of(desk, kind);
    if (options.empty()) return nullptr;
    options.insert(options.begin(), {"", words::drawer_none_chosen, {}});
    const auto picked = widgets::pick_field(desk.ui, id, label, options, "");
    const auto& things = desk.drawer.things();
    for (std::size_t i = 0; picked && i < things.size(); ++i) {
        if (*picked == std::to_string(i)) return &things[i];
    }
    return nullptr;
}

} // namespace

void stock_from_drawer(Desk& desk, int hole) {
    const Thing* rod = picked_thing(desk, "lead.hole." + std::to_string(hole) + ".drawer",
                                    words::drawer_stock_pick, ThingKind::stock);
    if (rod == nullptr) return;
    desk.change(words::drawer_put_on_label + rod->name,
                state::on_hole(hole, [thing = *rod](document::Hole& h) {
                    if (!h.fill) h.fill = document::Fill{thing.material, 0.0005, std::nullopt, std::nullopt};
                    h.fill->material = thing.material;
                    h.fill->stock_diameter_m = thing.diameter_m;
                }));
}

void wire_from_drawer(Desk& desk, int joint) {
    const Thing* wire = picked_thing(desk, "joints." + std::to_string(joint) + ".hinge.drawer",
                                     words::drawer_wire_pick, ThingKind::wire);
    if (wire == nullptr) return;
    desk.change(words::drawer_put_on_label + wire->name,
                state::on_joint(joint, [thing = *wire](document::Joint& j) {
                    if (!j.hinge) return;
                    j.hinge->wire_m = thing.diameter_m;
                    j.hinge->temper = thing.temper;
                }));
}

void drawer_rows(Desk& desk) {
    widgets::subheading(desk.ui, words::drawer_head);
    widgets::note(desk.ui, desk.drawer.things().empty() ? words::drawer_empty : words::drawer_below);
    // The list may change while it is drawn, so it is traversed by index and its size read each time.
    for (std::size_t i = 0; i < desk.drawer.things().size(); ++i) {
        const Thing thing = desk.drawer.things()[i];
        const bool open = desk.motion.drawer_open == i;
        const bool part = thing.kind == ThingKind::part;
        const std::string below =
            std::string(kind_word(thing.kind)) + words::separator + material_word(thing);
        if (widgets::list_row(desk.ui, "drawer." + std::to_string(i),
                              {thing.name, below,
                               part ? number_of(desk, thing.mass_kg, Quantity::mass)
                                    : number_of(desk, thing.diameter_m, Quantity::length),
                               unit_of(desk, part ? Quantity::mass : Quantity::length), open, !open, true})) {
            if (open)
                desk.motion.drawer_open.reset();
            else
                desk.motion.drawer_open = i;
        }
        if (open) thing_editor(desk, i);
    }
    widgets::gap();
    const int added = widgets::button_row(desk.ui, {{"drawer.add.part", words::drawer_new_part},
                                                    {"drawer.add.wire", words::drawer_new_wire},
                                                    {"drawer.add.stock", words::drawer_new_stock}});
    if (added >= 0) {
        Thing thing;
        thing.kind = static_cast<ThingKind>(added);
        std::size_t number = desk.drawer.things().size();
        do
            thing.name = std::string(kind_word(thing.kind)) + " " + std::to_string(++number);
        while (desk.drawer.holds(thing.kind, thing.name));
        thing.mass_kg = added == 0 ? units::kg_from_g(1.0) : 0.0;
        thing.diameter_m = units::m_from_mm(added == 1 ? 0.9 : 6.0);
        if (thing.kind == ThingKind::stock) thing.material = "lead";
        if (desk.drawer.put(thing))
            desk.motion.drawer_open = desk.drawer.things().size() - 1;
        else
            desk.refusal = words::drawer_full;
    }
    widgets::gap();
    const int file = widgets::button_row(
        desk.ui,
        {{"drawer.save", words::drawer_save, widgets::ButtonKind::quiet, !desk.drawer.things().empty()},
         {"drawer.load", words::drawer_load, widgets::ButtonKind::quiet}});
    if (file == 0) desk.ui.host->save_file(words::drawer_file, state::write_drawer(desk.drawer));
    if (file == 1) desk.ui.host->open_file();
}

} // namespace evenfall::shell::steps
