#include "steps/fields.hpp"
#include "steps/step_panels.hpp"

#include "evenfall.hpp"
#include "look/words_drawer.hpp"
#include "look/words_joints.hpp"
#include "look/words_steps.hpp"
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
using state::DrawerItem;
using state::DrawerItemKind;

const char* kind_word(DrawerItemKind kind) {
    constexpr std::array<const char*, 3> names{words::drawer_part, words::drawer_wire, words::drawer_stock};
    return names[static_cast<std::size_t>(kind)];
}

std::string material_word(const DrawerItem& thing) {
    if (thing.kind == DrawerItemKind::wire)
        return thing.temper == document::WireTemper::soft ? words::temper_soft : words::temper_spring;
    return materials::name_of(thing.material);
}

void thing_editor(PanelContext& context, std::size_t index) {
    DrawerItem thing = context.drawer.things()[index];
    const std::string id = "drawer." + std::to_string(index);
    bool changed = false;
    if (auto named = widgets::text_field(context.ui, id + ".name", words::name, thing.name);
        named && !named->empty()) {
        thing.name = *named;
        changed = true;
    }
    if (thing.kind == DrawerItemKind::part) {
        if (const auto set = widgets::number_field(context.ui, id + ".mass", words::mass, thing.mass_kg,
                                                   spec_of(document::field_of<&document::Part::mass_kg>))) {
            thing.mass_kg = *set;
            changed = true;
        }
    } else if (const auto set = widgets::number_field(
                   context.ui, id + ".diameter", words::drawer_diameter, thing.diameter_m,
                   spec_of(document::field_of<&document::Fill::stock_diameter_m>))) {
        thing.diameter_m = *set;
        changed = true;
    }
    if (thing.kind == DrawerItemKind::wire) {
        const std::array<std::string_view, 2> tempers{words::temper_spring, words::temper_soft};
        if (const auto tapped = widgets::choice(context.ui, id + ".temper", words::drawer_temper, tempers,
                                                static_cast<int>(thing.temper))) {
            thing.temper = static_cast<document::WireTemper>(*tapped);
            changed = true;
        }
    } else {
        const unsigned use = static_cast<unsigned>(
            thing.kind == DrawerItemKind::stock ? materials::Use::ballast : materials::Use::part);
        std::vector<widgets::PickOption> options;
        for (const auto& solid : materials::solids()) {
            if ((solid.uses & use) != 0u)
                options.push_back({std::string(solid.id), std::string(solid.name), {}});
        }
        if (const auto picked =
                widgets::pick_field(context.ui, id + ".material", words::material, options, thing.material)) {
            thing.material = *picked;
            changed = true;
        }
    }
    if (changed && !context.drawer.replace(index, thing)) context.refusal = words::drawer_same_name;
    widgets::gap();
    const bool fits = thing.kind == DrawerItemKind::part;
    const bool room = context.document().parts.size() < document::max_hardware;
    const int tapped =
        fits ? widgets::button_row(context.ui,
                                   {{id + ".put_on", words::drawer_put_on, widgets::ButtonKind::plain, room},
                                    {id + ".out", words::drawer_throw_out, widgets::ButtonKind::danger}})
             : widgets::button_row(context.ui,
                                   {{id + ".out", words::drawer_throw_out, widgets::ButtonKind::danger}}) +
                   1;
    if (fits && tapped == 0) {
        context.change(words::drawer_put_on_label + thing.name, state::add_part_from(thing));
        context.view.selection = {state::ItemKind::part, static_cast<int>(context.document().parts.size())};
    }
    if (tapped == 1) {
        context.drawer.remove(index);
        context.motion.drawer_open.reset();
    }
    widgets::gap();
}

/// The pieces of a kind as options; the key is the index in the drawer.
std::vector<widgets::PickOption> things_of(const PanelContext& context, DrawerItemKind kind) {
    std::vector<widgets::PickOption> options;
    const auto& things = context.drawer.things();
    for (std::size_t i = 0; i < things.size(); ++i) {
        if (things[i].kind != kind) continue;
        options.push_back({std::to_string(i), things[i].name,
                           text_of(context, things[i].diameter_m, Quantity::length) + words::separator +
                               material_word(things[i])});
    }
    return options;
}

const DrawerItem* picked_thing(PanelContext& context, const std::string& id, const char* label,
                               DrawerItemKind kind) {
    std::vector<widgets::PickOption> options = things_of(context, kind);
    if (options.empty()) return nullptr;
    options.insert(options.begin(), {"", words::drawer_none_chosen, {}});
    const auto picked = widgets::pick_field(context.ui, id, label, options, "");
    const auto& things = context.drawer.things();
    for (std::size_t i = 0; picked && i < things.size(); ++i) {
        if (*picked == std::to_string(i)) return &things[i];
    }
    return nullptr;
}

} // namespace

void stock_from_drawer(PanelContext& context, int hole) {
    const DrawerItem* rod = picked_thing(context, "lead.hole." + std::to_string(hole) + ".drawer",
                                         words::drawer_stock_pick, DrawerItemKind::stock);
    if (rod == nullptr) return;
    context.change(words::drawer_put_on_label + rod->name,
                   state::on_hole(hole, [thing = *rod](document::Hole& h) {
                       if (!h.fill)
                           h.fill = document::Fill{thing.material, 0.0005, std::nullopt, std::nullopt};
                       h.fill->material = thing.material;
                       h.fill->stock_diameter_m = thing.diameter_m;
                   }));
}

void wire_from_drawer(PanelContext& context, int joint) {
    const DrawerItem* wire = picked_thing(context, "joints." + std::to_string(joint) + ".hinge.drawer",
                                          words::drawer_wire_pick, DrawerItemKind::wire);
    if (wire == nullptr) return;
    context.change(words::drawer_put_on_label + wire->name,
                   state::on_joint(joint, [thing = *wire](document::Joint& j) {
                       if (!j.hinge) return;
                       j.hinge->wire_m = thing.diameter_m;
                       j.hinge->temper = thing.temper;
                   }));
}

void drawer_rows(PanelContext& context) {
    if (!section(context, {"section.hardware.drawer", words::drawer_head})) return;
    widgets::note(context.ui, context.drawer.things().empty() ? words::drawer_empty : words::drawer_below);
    // The list may change while it is drawn, so it is traversed by index and its size read each time.
    for (std::size_t i = 0; i < context.drawer.things().size(); ++i) {
        const DrawerItem thing = context.drawer.things()[i];
        const bool open = context.motion.drawer_open == i;
        const bool part = thing.kind == DrawerItemKind::part;
        const std::string below =
            std::string(kind_word(thing.kind)) + words::separator + material_word(thing);
        if (widgets::list_row(context.ui, "drawer." + std::to_string(i),
                              {thing.name, below,
                               part ? number_of(context, thing.mass_kg, Quantity::mass)
                                    : number_of(context, thing.diameter_m, Quantity::length),
                               unit_of(context, part ? Quantity::mass : Quantity::length), open, !open,
                               true})) {
            if (open)
                context.motion.drawer_open.reset();
            else
                context.motion.drawer_open = i;
        }
        if (open) thing_editor(context, i);
    }
    widgets::gap();
    const int added = widgets::button_row(context.ui, {{"drawer.add.part", words::drawer_new_part},
                                                       {"drawer.add.wire", words::drawer_new_wire},
                                                       {"drawer.add.stock", words::drawer_new_stock}});
    if (added >= 0) {
        DrawerItem thing;
        thing.kind = static_cast<DrawerItemKind>(added);
        std::size_t number = context.drawer.things().size();
        do
            thing.name = std::string(kind_word(thing.kind)) + " " + std::to_string(++number);
        while (context.drawer.holds(thing.kind, thing.name));
        thing.mass_kg = added == 0 ? units::kg_from_g(1.0) : 0.0;
        thing.diameter_m = units::m_from_mm(added == 1 ? 0.9 : 6.0);
        if (thing.kind == DrawerItemKind::stock) thing.material = "lead";
        if (context.drawer.put(thing))
            context.motion.drawer_open = context.drawer.things().size() - 1;
        else
            context.refusal = words::drawer_full;
    }
    widgets::gap();
    const int file = widgets::button_row(
        context.ui,
        {{"drawer.save", words::drawer_save, widgets::ButtonKind::quiet, !context.drawer.things().empty()},
         {"drawer.load", words::drawer_load, widgets::ButtonKind::quiet}});
    if (file == 0) context.ui.host->save_file(words::drawer_file, state::write_drawer(context.drawer));
    if (file == 1) context.ui.host->open_file();
}

} // namespace evenfall::shell::steps
