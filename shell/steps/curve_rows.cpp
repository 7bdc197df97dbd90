#include "steps/fields.hpp"
#include "steps/step_panels.hpp"

#include "look/words_steps.hpp"
#include "state/drag.hpp"
#include "widgets/button.hpp"
#include "widgets/choice.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <array>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using state::CurveKind;

const char* title_of(CurveKind curve) {
    switch (curve) {
    case CurveKind::back:
        return words::curve_back;
    case CurveKind::belly:
        return words::curve_belly;
    case CurveKind::half_width:
        return words::curve_width;
    case CurveKind::corners:
        break;
    }
    return words::curve_corners;
}

document::PointsField field_of(CurveKind curve, document::SectionKind section) {
    using document::Shape;
    switch (curve) {
    case CurveKind::back:
        return document::points_of<&Shape::back>;
    case CurveKind::belly:
        return document::points_of<&Shape::belly>;
    case CurveKind::half_width:
        return document::points_of<&Shape::half_width>;
    case CurveKind::corners:
        break;
    }
    return document::section_field(section);
}

const char* section_value_label(document::SectionKind kind) {
    return kind == document::SectionKind::chamfered ? words::section_cut : words::section_exponent;
}

void point_editor(PanelContext& context, CurveKind curve, int index, const document::CurvePoints& points) {
    const auto& point = points[static_cast<std::size_t>(index)];
    const std::string id = "shape.point." + std::to_string(index);
    const std::string history = std::string(words::curve_changed) + " " + title_of(curve);
    const bool end = index == 0 || index + 1 == static_cast<int>(points.size());
    const bool plain = curve == CurveKind::corners;
    const document::SectionKind section = context.document().shape.section.kind;
    const document::PointsField field = field_of(curve, section);
    if (!end) {
        number(context, id + ".x", words::place_x, point.x_m, spec_of(field.first), history,
               [=](double v) { return state::move_curve_point(curve, index, v, point.value); });
    }
    const NumberSpec spec = plain ? spec_of(field.second, {{}, 0.1, 2}) : spec_of(field.second);
    const char* label = plain                            ? section_value_label(section)
                        : curve == CurveKind::half_width ? words::point_value_width
                                                         : words::point_value_height;
    number(context, id + ".value", label, point.value, spec, history,
           [=](double v) { return state::move_curve_point(curve, index, point.x_m, v); });
    if (!plain) {
        const bool width = curve == CurveKind::half_width;
        const int way = widgets::button_row(
            context.ui, {{id + ".fore", words::nudge_fore, widgets::ButtonKind::plain, !end},
                         {id + ".aft", words::nudge_aft, widgets::ButtonKind::plain, !end},
                         {id + ".down", width ? words::nudge_in : words::nudge_down},
                         {id + ".up", width ? words::nudge_out : words::nudge_up}});
        constexpr std::array<state::DragPoint, 4> ways{{{-1.0, 0.0}, {1.0, 0.0}, {0.0, -1.0}, {0.0, 1.0}}};
        if (way >= 0) {
            const bool inches = context.ui.units.of(Quantity::length) != widgets::Unit::mm;
            context.changes.push_back(state::nudge(context.session.kept(), {state::point_kind(curve), index},
                                                   ways[static_cast<std::size_t>(way)], inches));
        }
    }
    if ((!end || plain) && points.size() > (plain ? 1u : 2u)) {
        if (widgets::button(context.ui, id + ".remove", words::remove_point, widgets::ButtonKind::quiet)) {
            context.change(history, state::remove_curve_point(curve, index));
            context.view.selection = {};
        }
    }
}

} // namespace

void curve_rows(PanelContext& context) {
    if (!section(context, {"section.shape.curves",
                           words::curves_group,
                           {},
                           false,
                           {state::ItemKind::back_point, state::ItemKind::belly_point,
                            state::ItemKind::width_point, state::ItemKind::corner_point}}))
        return;
    const std::array<std::string_view, 4> labels{words::curve_back, words::curve_belly, words::curve_width,
                                                 words::curve_corners};
    const bool free_section = context.document().shape.section.kind == document::SectionKind::drawn;
    const std::span<const std::string_view> offered(labels.data(), free_section ? 3u : 4u);
    if (free_section && context.view.curve == CurveKind::corners) context.view.curve = CurveKind::back;
    if (const auto tapped =
            widgets::choice(context.ui, "shape.curve", offered, static_cast<int>(context.view.curve))) {
        context.view.curve = static_cast<CurveKind>(*tapped);
        context.view.selection = {};
    }
    if (widgets::toggle(context.ui, "shape.snap", words::snap, context.view.snap, words::snap_below))
        context.view.snap = !context.view.snap;
    if (widgets::toggle(context.ui, "shape.mirror", words::mirror, context.view.mirror, words::mirror_below))
        context.view.mirror = !context.view.mirror;
    const CurveKind curve = context.view.curve;
    const bool plain = curve == CurveKind::corners;
    widgets::note(context.ui, plain                            ? words::curve_note_corners
                              : curve == CurveKind::half_width ? words::curve_note_width
                                                               : words::curve_note_height);
    const auto& points = state::curve_points(context.document(), curve);
    const std::array<widgets::TableColumn, 3> columns{{{0.03f, 0.15f, widgets::Align::left},
                                                       {0.15f, 0.56f, widgets::Align::right},
                                                       {0.56f, 0.97f, widgets::Align::right}}};
    for (std::size_t i = 0; i < points.size(); ++i) {
        const int index = static_cast<int>(i);
        const std::string nr = std::to_string(i + 1);
        const std::string x = number_of(context, points[i].x_m, Quantity::length);
        const std::string value = plain ? widgets::number_text(points[i].value, widgets::Unit::one, 2)
                                        : number_of(context, points[i].value, Quantity::length);
        const std::string_view unit = unit_of(context, Quantity::length);
        const std::array<widgets::Cell, 3> cells{
            {{nr, {}, false}, {x, unit, false}, {value, plain ? std::string_view{} : unit, true}}};
        const bool chosen = context.row_chosen(state::point_kind(curve), index);
        if (widgets::table_row(context.ui, "shape.point." + std::to_string(i), columns, cells, chosen)) {
            context.choose(state::point_kind(curve), index);
        }
        if (chosen) point_editor(context, curve, index, points);
    }
    if (widgets::button(context.ui, "shape.point.add", words::add_point, widgets::ButtonKind::plain)) {
        context.change(words::add_point, state::add_curve_point(curve));
    }
}

} // namespace evenfall::shell::steps
