#include "steps/step_panels.hpp"

#include "holes/bore.hpp"
#include "look/words_steps.hpp"
#include "materials/solids.hpp"
#include "widgets/button.hpp"
#include "widgets/choice.hpp"
#include "widgets/words_of_panel.hpp"

#include <array>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using state::on_hole;

struct HoleDesk {
    Desk& desk;
    int index;
    const preset::Hole& hole;
    std::string id;

    [[nodiscard]] std::string label(const char* what) const {
        return label_of(what, words::hole_kind, index);
    }
    void length(const char* key, const char* words_label, double value, double least, double most,
                void (*set)(preset::Hole&, double), const char* below = "") const {
        number(
            desk, id + key, words_label, value, {Quantity::length, least, most, {}, -1}, label(words_label),
            [i = index, set](double v) { return on_hole(i, [set, v](preset::Hole& h) { set(h, v); }); },
            below);
    }
};

void fill_rows(const HoleDesk& h) {
    const auto& fill = h.hole.fill;
    material(
        h.desk, h.id + ".fill", words::fill_field, static_cast<unsigned>(materials::Use::ballast),
        fill ? std::string_view(fill->material) : std::string_view{}, h.label(words::fill_field),
        [i = h.index](std::string key) {
            return on_hole(i, [key](preset::Hole& hole) {
                if (key.empty()) {
                    hole.fill.reset();
                } else if (hole.fill) {
                    hole.fill->material = key;
                } else {
                    hole.fill = preset::Fill{key, 0.0005, std::nullopt, std::nullopt};
                }
            });
        },
        words::fill_none, words::fill_none_below);
    if (!fill) return;
    const std::array<std::string_view, 2> ways{words::fill_by_mass, words::fill_by_length};
    if (const auto tapped =
            widgets::choice(h.desk.ui, h.id + ".fill_by", words::fill_by, ways, fill->mass_kg ? 0 : 1)) {
        // The other way of saying the same amount: mass and column as the core has them in this hole.
        const auto inside = holes::contents(h.hole, holes::place(h.hole, h.desk.evaluation().body));
        const bool by_mass = *tapped == 0;
        h.desk.change(h.label(words::fill_by), on_hole(h.index, [inside, by_mass](preset::Hole& hole) {
                          if (!hole.fill) return;
                          hole.fill->mass_kg.reset();
                          hole.fill->length_m.reset();
                          if (by_mass)
                              hole.fill->mass_kg = inside.fill_kg;
                          else
                              hole.fill->length_m = inside.fill_column_m;
                      }));
    }
    if (fill->mass_kg) {
        number(
            h.desk, h.id + ".mass", words::fill_mass, *fill->mass_kg, {Quantity::mass, 0.0, 1.0, {}, -1},
            h.label(words::fill_mass),
            [i = h.index](double v) {
                return on_hole(i, [v](preset::Hole& hole) {
                    if (hole.fill) hole.fill->mass_kg = v;
                });
            },
            words::fill_mass_below);
    } else {
        h.length(
            ".length", words::fill_length, fill->length_m.value_or(0.0), 0.0, 0.1,
            [](preset::Hole& hole, double v) {
                if (hole.fill) hole.fill->length_m = v;
            },
            words::fill_mass_below);
    }
    optional_number(h.desk, h.id + ".rod", words::fill_rod, fill->stock_diameter_m, h.hole.diameter_m,
                    {Quantity::length, 0.0002, 0.04, {}, -1}, words::fill_rod_absent,
                    h.label(words::fill_rod), [i = h.index](std::optional<double> v) {
                        return on_hole(i, [v](preset::Hole& hole) {
                            if (hole.fill) hole.fill->stock_diameter_m = v;
                        });
                    });
}

void cap_rows(const HoleDesk& h) {
    const auto& cap = h.hole.cap;
    material(
        h.desk, h.id + ".cap", words::cap_field, static_cast<unsigned>(materials::Use::cap),
        cap ? std::string_view(cap->material) : std::string_view{}, h.label(words::cap_field),
        [i = h.index](std::string key) {
            return on_hole(i, [key](preset::Hole& hole) {
                if (key.empty()) {
                    hole.cap.reset();
                } else if (hole.cap) {
                    hole.cap->material = key;
                } else {
                    hole.cap = preset::Cap{key, preset::Cap{}.length_m};
                }
            });
        },
        words::cap_none);
    if (!cap) return;
    h.length(".cap_length", words::cap_length, cap->length_m, 0.0, 0.05, [](preset::Hole& hole, double v) {
        if (hole.cap) hole.cap->length_m = v;
    });
}

} // namespace

void hole_rows(Desk& desk, int index) {
    const auto& hole = desk.document().holes[static_cast<std::size_t>(index)];
    const HoleDesk h{desk, index, hole, "lead.hole." + std::to_string(index)};
    h.length(".x", words::place_x, hole.x_m, 0.0, longest_m, [](preset::Hole& o, double v) { o.x_m = v; });
    h.length(
        ".diameter", words::hole_diameter, hole.diameter_m, 0.0005, 0.04,
        [](preset::Hole& o, double v) { o.diameter_m = v; }, words::hole_diameter_below);
    h.length(
        ".depth", words::hole_depth, hole.depth_m, 0.0, 0.1, [](preset::Hole& o, double v) { o.depth_m = v; },
        words::hole_depth_below);
    fill_rows(h);
    stock_from_drawer(desk, index);
    cap_rows(h);
    const std::array<std::string_view, 3> uses{words::use_ballast, words::use_drilled, words::use_fixed};
    if (const auto tapped =
            widgets::choice(desk.ui, h.id + ".use", words::hole_use, uses, static_cast<int>(hole.use))) {
        const auto use = static_cast<preset::HoleUse>(*tapped);
        desk.change(h.label(words::use_word), on_hole(index, [use](preset::Hole& o) { o.use = use; }));
    }
    h.length(
        ".max_depth", words::max_depth, hole.max_depth_m, 0.0, 0.1,
        [](preset::Hole& o, double v) { o.max_depth_m = v; }, words::max_depth_below);
    h.length(
        ".wall", words::wall, hole.wall_m, 0.0, 0.03, [](preset::Hole& o, double v) { o.wall_m = v; },
        words::wall_below);
    const std::array<std::string_view, 2> sides{words::from_belly, words::from_back};
    if (const auto tapped =
            widgets::choice(desk.ui, h.id + ".from", words::hole_from, sides, static_cast<int>(hole.from))) {
        const auto from = static_cast<preset::HoleFrom>(*tapped);
        desk.change(h.label(words::side_word), on_hole(index, [from](preset::Hole& o) { o.from = from; }));
    }
    const std::array<std::string_view, 2> ends{words::end_flat, words::end_point};
    if (const auto tapped =
            widgets::choice(desk.ui, h.id + ".end", words::hole_end, ends, static_cast<int>(hole.end))) {
        const auto end = static_cast<preset::HoleEnd>(*tapped);
        desk.change(h.label(words::hole_end), on_hole(index, [end](preset::Hole& o) { o.end = end; }));
    }
    h.length(
        ".y", words::place_y, hole.y_m, -widest_m, widest_m, [](preset::Hole& o, double v) { o.y_m = v; },
        words::place_y_below);
    widgets::gap();
    const int tapped =
        widgets::button_row(desk.ui, {{h.id + ".duplicate", words::duplicate},
                                      {h.id + ".remove", words::remove_hole, widgets::ButtonKind::danger}});
    if (tapped == 0) desk.change(h.label(words::duplicate), state::duplicate_hole(index));
    if (tapped == 1) {
        desk.change(h.label(words::take_away), state::remove_hole(index));
        desk.view.selection = {};
    }
    widgets::gap();
}

} // namespace evenfall::shell::steps
