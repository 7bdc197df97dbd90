#include "drawing/sheet.hpp"

#include "drawing/scene.hpp"
#include "look/words_drawing.hpp"
#include "look/words_state.hpp"
#include "state/edits.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>

namespace evenfall::shell::drawing {
namespace {

namespace words = look::words;
using state::ItemKind;
using state::Selection;

constexpr float ruler_height = 34.0f;
constexpr float head_height = 18.0f;    ///< "from the side"
constexpr float names_height = 20.0f;   ///< names of the segments
constexpr float numbers_height = 24.0f; ///< numbers of the holes, below the belly

/// How high and wide the lure is, drawn out with all that hangs on it [m].
struct Spans {
    double fore_m = 0.0;
    double aft_m = 0.0;
    double top_m = 0.0;
    double low_m = 0.0;   ///< hooks included
    double belly_m = 0.0; ///< wood only
    double half_width_m = 0.0;
};

Spans spans(const preset::Document& document, const Evaluation& evaluation) {
    const Reach out = reach(document, evaluation);
    Spans s{out.fore_m, out.aft_m, 0.0, out.lowest_z_m, 0.0, 0.0};
    for (double x : evaluation.body.lines->breakpoints_m()) {
        const auto station = evaluation.body.lines->at(x);
        s.top_m = std::max(s.top_m, station.centre_z_m + station.half_height_m);
        s.belly_m = std::min(s.belly_m, station.centre_z_m - station.half_height_m);
        s.half_width_m = std::max(s.half_width_m, station.half_width_m);
    }
    return s;
}

struct Places {
    widgets::Rect ruler;
    WorldToScreen side;
    float names_y = 0.0f;
    float side_head_y = 0.0f;
    float side_bottom = 0.0f;
    std::optional<WorldToScreen> above;
    float above_head_y = 0.0f;
    std::optional<widgets::Rect> section;
    std::optional<widgets::Rect> hang;
    std::optional<widgets::Rect> change; ///< the small screen's switch
    double scale = 1.0;
};

/// The scale at which side view and `more` of other views fit into a height: hooks and the holes' numbers
/// share the room below the belly.
double common_scale(const Spans& s, double more_m, float w, float h) {
    return std::min(fitting_px_per_m(s.aft_m - s.fore_m, s.top_m - s.low_m + more_m, w, h),
                    fitting_px_per_m(0.0, s.top_m - s.belly_m + more_m, w, h - numbers_height));
}
float side_height(const Spans& s, double scale) {
    return std::max(static_cast<float>((s.top_m - s.low_m) * scale),
                    static_cast<float>((s.top_m - s.belly_m) * scale) + numbers_height);
}

WorldToScreen lay_side(const Spans& s, double scale, const widgets::Rect& area, float top_y) {
    const float drawn = static_cast<float>((s.aft_m - s.fore_m) * scale);
    return {scale, s.fore_m, s.top_m, {area.x + 0.5f * (area.w - drawn), top_y}};
}

Places lay_out_large(const Spans& s, const widgets::Rect& area) {
    Places p;
    const float fixed = ruler_height + head_height + names_height + head_height + 3.0f * look::gutter;
    const float lower_least = 128.0f;
    const double above_span = 2.0 * s.half_width_m;
    p.scale = common_scale(s, above_span, area.w - 8.0f, area.h - fixed - lower_least);
    const float side_h = side_height(s, p.scale);
    const float above_h = static_cast<float>(above_span * p.scale);
    const float spare = std::max(0.0f, area.h - fixed - side_h - above_h - lower_least);
    const float lower_h = lower_least + std::min(0.55f * spare, 150.0f);
    // What is left is shared out as air between the views.
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

Places lay_out_small(const Spans& s, const widgets::Rect& area, state::SmallView view) {
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
        // To the same scale under the side view, so that stations lie below one another.
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

/// Station of the section through the views that share the ruler's scale.
void draw_station_line(Scene& scene, const Places& places) {
    const float x = std::round(places.side.at(scene.view.section_x_m, 0.0).x);
    const ImVec2 line[] = {{x, places.ruler.bottom() + 3.0f}, {x, places.side_bottom}};
    pen::dashed(scene.list, line, scene.ink().ink_soft, pen::hair, 8.0f, 4.0f);
}

/// What the patterns in the holes mean, at the right end of a line of words.
void draw_legend(Scene& scene, float right, float y) {
    const auto& ink = scene.ink();
    ImFont* const font = scene.ui.type.small;
    constexpr float size = 12.0f;
    struct Swatch {
        const char* word;
        ImU32 ground;
        char pattern;
    };
    const std::array<Swatch, 4> swatches{{{words::legend_plugged, ink.cap, 'x'},
                                          {words::legend_void, ink.cavity, ' '},
                                          {words::legend_cap, ink.cap, '/'},
                                          {words::legend_fill, ink.lead, '.'}}};
    float x = right;
    for (const Swatch& swatch : swatches) {
        x -= widgets::text_width(font, swatch.word);
        pen::text(scene.list, font, x, y, ink.ink_soft, swatch.word);
        x -= size + 5.0f;
        const ImVec2 least{x, y + 2.0f};
        const ImVec2 most{x + size, y + 2.0f + size};
        scene.list.AddRectFilled(least, most, swatch.ground);
        if (swatch.pattern == '.') pen::dots(scene.list, least, most, ink.lead_hatch, 5.0f);
        if (swatch.pattern == '/' || swatch.pattern == 'x') {
            pen::hatch(scene.list, least, most, ink.lead, 4.0f, swatch.pattern == 'x');
        }
        scene.list.AddRect(least, most, ink.ink, 0.0f, 0, pen::hair);
        x -= 14.0f;
    }
}

/// The small screen's choice of what stands under the side view.
void draw_switch(Scene& scene, state::Session& session, const widgets::Rect& rect) {
    const std::array<const char*, 3> labels{words::small_above, words::small_section, words::small_hang};
    const auto& ink = scene.ink();
    auto& list = scene.list;
    list.AddRectFilled({rect.x, rect.y}, {rect.right(), rect.bottom()}, ink.well, look::control_rounding);
    const float width = rect.w / static_cast<float>(labels.size());
    for (std::size_t i = 0; i < labels.size(); ++i) {
        const widgets::Rect part{rect.x + static_cast<float>(i) * width, rect.y, width, rect.h};
        const widgets::Touch touch = widgets::touch_area(scene.ui, "draw.view." + std::to_string(i), part);
        const bool on = scene.view.small_view == static_cast<state::SmallView>(i);
        const widgets::Rect chip = part.inset(3.0f);
        if (on || touch.pressed) {
            list.AddRectFilled({chip.x, chip.y}, {chip.right(), chip.bottom()},
                               touch.pressed ? ink.pressed : ink.paper, 6.0f);
        }
        if (on) list.AddRect({chip.x, chip.y}, {chip.right(), chip.bottom()}, ink.ink, 6.0f, 0, pen::medium);
        widgets::text_in(scene.ui, part, on ? scene.ui.type.label_strong : scene.ui.type.label,
                         on ? ink.ink : ink.ink_soft, labels[i], widgets::Align::middle);
        if (touch.focused) widgets::focus_ring(scene.ui, chip, 6.0f);
        if (touch.tapped) session.view.small_view = static_cast<state::SmallView>(i);
    }
}

/// Reads the finger and changes the session. `slides_from`/`slides_to`: the band in which a tap or slide off
/// any item moves the station of the section.
void take_finger(Scene& scene, state::Session& session, const widgets::Touch& touch, const Places& places) {
    auto& finger = session.view.touch;
    const ImVec2 at = ImGui::GetIO().MousePos;
    const bool somewhere = ImGui::IsMousePosValid(&at);
    if (touch.pressed && !finger.down && somewhere) {
        finger = {};
        finger.down = true;
        const Selection under = nearest_item(scene.hits, at);
        // Only what has been chosen before goes with the finger, so that a slip never moves a hole.
        if (under.kind == ItemKind::hole && under == session.view.selection) {
            finger.moving = under;
            const auto& hole = session.document().holes[static_cast<std::size_t>(under.index)];
            finger.offset_m = hole.x_m - places.side.u_m(at.x);
        }
    }
    if (touch.pressed && finger.down && somewhere) {
        scene.ui.glide.owned = true;
        const ImVec2 way = ImGui::GetMouseDragDelta(ImGuiMouseButton_Left, 0.0f);
        if (std::hypot(way.x, way.y) > 8.0f) finger.moved = true;
        if (finger.moved && finger.moving.kind == ItemKind::hole) {
            // Tenths of a millimetre: finer than a pencil mark.
            const double x = std::round((places.side.u_m(at.x) + finger.offset_m) * 1e4) / 1e4;
            const int index = finger.moving.index;
            session.apply({look::words::history_place_of_hole + std::to_string(index + 1),
                           state::on_hole(index, [x](preset::Hole& hole) { hole.x_m = x; }), false});
        } else if (finger.moved && at.y <= places.side_bottom + 200.0f) {
            const double length = scene.body().lines->length_m();
            session.view.section_x_m = std::clamp(places.side.u_m(at.x), 0.0, length);
        }
    }
    if (!touch.pressed && finger.down) {
        if (touch.tapped && !finger.moved) {
            const Selection under = nearest_item(scene.hits, at);
            if (under.kind != ItemKind::none) {
                session.view.selection = under;
                session.view.step = state::step_of(under.kind);
                session.view.reveal = true;
            } else if (somewhere && at.y <= places.side_bottom) {
                const double length = scene.body().lines->length_m();
                session.view.section_x_m = std::clamp(places.side.u_m(at.x), 0.0, length);
            }
        }
        if (finger.moving.kind != ItemKind::none) session.finish();
        finger = {};
    }
}

} // namespace

void sheet(widgets::Ui& ui, state::Session& session, const widgets::Rect& area) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (!session.evaluation()) {
        pen::text(list, ui.type.body, area.x, area.y, ui.ink->ink_soft, words::nothing_to_draw);
        return;
    }
    // A copy: taking the finger may change the session while the scene still reads it.
    const preset::Document document = session.document();
    const Evaluation evaluation = *session.evaluation();
    const state::ViewState view = session.view;
    Scene scene{ui, list, document, evaluation, view, {}, {}};
    for (const auto& hole : document.holes)
        scene.bores.push_back(holes::place(hole, evaluation.body));

    const Spans s = spans(document, evaluation);
    const Places places = ui.phone ? lay_out_small(s, area, view.small_view) : lay_out_large(s, area);
    ImFont* const small = ui.type.small;

    list.PushClipRect({area.x - 8.0f, area.y - 8.0f}, {area.right() + 8.0f, area.bottom() + 8.0f}, true);
    if (!ui.phone) {
        pen::text(list, small, area.x, places.side_head_y, ui.ink->ink_soft, words::from_the_side);
        if (!document.holes.empty()) draw_legend(scene, area.right() - 4.0f, places.above_head_y);
        pen::text(list, small, area.x, places.above_head_y, ui.ink->ink_soft, words::from_above);
    }
    draw_station_line(scene, places);
    draw_side_view(scene, places.side, places.names_y);
    if (places.above) draw_top_view(scene, *places.above);
    if (places.section) draw_section_view(scene, *places.section, places.scale);
    if (places.hang) draw_hang_view(scene, *places.hang);
    draw_ruler(scene, places.side, places.ruler);
    list.PopClipRect();

    widgets::Rect touchable = area;
    if (places.change) touchable.h = places.change->y - area.y;
    const widgets::Touch touch = widgets::touch_area(ui, "draw.sheet", touchable);
    take_finger(scene, session, touch, places);

    if (places.change) draw_switch(scene, session, *places.change);
}

} // namespace evenfall::shell::drawing
