#include "steps/fields.hpp"
#include "steps/step_panels.hpp"

#include "base/trade.hpp"
#include "body/tail_loft.hpp"
#include "look/words_choice.hpp"
#include "look/words_steps.hpp"
#include "look/words_tail.hpp"
#include "materials/solids.hpp"
#include "widgets/button.hpp"
#include "widgets/choice.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <algorithm>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using document::Tail;
using state::ItemKind;
using state::on_tail;
using state::TailLine;

std::string label(std::string_view what) {
    return std::string(what) + ": " + words::line_tail;
}

/// A number that draws the whole tail out or together.
void stretched(Desk& desk, const char* id, const char* what, double now, double along, double up,
               double across) {
    const double most = document::most_si(document::points_of<&Tail::top>.first);
    number(desk, id, what, now, {Quantity::length, 0.0005, most, {}, -1}, label(what), [=](double v) {
        const double k = v / now - 1.0;
        return on_tail(
            [=](Tail& t) { state::stretch_tail(t, 1.0 + k * along, 1.0 + k * up, 1.0 + k * across); });
    });
}

const document::PointsField& field_of(TailLine line) {
    switch (line) {
    case TailLine::top:
        return document::points_of<&Tail::top>;
    case TailLine::bottom:
        return document::points_of<&Tail::bottom>;
    case TailLine::half_thickness:
        break;
    }
    return document::points_of<&Tail::half_thickness>;
}

void point_editor(Desk& desk, TailLine line, int index, const document::CurvePoints& points) {
    const auto i = static_cast<std::size_t>(index);
    const bool across = line == TailLine::half_thickness;
    const bool end = index == 0 || i + 1 == points.size();
    const auto set = [line, i](auto change) {
        return on_tail([=](Tail& t) {
            auto& all = state::line_of(t, line);
            if (i < all.size()) change(all);
        });
    };
    if (!end) {
        number(desk, "tail.point.x", words::tail_point_x, points[i].x_m, spec_of(field_of(line).first),
               label(words::tail_point_x),
               [=](double v) { return set([=](document::CurvePoints& all) { all[i].x_m = v; }); });
    }
    const char* what = across ? words::tail_point_y : words::tail_point_z;
    number(desk, "tail.point.value", what, points[i].value, spec_of(field_of(line).second), label(what),
           [=](double v) { return set([=](document::CurvePoints& all) { all[i].value = v; }); });
    if (!end &&
        widgets::button(desk.ui, "tail.point.remove", words::remove_point, widgets::ButtonKind::quiet)) {
        desk.change(label(words::remove_point),
                    set([=](document::CurvePoints& all) { all.erase(all.begin() + index); }));
        desk.motion.tail.point = -1;
    }
}

void point_rows(Desk& desk, Tail tail) {
    int& chosen = desk.motion.tail.point;
    if (const auto tapped = widgets::choice(desk.ui, "tail.line", words::tail_line, words::tail_lines,
                                            desk.motion.tail.line)) {
        desk.motion.tail.line = *tapped;
        chosen = -1;
    }
    const auto line = static_cast<TailLine>(desk.motion.tail.line);
    const document::CurvePoints& points = state::line_of(tail, line);
    const std::array<widgets::Column, 2> columns{
        {{0.03f, 0.5f, widgets::Align::right}, {0.5f, 0.97f, widgets::Align::right}}};
    const std::string_view unit = unit_of(desk, Quantity::length);
    for (std::size_t i = 0; i < points.size(); ++i) {
        const int index = static_cast<int>(i);
        const std::string x = number_of(desk, points[i].x_m, Quantity::length);
        const std::string value = number_of(desk, points[i].value, Quantity::length);
        const std::array<widgets::Cell, 2> cells{{{x, unit, false}, {value, unit, true}}};
        if (widgets::table_row(desk.ui, "tail.point." + std::to_string(i), columns, cells, index == chosen))
            chosen = index == chosen ? -1 : index;
        if (index == chosen) point_editor(desk, line, index, points);
    }
    if (widgets::button(desk.ui, "tail.point.add", words::add_point, widgets::ButtonKind::quiet,
                        points.size() < document::max_curve_points))
        desk.change(label(words::add_point),
                    on_tail([line](Tail& t) { state::halve_longest_span(state::line_of(t, line)); }));
}

void tail_editor(Desk& desk) {
    const Tail& tail = *desk.document().tail;
    Tail held = tail;
    const double usual_spread =
        tail.density_kg_m3 ? 0.02 : materials::find_solid(tail.material)->density_kg_m3.spread;
    Fields f(desk, "tail");
    f.material(".material", words::material, materials::Use::tail, held.material);
    f.optional_number<&Tail::density_kg_m3>(".density", words::tail_density, held,
                                            evenfall::tail::density_kg_m3(tail), words::from_table);
    f.optional_number<&Tail::density_spread>(".density_spread", words::density_spread, held, usual_spread,
                                             words::usual);
    f.number<&Tail::x_m>(".x", words::tail_root, held);
    f.number<&Tail::z_m>(".z", words::tail_axis, held, words::place_z_below);
    Tail bare = tail;
    bare.tenon.reset();
    const Vec3 size = evenfall::tail::extent(bare);
    stretched(desk, "tail.length", words::tail_length, size.x, 1.0, 0.0, 0.0);
    stretched(desk, "tail.height", words::tail_height, size.z, 0.0, 1.0, 0.0);
    stretched(desk, "tail.thickness", words::tail_thickness, size.y, 0.0, 0.0, 1.0);
    f.number<&Tail::fullness>(".fullness", words::tail_fullness, held, words::tail_fullness_below,
                              {{}, 0.1, 2});
    point_rows(desk, tail);
    bool has_tenon = held.tenon.has_value();
    f.toggle(".tenon", words::tail_tenon, has_tenon, words::tail_tenon_below);
    if (!has_tenon)
        held.tenon.reset();
    else if (!held.tenon)
        held.tenon = document::Tenon{0.008, 0.0015, 0.006};
    if (held.tenon) {
        f.number<&document::Tenon::length_m>(".tenon.length", words::tenon_length, *held.tenon);
        f.number<&document::Tenon::thickness_m>(".tenon.thickness", words::tenon_thickness, *held.tenon);
        f.number<&document::Tenon::height_m>(".tenon.height", words::tenon_height, *held.tenon);
    }
    f.put([&] { return on_tail([held](Tail& t) { t = held; }); }, words::line_tail);
    widgets::gap();
    if (widgets::button(desk.ui, "tail.remove", words::tail_remove, widgets::ButtonKind::danger)) {
        desk.change(words::tail_remove, state::remove_tail());
        desk.view.selection = {};
    }
    widgets::gap();
}

std::string cubic(double m3) {
    return widgets::number_text(units::cm3_from_m3(m3), widgets::Unit::one, 2);
}

void pull_rows(Desk& desk) {
    auto& kept = desk.motion.tail;
    if (kept.revision != desk.session.shown_revision()) {
        kept.revision = desk.session.shown_revision();
        auto pull = evenfall::tail::pull(desk.document(), desk.evaluation());
        kept.pull.reset();
        if (pull.ok()) kept.pull = std::move(pull).value();
    }
    if (!kept.pull) return;
    const Answers& now = desk.evaluation().answers;
    const Answers& bare = kept.pull->without;
    const std::string_view grams = unit_of(desk, Quantity::mass);
    const auto hang = [&](const Answers& a) {
        return a.pitch_rad ? text_of(desk, *a.pitch_rad, Quantity::angle) : std::string("\xE2\x80\x93");
    };
    const double water = now.water_density_kg_m3;
    widgets::figure_row(desk.ui, words::tail_in_water, signed_mass(desk, kept.pull->own.in_water(water).kg),
                        {});
    widgets::figure_row(desk.ui, words::tail_without, number_of(desk, bare.mass_kg, Quantity::mass), grams,
                        signed_mass(desk, bare.in_water_kg) + " " + words::in_the_water);
    widgets::figure_row(desk.ui, words::tail_hang_without, hang(bare), {}, words::tail_now + hang(now));
}

void asked(Desk& desk, const char* id, const char* what, double& value, const NumberSpec& spec,
           const char* below = "") {
    if (const auto set = widgets::number_field(desk.ui, id, what, value, spec, below)) value = *set;
}

void pour_rows(Desk& desk) {
    auto& wish = desk.motion.tail.pour;
    widgets::subheading(desk.ui, words::pour_group);
    widgets::note(desk.ui, words::pour_below);
    wish.tails += widgets::stepper(desk.ui, "pour.tails", words::pour_tails, wish.tails, 1, 200);
    if (const auto tapped =
            widgets::choice(desk.ui, "pour.open", words::pour_mould, words::pour_moulds, wish.open ? 1 : 0))
        wish.open = *tapped == 1;
    asked(desk, "pour.wall", words::pour_wall, wish.wall_m, {Quantity::length, 0.001, 0.05, {}, -1});
    asked(desk, "pour.shrink", words::pour_shrink, wish.shrink, {Quantity::percent, 0.0, 0.2, 0.01, 0},
          words::pour_shrink_below);
    asked(desk, "pour.sprue", words::pour_sprue, wish.sprue, {Quantity::percent, 0.0, 0.9, 0.05, 0},
          words::pour_sprue_below);
    asked(desk, "pour.loss", words::pour_loss, wish.loss, {Quantity::percent, 0.0, 0.9, 0.05, 0},
          words::pour_loss_below);
    const std::array<std::string_view, 2> ways{words::resin_by_weight, words::resin_by_volume};
    if (const auto tapped =
            widgets::choice(desk.ui, "pour.by", words::pour_by, ways, wish.blend.by_volume ? 1 : 0))
        wish.blend.by_volume = *tapped == 1;
    for (std::size_t i = 0; i < evenfall::tail::ingredient_count; ++i) {
        auto& share = wish.blend.of[i];
        const std::string id = "pour." + std::to_string(i);
        asked(desk, id.c_str(), words::pour_parts[i], share.parts, {Quantity::number, 0.0, 1000.0, 1.0, 1});
        if (wish.blend.by_volume && share.parts > 0.0)
            asked(desk, (id + ".density").c_str(), words::pour_densities[i], share.kg_m3,
                  {Quantity::density, 800.0, 2000.0, {}, -1});
    }
    const auto pour = evenfall::tail::pour(*desk.document().tail, desk.evaluation().ledger, wish);
    if (!pour.ok()) {
        widgets::problem_line(desk.ui, pour.problems().front().sentence);
        return;
    }
    const std::string_view grams = unit_of(desk, Quantity::mass);
    const auto edge = [&](double m) { return number_of(desk, m, Quantity::length); };
    widgets::figure_row(desk.ui, words::pour_cavity, cubic(pour->cavity_m3), "cm\xC2\xB3");
    widgets::figure_row(desk.ui, words::pour_rubber, number_of(desk, pour->rubber.mass_kg, Quantity::mass),
                        grams,
                        words::pour_frame + edge(pour->box_m.x) + " \xC3\x97 " + edge(pour->box_m.z) +
                            " \xC3\x97 " + text_of(desk, pour->box_m.y, Quantity::length));
    widgets::figure_row(desk.ui,
                        evenfall::tail::is_melted(*desk.document().tail) ? words::pour_heat : words::pour_mix,
                        number_of(desk, pour->heated_kg, Quantity::mass), grams);
    for (std::size_t i = 0; i < evenfall::tail::ingredient_count; ++i) {
        if (pour->blend[i].mass_kg > 0.0)
            widgets::figure_row(desk.ui, words::pour_grams[i],
                                number_of(desk, pour->blend[i].mass_kg, Quantity::mass), grams);
    }
}

} // namespace

void tail_rows(Desk& desk) {
    widgets::subheading(desk.ui, words::tail_group);
    if (!desk.document().tail) {
        widgets::note(desk.ui, words::tail_below);
        widgets::gap();
        if (widgets::button(desk.ui, "tail.add", words::tail_add)) {
            desk.change(words::tail_add, state::add_tail());
            desk.view.selection = {ItemKind::tail, 0};
        }
        return;
    }
    const ledger::Sum sum = ledger::sum_of(desk.evaluation().ledger, ledger::Kind::tail);
    const Tail& tail = *desk.document().tail;
    const std::string below = text_of(desk, tail.x_m, Quantity::length) + words::separator +
                              std::string(materials::find_solid(tail.material)->name);
    const bool chosen = desk.row_chosen(ItemKind::tail, 0);
    if (widgets::list_row(desk.ui, "tail.0",
                          {words::line_tail, below, number_of(desk, sum.mass.kg, Quantity::mass),
                           unit_of(desk, Quantity::mass), chosen, !chosen, true}))
        desk.choose(ItemKind::tail, 0);
    if (chosen) tail_editor(desk);
    widgets::figure_row(
        desk.ui, words::tail_volume,
        cubic(evenfall::tail::shaped(tail)->segments[0].volume_m3 + evenfall::tail::tenon_m3(tail)),
        "cm\xC2\xB3");
    pull_rows(desk);
    pour_rows(desk);
}

} // namespace evenfall::shell::steps
