#include "state/drag.hpp"

#include "body.hpp"
#include "document_fields.hpp"
#include "evenfall.hpp"
#include "look/words_state.hpp"
#include "state/edits.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace evenfall::shell::state {
namespace {

/// Half a millimetre between neighbours, as in move_curve_point.
constexpr double apart_m = 0.0005;

template <class List>
bool has(const List& list, int index) {
    return index >= 0 && index < static_cast<int>(list.size());
}

template <class List>
auto& entry(List& list, int index) {
    return list[static_cast<std::size_t>(index)];
}

/// At nose and tail a hanger moves up and down, on belly and back along the lure.
bool stands_at_end(const document::Hanger& hanger) {
    return hanger.on == document::HangerOn::nose || hanger.on == document::HangerOn::tail;
}

const char* line_name(CurveKind curve) {
    switch (curve) {
    case CurveKind::back:
        return look::words::line_back;
    case CurveKind::belly:
        return look::words::line_belly;
    case CurveKind::half_width:
        return look::words::line_width;
    case CurveKind::corners:
        break;
    }
    return look::words::line_corners;
}

/// Moves the other line's point at the same station, or a new one there, the opposite way.
void move_opposite(document::Document& d, CurveKind other, double was_x_m, double x_m, double rise_m) {
    auto& points = curve_points(d, other);
    constexpr double same_station_m = 0.0003;
    for (std::size_t i = 0; i < points.size(); ++i) {
        if (std::abs(points[i].x_m - was_x_m) > same_station_m) continue;
        d = move_curve_point(other, static_cast<int>(i), x_m, points[i].value - rise_m)(std::move(d));
        return;
    }
    const int place = place_for_point(points, x_m);
    if (place < 0) return;
    const double level = shape::Curve(points).at(x_m).value;
    points.insert(points.begin() + place, {x_m, level - rise_m});
}

Edit move_line_point(CurveKind curve, int index, DragPoint to, const DragRules& rules) {
    return [=](document::Document d) {
        const auto before = entry(curve_points(d, curve), index);
        const double level = curve == CurveKind::half_width ? std::max(0.0, to.v) : to.v;
        const double value =
            rules.snap ? snapped_level_m(level, curve_points(d, curve), index, rules) : level;
        const double x = rules.snap ? snapped_m(to.u, rules) : to.u;
        d = move_curve_point(curve, index, x, value)(std::move(d));
        if (rules.mirror && (curve == CurveKind::back || curve == CurveKind::belly)) {
            const auto after = entry(curve_points(d, curve), index);
            move_opposite(d, curve == CurveKind::back ? CurveKind::belly : CurveKind::back, before.x_m,
                          after.x_m, after.value - before.value);
        }
        return d;
    };
}

Edit move_corner(int index, double share) {
    return on_document([=](document::Document& d) {
        auto& section = d.shape.section;
        if (has(section.curve(), index)) {
            entry(section.curve(), index).value = value_of_share(section.kind, share);
        }
    });
}

Edit move_outline_point(int index, DragPoint to) {
    return on_document([=](document::Document& d) {
        auto& outline = d.shape.section.half_outline;
        // The two ends are in the middle of belly and back.
        if (index <= 0 || index + 1 >= static_cast<int>(outline.size())) return;
        auto& point = entry(outline, index);
        // A point of full width keeps it: half the width is set by the width line.
        if (point.y < 1.0) point.y = std::clamp(to.u, 0.0, 1.0);
        point.z = std::clamp(to.v, -1.0, 1.0);
    });
}

} // namespace

double snap_step_m(bool inches) {
    return inches ? units::m_from_inch(1.0 / 32.0) : 0.0005;
}

double snapped_m(double value_m, const DragRules& rules) {
    const double step = snap_step_m(rules.inches);
    return std::round(value_m / step) * step;
}

double snapped_level_m(double value_m, const document::CurvePoints& points, int index,
                       const DragRules& rules) {
    double best = rules.reach_m;
    double level = snapped_m(value_m, rules);
    const auto attract = [&](double to) {
        if (std::abs(value_m - to) >= best) return;
        best = std::abs(value_m - to);
        level = to;
    };
    attract(0.0);
    if (has(points, index - 1)) attract(entry(points, index - 1).value);
    if (has(points, index + 1)) attract(entry(points, index + 1).value);
    return level;
}

std::optional<CurveKind> curve_of(ItemKind kind) {
    switch (kind) {
    case ItemKind::back_point:
        return CurveKind::back;
    case ItemKind::belly_point:
        return CurveKind::belly;
    case ItemKind::width_point:
        return CurveKind::half_width;
    case ItemKind::corner_point:
        return CurveKind::corners;
    default:
        return std::nullopt;
    }
}

ItemKind point_kind(CurveKind curve) {
    switch (curve) {
    case CurveKind::back:
        return ItemKind::back_point;
    case CurveKind::belly:
        return ItemKind::belly_point;
    case CurveKind::half_width:
        return ItemKind::width_point;
    case CurveKind::corners:
        break;
    }
    return ItemKind::corner_point;
}

std::optional<DragPoint> spot_of(const document::Document& d, Selection item, bool above) {
    const int i = item.index;
    switch (item.kind) {
    case ItemKind::back_point:
    case ItemKind::belly_point:
    case ItemKind::width_point: {
        const auto& points = curve_points(d, *curve_of(item.kind));
        if (!has(points, i)) return std::nullopt;
        return DragPoint{entry(points, i).x_m, entry(points, i).value};
    }
    case ItemKind::corner_point: {
        const auto& section = d.shape.section;
        if (!has(section.curve(), i)) return std::nullopt;
        const double share = diagonal_share(section.kind, entry(section.curve(), i).value);
        return DragPoint{share, share};
    }
    case ItemKind::section_point:
        if (!has(d.shape.section.half_outline, i)) return std::nullopt;
        return DragPoint{entry(d.shape.section.half_outline, i).y, entry(d.shape.section.half_outline, i).z};
    case ItemKind::joint:
        if (!has(d.joints, i)) return std::nullopt;
        return DragPoint{entry(d.joints, i).at_m, 0.0};
    case ItemKind::hole:
        if (!has(d.holes, i)) return std::nullopt;
        return DragPoint{entry(d.holes, i).x_m, above ? entry(d.holes, i).y_m : 0.0};
    case ItemKind::pocket: {
        if (!has(d.pockets, i)) return std::nullopt;
        const auto& pocket = entry(d.pockets, i);
        const double middle =
            pocket.z_from_m && pocket.z_to_m ? 0.5 * (*pocket.z_from_m + *pocket.z_to_m) : 0.0;
        return DragPoint{0.5 * (pocket.x_from_m + pocket.x_to_m), above ? pocket.y_m : middle};
    }
    case ItemKind::hanger: {
        if (!has(d.hangers, i)) return std::nullopt;
        const auto& hanger = entry(d.hangers, i);
        return stands_at_end(hanger) ? DragPoint{0.0, above ? 0.0 : hanger.z_m} : DragPoint{hanger.x_m, 0.0};
    }
    case ItemKind::part:
        if (!has(d.parts, i)) return std::nullopt;
        return DragPoint{entry(d.parts, i).at_m.x,
                         above ? entry(d.parts, i).at_m.y : entry(d.parts, i).at_m.z};
    case ItemKind::tail:
        if (!d.tail) return std::nullopt;
        return DragPoint{d.tail->x_m, above ? 0.0 : d.tail->z_m};
    case ItemKind::coat:
    case ItemKind::reading:
    case ItemKind::none:
        break;
    }
    return std::nullopt;
}

Change move_to(const document::Document& kept, Selection item, DragPoint to, const DragRules& rules) {
    Change change{move_label(kept, item), [](document::Document d) { return d; }, false};
    const auto from = spot_of(kept, item, rules.above);
    if (!from) return change;
    const int i = item.index;
    // Tenths of a millimetre without snapping: finer than a pencil mark.
    const auto rounded = [&](double m) {
        return rules.snap ? snapped_m(m, rules) : std::round(m * 1e4) / 1e4;
    };
    const bool along = std::abs(to.u - from->u) > 1e-9;
    const bool across = std::abs(to.v - from->v) > 1e-9;
    const double u = along ? rounded(to.u) : from->u;
    const double v = across ? rounded(to.v) : from->v;
    switch (item.kind) {
    case ItemKind::back_point:
    case ItemKind::belly_point:
    case ItemKind::width_point:
        change.edit = move_line_point(*curve_of(item.kind), i, rules.snap ? to : DragPoint{u, v}, rules);
        break;
    case ItemKind::corner_point:
        change.edit = move_corner(i, 0.5 * (to.u + to.v));
        break;
    case ItemKind::section_point:
        change.edit = move_outline_point(i, to);
        break;
    case ItemKind::joint:
        change.edit = [i, u](document::Document d) {
            if (!has(d.joints, i)) return d;
            document::Joint joint = entry(d.joints, i);
            joint.at_m = u;
            return set_joint(i, joint)(std::move(d));
        };
        break;
    case ItemKind::hole:
        change.edit = on_hole(i, [=, above = rules.above](document::Hole& hole) {
            hole.x_m = u;
            if (above) hole.y_m = v;
        });
        break;
    case ItemKind::pocket:
        change.edit = on_pocket(i, [=, above = rules.above, was = *from](document::Pocket& pocket) {
            pocket.x_from_m += u - was.u;
            pocket.x_to_m += u - was.u;
            if (above) {
                pocket.y_m = v;
            } else if (pocket.z_from_m && pocket.z_to_m) {
                // A pocket that is open at belly or back stays open.
                *pocket.z_from_m += v - was.v;
                *pocket.z_to_m += v - was.v;
            }
        });
        break;
    case ItemKind::hanger:
        change.edit = on_hanger(i, [=, above = rules.above](document::Hanger& hanger) {
            if (!stands_at_end(hanger))
                hanger.x_m = u;
            else if (!above)
                hanger.z_m = v;
        });
        break;
    case ItemKind::part:
        change.edit = on_part(i, [=, above = rules.above](document::Part& part) {
            part.at_m.x = u;
            (above ? part.at_m.y : part.at_m.z) = v;
        });
        break;
    case ItemKind::tail:
        change.edit = on_tail([=, above = rules.above](document::Tail& tail) {
            tail.x_m = u;
            if (!above) tail.z_m = v;
        });
        break;
    case ItemKind::coat:
    case ItemKind::reading:
    case ItemKind::none:
        break;
    }
    return change;
}

Change nudge(const document::Document& kept, Selection item, DragPoint way, bool inches) {
    const auto from = spot_of(kept, item);
    // Shares of a section are not in millimetres: the step is a fiftieth of its half width.
    const bool share = item.kind == ItemKind::corner_point || item.kind == ItemKind::section_point;
    const double step = share ? 0.02 : snap_step_m(inches);
    DragRules rules;
    rules.snap = false;
    rules.inches = inches;
    Change change = move_to(
        kept, item, from ? DragPoint{from->u + step * way.u, from->v + step * way.v} : DragPoint{}, rules);
    change.finished = true;
    return change;
}

std::string move_label(const document::Document& d, Selection item) {
    namespace words = look::words;
    const std::string number = std::to_string(item.index + 1);
    if (item.kind == ItemKind::corner_point && d.shape.section.curve().size() < 2)
        return words::move_section_handle;
    if (const auto curve = curve_of(item.kind))
        return words::move_point + number + words::move_point_of + line_name(*curve);
    switch (item.kind) {
    case ItemKind::section_point:
        return words::move_point + number + words::move_point_of + words::line_section;
    case ItemKind::joint:
        return words::move_joint + number;
    case ItemKind::hole:
        return words::move_hole + number;
    case ItemKind::pocket:
        return words::move_pocket + number;
    case ItemKind::hanger:
        return words::move_hanger + number;
    case ItemKind::tail:
        return words::move_tail;
    case ItemKind::part:
        return has(d.parts, item.index) && !entry(d.parts, item.index).name.empty()
                   ? words::move_named + entry(d.parts, item.index).name
                   : words::move_part + number;
    default:
        return words::move_thing;
    }
}

int place_for_point(const document::CurvePoints& points, double x_m) {
    if (points.size() < 2 || points.size() >= document::max_curve_points) return -1;
    for (std::size_t i = 1; i < points.size(); ++i) {
        if (x_m > points[i - 1].x_m + apart_m && x_m < points[i].x_m - apart_m) return static_cast<int>(i);
    }
    return -1;
}

Edit add_curve_point_at(CurveKind curve, double x_m) {
    return on_document([=](document::Document& d) {
        auto& points = curve_points(d, curve);
        const int place = place_for_point(points, x_m);
        if (place < 0) return;
        // On the curve itself, rounded to 0.01 mm, so that adding a point hardly changes it.
        const double level = std::round(shape::Curve(points).at(x_m).value * 1e5) / 1e5;
        points.insert(points.begin() + place, {std::round(x_m * 1e5) / 1e5, level});
    });
}

int section_point_at(const document::Section& section, double x_m) {
    int nearest = 0;
    for (int i = 1; has(section.curve(), i); ++i) {
        if (std::abs(entry(section.curve(), i).x_m - x_m) <
            std::abs(entry(section.curve(), nearest).x_m - x_m))
            nearest = i;
    }
    return nearest;
}

double diagonal_share(document::SectionKind kind, double value) {
    // |Y|ⁿ + |Z|ⁿ = 1 with Y = Z; a corner cut c runs from (1, 1 − c) to (1 − c, 1).
    if (kind == document::SectionKind::chamfered) return 1.0 - 0.5 * value;
    return std::pow(2.0, -1.0 / value);
}

double value_of_share(document::SectionKind kind, double share) {
    const document::NumberField field = document::section_field(kind).second;
    const auto [least, most] =
        std::minmax({diagonal_share(kind, field.min), diagonal_share(kind, field.max)});
    const double held = std::clamp(share, least, most);
    const double value =
        kind == document::SectionKind::chamfered ? 2.0 * (1.0 - held) : -std::numbers::ln2 / std::log(held);
    return std::clamp(std::round(100.0 * value) / 100.0, field.min, field.max);
}

} // namespace evenfall::shell::state
