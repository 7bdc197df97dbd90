#include "steps/fields.hpp"
#include "steps/step_panels.hpp"

#include "body.hpp"
#include "look/words_steps.hpp"
#include "widgets/button.hpp"
#include "widgets/words_of_panel.hpp"

#include <array>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using state::on_hole;

void fill_rows(PanelContext& context, Fields& f, document::Hole& hole) {
    std::string material = hole.fill ? hole.fill->material : std::string();
    if (f.material(".fill", words::fill_field, materials::Use::ballast, material, words::fill_none,
                   words::fill_none_below)) {
        if (material.empty())
            hole.fill.reset();
        else if (hole.fill)
            hole.fill->material = material;
        else
            hole.fill = document::Fill{material, 0.0005, std::nullopt, std::nullopt};
        return;
    }
    if (!hole.fill) return;
    document::Fill& fill = *hole.fill;
    const std::array<std::string_view, 2> ways{words::fill_by_mass, words::fill_by_length};
    int by = fill.mass_kg ? 0 : 1;
    if (f.choice(".fill_by", words::fill_by, ways, by)) {
        // The same amount given the other way: mass and length as the core has them in this hole.
        const auto inside = holes::contents(hole, holes::place(hole, context.evaluation().body));
        fill.mass_kg.reset();
        fill.length_m.reset();
        if (by == 0)
            fill.mass_kg = inside.fill_kg;
        else
            fill.length_m = inside.fill_column_m;
    }
    if (fill.mass_kg) {
        f.number<&document::Fill::mass_kg>(".mass", words::fill_mass, fill, words::fill_mass_below);
    } else if (fill.length_m) {
        f.number<&document::Fill::length_m>(".length", words::fill_length, fill, words::fill_mass_below);
    }
    f.optional_number<&document::Fill::stock_diameter_m>(".rod", words::fill_rod, fill, hole.diameter_m,
                                                         words::fill_rod_absent);
}

void cap_rows(Fields& f, document::Hole& hole) {
    std::string material = hole.cap ? hole.cap->material : std::string();
    if (f.material(".cap", words::cap_field, materials::Use::cap, material, words::cap_none)) {
        if (material.empty())
            hole.cap.reset();
        else if (hole.cap)
            hole.cap->material = material;
        else
            hole.cap = document::Cap{material, document::Cap{}.length_m};
        return;
    }
    if (hole.cap) f.number<&document::Cap::length_m>(".cap_length", words::cap_length, *hole.cap);
}

} // namespace

void hole_rows(PanelContext& context, int index) {
    using document::Hole;
    Hole hole = context.document().holes[static_cast<std::size_t>(index)];
    Fields f(context, "lead.hole." + std::to_string(index), words::hole_kind, index);
    f.number<&Hole::x_m>(".x", words::place_x, hole);
    f.number<&Hole::diameter_m>(".diameter", words::hole_diameter, hole, words::hole_diameter_below);
    f.number<&Hole::depth_m>(".depth", words::hole_depth, hole, words::hole_depth_below);
    fill_rows(context, f, hole);
    stock_from_drawer(context, index);
    cap_rows(f, hole);
    const std::array<std::string_view, 4> uses{words::use_ballast, words::use_drilled, words::use_leaded,
                                               words::use_fixed};
    f.choice(".use", words::hole_use, uses, hole.use, words::use_word);
    f.number<&Hole::max_depth_m>(".max_depth", words::max_depth, hole, words::max_depth_below);
    f.number<&Hole::wall_m>(".wall", words::wall, hole, words::wall_below);
    const std::array<std::string_view, 2> sides{words::from_belly, words::from_back};
    f.choice(".from", words::hole_from, sides, hole.from, words::side_word);
    const std::array<std::string_view, 2> ends{words::end_flat, words::end_point};
    f.choice(".end", words::hole_end, ends, hole.end);
    f.number<&Hole::y_m>(".y", words::place_y, hole, words::place_y_below);
    f.text(".name", words::name, hole.name);
    f.put([&] { return on_hole(index, [hole](document::Hole& h) { h = hole; }); });
    widgets::gap();
    const bool plugged = holes::is_plugged(hole);
    if (plugged) widgets::note(context.ui, words::plug_note);
    if (hole.depth_m > 0.0 && !plugged && widgets::button(context.ui, f.id(".plug"), words::plug_hole))
        context.change(f.said(words::plug_hole), state::plug_hole(index));
    const int tapped =
        widgets::button_row(context.ui, {{f.id(".duplicate"), words::duplicate},
                                         {f.id(".remove"), words::remove_hole, widgets::ButtonKind::danger}});
    if (tapped == 0) context.change(f.said(words::duplicate), state::duplicate_hole(index));
    if (tapped == 1) {
        context.change(f.said(words::take_away), state::remove_hole(index));
        context.view.selection = {};
    }
    widgets::gap();
}

} // namespace evenfall::shell::steps
