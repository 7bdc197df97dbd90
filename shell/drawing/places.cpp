#include "drawing/places.hpp"

#include "body.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::shell::drawing {
namespace {

constexpr float ruler_height = 34.0f;
constexpr float head_height = 18.0f;    ///< "from the side"
constexpr float names_height = 20.0f;   ///< names of the segments
constexpr float numbers_height = 24.0f; ///< numbers of the holes, below the belly

/// The scale at which the side view and `more` of other views fit into a height: hooks and the holes' numbers
/// share the room below the belly.
double common_scale(const DrawnExtent& s, double more_m, float w, float h) {
    return std::min(fitting_px_per_m(s.aft_m - s.fore_m, s.top_m - s.low_m + more_m, w, h),
                    fitting_px_per_m(0.0, s.top_m - s.belly_m + more_m, w, h - numbers_height));
}
float side_height(const DrawnExtent& s, double scale) {
    return std::max(static_cast<float>((s.top_m - s.low_m) * scale),
                    static_cast<float>((s.top_m - s.belly_m) * scale) + numbers_height);
}

WorldToScreen lay_side(const DrawnExtent& s, double scale, const widgets::Rect& area, float top_y) {
    const float drawn = static_cast<float>((s.aft_m - s.fore_m) * scale);
    return {scale, s.fore_m, s.top_m, {area.x + 0.5f * (area.w - drawn), top_y}};
}

} // namespace

DrawnExtent spans(const document::Document& document, const Evaluation& evaluation, bool with_board) {
    const PartsExtent out = reach(document, evaluation);
    DrawnExtent s{out.fore_m, out.aft_m, out.highest_z_m, out.lowest_z_m, 0.0, 0.0};
    for (double x : evaluation.body.lines->breakpoints_m()) {
        const auto station = evaluation.body.lines->at(x);
        s.top_m = std::max(s.top_m, station.centre_z_m + station.half_height_m);
        s.belly_m = std::min(s.belly_m, station.centre_z_m - station.half_height_m);
        s.half_width_m = std::max(s.half_width_m, station.half_width_m);
    }
    if (with_board && document.board) {
        const auto& board = *document.board;
        const auto box = shape::body_box(*evaluation.body.lines);
        const double middle_z = 0.5 * (box.low_z_m + box.high_z_m);
        s.fore_m = std::min(s.fore_m, 0.5 * (box.length_m - board.length_m));
        s.aft_m = std::max(s.aft_m, 0.5 * (box.length_m + board.length_m));
        s.top_m = std::max(s.top_m, middle_z + 0.5 * board.height_m);
        s.low_m = std::min(s.low_m, middle_z - 0.5 * board.height_m);
        s.half_width_m = std::max(s.half_width_m, 0.5 * board.thickness_m);
    }
    return s;
}

Places lay_out_large(const DrawnExtent& s, const widgets::Rect& area) {
    Places p;
    const float fixed = ruler_height + head_height + names_height + head_height + 3.0f * look::gutter;
    const float lower_least = 128.0f;
    const double above_span = 2.0 * s.half_width_m;
    p.scale = common_scale(s, above_span, area.w - 8.0f, area.h - fixed - lower_least);
    const float side_h = side_height(s, p.scale);
    const float above_h = static_cast<float>(above_span * p.scale);
    const float spare = std::max(0.0f, area.h - fixed - side_h - above_h - lower_least);
    const float lower_h = lower_least + std::min(0.55f * spare, 150.0f);
    // The remaining height is divided as space between the views.
    const float air = std::max(0.0f, area.h - fixed - side_h - above_h - lower_h) / 3.0f;

    float y = area.y;
    p.side_head_y = y + ruler_height + 8.0f;
    y += ruler_height + head_height + 0.5f * air;
    p.names_y = y;
    y += names_height + 4.0f;
    p.side = lay_side(s, p.scale, area, y);
    p.ruler = {area.x, area.y, area.w, ruler_height};
    y += side_h;
    p.side_bottom = y;
    y += look::gutter + air;
    p.above_head_y = y;
    y += head_height + 2.0f;
    const WorldToScreen side = p.side;
    p.above = WorldToScreen(p.scale, s.fore_m, s.half_width_m, {side.at(s.fore_m, 0.0).x, y});
    const float lower_y = area.bottom() - lower_h;
    const float section_w = std::clamp(0.36f * area.w, 150.0f, 300.0f);
    p.section = widgets::Rect{area.x, lower_y, section_w, lower_h};
    p.hang =
        widgets::Rect{area.x + section_w + look::gutter, lower_y, area.w - section_w - look::gutter, lower_h};
    return p;
}

namespace {

constexpr float short_height = 260.0f; ///< of a drawing whose switch is at its side
constexpr float low_height = 400.0f;   ///< of a wide one: there is no room below the side view

/// Phone in landscape: section and hang are beside the side view instead of below it.
Places lay_out_low(const DrawnExtent& s, const widgets::Rect& area, state::SmallView view) {
    Places p;
    const float switch_h = 44.0f;
    // Where the height is very small, the switch is at the side and the drawing takes the full height.
    const float column_w = area.h < short_height ? 66.0f : 0.0f;
    const bool above = view == state::SmallView::above;
    const float room_h = area.h - (column_w > 0.0f ? 0.0f : switch_h + 6.0f);
    const float room_w = area.w - (column_w > 0.0f ? column_w + 8.0f : 0.0f);
    const float fixed = ruler_height + names_height + 8.0f;
    const float beside_w = above ? 0.0f : 0.36f * room_w;
    const widgets::Rect left{area.x, area.y, room_w - beside_w, area.h};
    const double above_span = above ? 2.0 * s.half_width_m : 0.0;
    p.scale = common_scale(s, above_span, left.w - 4.0f, room_h - fixed - (above ? 8.0f : 0.0f));
    p.ruler = {left.x, left.y, left.w, ruler_height};
    p.names_y = area.y + ruler_height + 3.0f;
    p.side = lay_side(s, p.scale, left, p.names_y + names_height);
    p.side_bottom = p.names_y + names_height + side_height(s, p.scale);
    p.change = column_w > 0.0f ? widgets::Rect{area.right() - column_w, area.y, column_w, area.h}
                               : widgets::Rect{area.x, area.bottom() - switch_h, area.w, switch_h};
    const float floor = area.y + room_h;
    if (above) {
        p.above = WorldToScreen(p.scale, s.fore_m, 0.0,
                                {p.side.at(s.fore_m, 0.0).x, 0.5f * (p.side_bottom + floor)});
    } else {
        const widgets::Rect beside{left.right() + 8.0f, area.y, beside_w - 8.0f, floor - area.y};
        (view == state::SmallView::section ? p.section : p.hang) = beside;
    }
    return p;
}

} // namespace

Places lay_out_small(const DrawnExtent& s, const widgets::Rect& area, state::SmallView view) {
    if (area.h < short_height || (area.w > 1.5f * area.h && area.h < low_height))
        return lay_out_low(s, area, view);
    Places p;
    const float switch_h = 44.0f;
    const float fixed = ruler_height + names_height + switch_h + 10.0f;
    const float lower_least = 78.0f;
    p.scale = common_scale(s, 0.0, area.w - 4.0f, area.h - fixed - lower_least);
    const float side_h = side_height(s, p.scale);
    p.ruler = {area.x, area.y, area.w, ruler_height};
    float y = area.y + ruler_height + 3.0f;
    p.names_y = y;
    y += names_height;
    p.side = lay_side(s, p.scale, area, y);
    y += side_h;
    p.side_bottom = y;
    p.change = widgets::Rect{area.x, area.bottom() - switch_h, area.w, switch_h};
    const widgets::Rect lower{area.x, y + 2.0f, area.w, area.bottom() - switch_h - 6.0f - y - 2.0f};
    switch (view) {
    case state::SmallView::above: {
        const WorldToScreen side = p.side;
        // At the same scale under the side view, so that stations are aligned.
        p.above = WorldToScreen(p.scale, s.fore_m, 0.0, {side.at(s.fore_m, 0.0).x, lower.y + 0.5f * lower.h});
        break;
    }
    case state::SmallView::section:
        p.section = lower;
        break;
    case state::SmallView::hang:
        p.hang = lower;
        break;
    }
    return p;
}

Places zoomed(const Places& fitted, const widgets::Rect& area, const state::Zoom& zoom) {
    Places p = fitted;
    const float left = area.x + zoom.x * area.w;
    const float top = area.y + zoom.y * area.h;
    const auto x = [&](float at) { return left + zoom.times * (at - area.x); };
    const auto y = [&](float at) { return top + zoom.times * (at - area.y); };
    const auto map = [&](const WorldToScreen& was) {
        const ScreenPoint origin = was.at(0.0, 0.0);
        return WorldToScreen(was.px_per_m() * static_cast<double>(zoom.times), 0.0, 0.0,
                             {x(origin.x), y(origin.y)});
    };
    const auto rect = [&](const std::optional<widgets::Rect>& was) -> std::optional<widgets::Rect> {
        if (!was) return std::nullopt;
        return widgets::Rect{x(was->x), y(was->y), zoom.times * was->w, zoom.times * was->h};
    };
    p.side = map(fitted.side);
    if (fitted.above) p.above = map(*fitted.above);
    p.section = rect(fitted.section);
    p.hang = rect(fitted.hang);
    p.names_y = y(fitted.names_y);
    p.side_head_y = y(fitted.side_head_y);
    p.above_head_y = y(fitted.above_head_y);
    p.side_bottom = y(fitted.side_bottom);
    p.scale = fitted.scale * static_cast<double>(zoom.times);
    return p;
}

state::Zoom zoomed_about(const state::Zoom& zoom, const widgets::Rect& area, float x, float y, float times,
                         float dx, float dy) {
    if (area.w <= 0.0f || area.h <= 0.0f || !(times > 0.0f)) return zoom;
    state::Zoom out;
    out.times = std::clamp(zoom.times * times, 1.0f, state::most_zoom);
    if (out.times < 1.005f) return {};
    const float real = out.times / zoom.times;
    // The point of paper under the fingers stays under them.
    const float u = (x - area.x) / area.w;
    const float v = (y - area.y) / area.h;
    out.x = std::clamp(u - real * (u - zoom.x) + dx / area.w, 1.0f - out.times, 0.0f);
    out.y = std::clamp(v - real * (v - zoom.y) + dy / area.h, 1.0f - out.times, 0.0f);
    return out;
}

} // namespace evenfall::shell::drawing
