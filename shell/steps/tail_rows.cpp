#include "steps/fields.hpp"
#include "steps/step_panels.hpp"

#include "body.hpp"
#include "evenfall.hpp"
#include "look/words_choice.hpp"
#include "look/words_help.hpp"
#include "look/words_steps.hpp"
#include "look/words_tail.hpp"
#include "reach.hpp"
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
void stretched(PanelContext& context, const char* id, const char* what, double now, double along, double up,
               double across) {
    const double most = document::most_si(document::points_of<&Tail::back>.first);
    number(context, id, what, now, {Quantity::length, 0.0005, most, {}, -1}, label(what), [=](double v) {
        const double k = v / now - 1.0;
        return on_tail(
            [=](Tail& t) { document::stretch_tail(t, 1.0 + k * along, 1.0 + k * up, 1.0 + k * across); });
    });
}

const document::PointsField& field_of(TailLine line) {
    switch (line) {
    case TailLine::top:
        return document::points_of<&Tail::back>;
    case TailLine::bottom:
        return document::points_of<&Tail::belly>;
    case TailLine::half_thickness:
        break;
    }
    return document::points_of<&Tail::half_thickness>;
}

void point_editor(PanelContext& context, TailLine line, int index, const document::CurvePoints& points) {
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
        number(context, "tail.point.x", words::tail_point_x, points[i].x_m, spec_of(field_of(line).first),
               label(words::tail_point_x),
               [=](double v) { return set([=](document::CurvePoints& all) { all[i].x_m = v; }); });
    }
    const char* what = across ? words::tail_point_y : words::tail_point_z;
    number(context, "tail.point.value", what, points[i].value, spec_of(field_of(line).second), label(what),
           [=](double v) { return set([=](document::CurvePoints& all) { all[i].value = v; }); });
    if (!end &&
        widgets::button(context.ui, "tail.point.remove", words::remove_point, widgets::ButtonKind::quiet)) {
        context.change(label(words::remove_point),
                       set([=](document::CurvePoints& all) { all.erase(all.begin() + index); }));
        context.motion.tail.point = -1;
    }
}

void point_rows(PanelContext& context, Tail tail) {
    int& chosen = context.motion.tail.point;
    if (const auto tapped = widgets::choice(context.ui, "tail.line", words::tail_line, words::tail_lines,
                                            context.motion.tail.line)) {
        context.motion.tail.line = *tapped;
        chosen = -1;
    }
    const auto line = static_cast<TailLine>(context.motion.tail.line);
    const document::CurvePoints& points = state::line_of(tail, line);
    const std::array<widgets::TableColumn, 2> columns{
        {{0.03f, 0.5f, widgets::Align::right}, {0.5f, 0.97f, widgets::Align::right}}};
    const std::string_view unit = unit_of(context, Quantity::length);
    for (std::size_t i = 0; i < points.size(); ++i) {
        const int index = static_cast<int>(i);
        const std::string x = number_of(context, points[i].x_m, Quantity::length);
        const std::string value = number_of(context, points[i].value, Quantity::length);
        const std::array<widgets::Cell, 2> cells{{{x, unit, false}, {value, unit, true}}};
        if (widgets::table_row(context.ui, "tail.point." + std::to_string(i), columns, cells,
                               index == chosen))
            chosen = index == chosen ? -1 : index;
        if (index == chosen) point_editor(context, line, index, points);
    }
    if (widgets::button(context.ui, "tail.point.add", words::add_point, widgets::ButtonKind::quiet,
                        points.size() < document::max_curve_points))
        context.change(label(words::add_point),
                       on_tail([line](Tail& t) { state::halve_longest_span(state::line_of(t, line)); }));
}

void tail_editor(PanelContext& context) {
    const Tail& tail = *context.document().tail;
    Tail held = tail;
    const double usual_spread =
        tail.density_kg_m3 ? 0.02 : materials::find_solid(tail.material)->density_kg_m3.spread;
    Fields f(context, "tail");
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
    stretched(context, "tail.length", words::tail_length, size.x, 1.0, 0.0, 0.0);
    stretched(context, "tail.height", words::tail_height, size.z, 0.0, 1.0, 0.0);
    stretched(context, "tail.thickness", words::tail_thickness, size.y, 0.0, 0.0, 1.0);
    f.number<&Tail::exponent>(".exponent", words::tail_exponent, held, words::tail_exponent_below,
                              {{}, 0.1, 2});
    point_rows(context, tail);
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
    if (widgets::button(context.ui, "tail.remove", words::tail_remove, widgets::ButtonKind::danger)) {
        context.change(words::tail_remove, state::remove_tail());
        context.view.selection = {};
    }
    widgets::gap();
}

std::string cubic(double m3) {
    return widgets::number_text(m3, widgets::Unit::cm3, 2);
}

void pull_rows(PanelContext& context) {
    auto& kept = context.motion.tail;
    if (kept.revision != context.session.shown_revision()) {
        kept.revision = context.session.shown_revision();
        auto tail_effect = evenfall::tail::tail_effect(context.document(), context.evaluation());
        kept.tail_effect.reset();
        if (tail_effect.ok()) kept.tail_effect = std::move(tail_effect).value();
    }
    if (!kept.tail_effect) return;
    const Answers& now = context.evaluation().answers;
    const Answers& bare = kept.tail_effect->without;
    const std::string_view grams = unit_of(context, Quantity::mass);
    const auto hang = [&](const Answers& a) {
        return a.pitch_rad ? text_of(context, *a.pitch_rad, Quantity::angle) : std::string("\xE2\x80\x93");
    };
    const double water = now.water_density_kg_m3;
    const ledger::Sum& own = kept.tail_effect->own;
    if (widgets::figure_row(context.ui, words::tail_in_water, signed_mass(context, own.in_water(water).kg),
                            {}, {}, help::Topic::tail_pull)) {
        widgets::went_in(context.ui, words::went_mass, text_of(context, own.mass.kg, Quantity::mass));
        widgets::went_in(context.ui, words::went_volume,
                         text_of(context, own.displaced_m3, Quantity::volume));
        widgets::went_in(context.ui, words::went_water, text_of(context, water, Quantity::density));
    }
    widgets::figure_row(context.ui, words::tail_without, number_of(context, bare.mass.kg, Quantity::mass),
                        grams, signed_mass(context, bare.in_water.kg) + " " + words::in_the_water,
                        help::Topic::tail_pull);
    widgets::figure_row(context.ui, words::tail_hang_without, hang(bare), {}, words::tail_now + hang(now),
                        help::Topic::tail_pull);
}

void asked(PanelContext& context, const char* id, const char* what, double& value, const NumberSpec& spec,
           const char* below = "") {
    if (const auto set = widgets::number_field(context.ui, id, what, value, spec, below)) value = *set;
}

void pour_rows(PanelContext& context) {
    auto& wish = context.motion.tail.pour;
    const bool melted = evenfall::tail::is_melted(*context.document().tail);
    widgets::subheading(context.ui, words::pour_group);
    widgets::caution_box(context.ui, melted ? words::plastisol_title : words::silicone_title,
                         melted ? cautions::plastisol : cautions::silicone);
    widgets::gap();
    widgets::note(context.ui, words::pour_below);
    wish.tails += widgets::stepper(context.ui, "pour.tails", words::pour_tails, wish.tails, 1, 200);
    if (const auto tapped = widgets::choice(context.ui, "pour.open", words::pour_mould, words::pour_moulds,
                                            wish.open ? 1 : 0))
        wish.open = *tapped == 1;
    asked(context, "pour.wall", words::pour_wall, wish.wall_m, {Quantity::length, 0.001, 0.05, {}, -1});
    asked(context, "pour.shrink", words::pour_shrink, wish.shrink, {Quantity::percent, 0.0, 0.2, 0.01, 0},
          words::pour_shrink_below);
    asked(context, "pour.sprue", words::pour_sprue, wish.sprue, {Quantity::percent, 0.0, 0.9, 0.05, 0},
          words::pour_sprue_below);
    asked(context, "pour.loss", words::pour_loss, wish.loss, {Quantity::percent, 0.0, 0.9, 0.05, 0},
          words::pour_loss_below);
    const std::array<std::string_view, 2> ways{words::resin_by_weight, words::resin_by_volume};
    if (const auto tapped =
            widgets::choice(context.ui, "pour.by", words::pour_by, ways, wish.blend.by_volume ? 1 : 0))
        wish.blend.by_volume = *tapped == 1;
    for (std::size_t i = 0; i < evenfall::tail::ingredient_count; ++i) {
        auto& share = wish.blend.of[i];
        const std::string id = "pour." + std::to_string(i);
        asked(context, id.c_str(), words::pour_parts[i], share.parts,
              {Quantity::number, 0.0, 1000.0, 1.0, 1});
        if (wish.blend.by_volume && share.parts > 0.0)
            asked(context, (id + ".density").c_str(), words::pour_densities[i], share.kg_m3,
                  {Quantity::density, 800.0, 2000.0, {}, -1});
    }
    const auto pour = evenfall::tail::pour(*context.document().tail, context.evaluation().ledger, wish);
    if (!pour.ok()) {
        widgets::problem_line(context.ui, pour.problems().front().sentence);
        return;
    }
    const std::string_view grams = unit_of(context, Quantity::mass);
    const auto edge = [&](double m) { return number_of(context, m, Quantity::length); };
    const auto poured = [&](bool tapped) {
        if (!tapped) return;
        widgets::went_in(context.ui, words::went_cast, text_of(context, pour->cast.mass_kg, Quantity::mass));
        widgets::went_in(context.ui, words::went_shrink, text_of(context, wish.shrink, Quantity::percent));
        widgets::went_in(context.ui, words::pour_sprue, text_of(context, wish.sprue, Quantity::percent));
        widgets::went_in(context.ui, words::pour_loss, text_of(context, wish.loss, Quantity::percent));
    };
    poured(widgets::figure_row(context.ui, words::pour_cavity, cubic(pour->cavity_m3), "cm\xC2\xB3", {},
                               help::Topic::tail_pour));
    widgets::figure_row(context.ui, words::pour_rubber,
                        number_of(context, pour->rubber.mass_kg, Quantity::mass), grams,
                        words::pour_frame + edge(pour->box_m.x) + " \xC3\x97 " + edge(pour->box_m.z) +
                            " \xC3\x97 " + text_of(context, pour->box_m.y, Quantity::length),
                        help::Topic::tail_pour);
    poured(widgets::figure_row(context.ui, melted ? words::pour_heat : words::pour_mix,
                               number_of(context, pour->heated_kg, Quantity::mass), grams, {},
                               help::Topic::tail_pour));
    for (std::size_t i = 0; i < evenfall::tail::ingredient_count; ++i) {
        if (pour->blend[i].mass_kg > 0.0)
            widgets::figure_row(context.ui, words::pour_grams[i],
                                number_of(context, pour->blend[i].mass_kg, Quantity::mass), grams, {},
                                help::Topic::tail_pour);
    }
}

} // namespace

void tail_rows(PanelContext& context) {
    if (!section(context, {"section.hardware.tail", words::tail_group, {}, false, {state::ItemKind::tail}}))
        return;
    if (!context.document().tail) {
        widgets::note(context.ui, words::tail_below);
        widgets::gap();
        if (widgets::button(context.ui, "tail.add", words::tail_add)) {
            context.change(words::tail_add, state::add_tail());
            context.view.selection = {ItemKind::tail, 0};
        }
        return;
    }
    const ledger::Sum sum = ledger::sum_of(context.evaluation().ledger, ledger::Kind::tail);
    const Tail& tail = *context.document().tail;
    const std::string below =
        text_of(context, tail.x_m, Quantity::length) + words::separator + materials::name_of(tail.material);
    const bool chosen = context.row_chosen(ItemKind::tail, 0);
    if (widgets::list_row(context.ui, "tail.0",
                          {words::line_tail, below, number_of(context, sum.mass.kg, Quantity::mass),
                           unit_of(context, Quantity::mass), chosen, !chosen, true}))
        context.choose(ItemKind::tail, 0);
    if (chosen) tail_editor(context);
    widgets::figure_row(
        context.ui, words::tail_volume,
        cubic(evenfall::tail::shaped(tail)->segments[0].volume_m3 + evenfall::tail::tenon_m3(tail)),
        "cm\xC2\xB3", {}, help::Topic::tail_pull);
    pull_rows(context);
    pour_rows(context);
}

} // namespace evenfall::shell::steps
