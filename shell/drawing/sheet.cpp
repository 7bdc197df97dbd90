#include "drawing/sheet.hpp"

#include "drawing/backdrop_view.hpp"
#include "drawing/finger.hpp"
#include "drawing/places.hpp"
#include "drawing/scene.hpp"
#include "look/words_drawing.hpp"
#include "widgets/button.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>
#include <utility>

namespace evenfall::shell::drawing {
namespace {

namespace words = look::words;

/// Station of the section through the views that share the ruler's scale.
void draw_station_line(Scene& scene, const Places& places) {
    const float x = std::round(places.side.at(scene.view.section_x_m, 0.0).x);
    const ImVec2 line[] = {{x, places.ruler.bottom() + 3.0f}, {x, places.side_bottom}};
    pen::dashed(scene.list, line, scene.ink().ink_soft, pen::hair, 8.0f, 4.0f);
}

/// Legend of the patterns in the holes, at the right end of a line of text.
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

/// The small screen's switch for the view under the side view.
void draw_switch(Scene& scene, state::Session& session, const widgets::Rect& rect) {
    const std::array<const char*, 3> labels{words::small_above, words::small_section, words::small_hang};
    const auto& ink = scene.ink();
    auto& list = scene.list;
    list.AddRectFilled({rect.x, rect.y}, {rect.right(), rect.bottom()}, ink.well, look::control_rounding);
    const auto parts = static_cast<float>(labels.size());
    const bool column = rect.h >= rect.w;
    for (std::size_t i = 0; i < labels.size(); ++i) {
        const float at = static_cast<float>(i) / parts;
        const widgets::Rect part = column
                                       ? widgets::Rect{rect.x, rect.y + at * rect.h, rect.w, rect.h / parts}
                                       : widgets::Rect{rect.x + at * rect.w, rect.y, rect.w / parts, rect.h};
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

/// The place of the button that ends the zoom, never over the lure: beside the switch, which makes room, or
/// in the lower right corner on a ground of its own.
widgets::Rect fit_place(Scene& scene, Places& places, const widgets::Rect& touchable) {
    constexpr float width = 66.0f;
    if (places.change) {
        widgets::Rect& change = *places.change;
        if (change.h >= change.w) {
            change.h -= look::target + 6.0f;
            return {change.x, change.bottom() + 6.0f, change.w, look::target};
        }
        change.w -= width + 6.0f;
        return {change.right() + 6.0f, change.y, width, change.h};
    }
    const widgets::Rect fit{touchable.right() - width, touchable.bottom() - look::target, width,
                            look::target};
    const widgets::Rect ground = fit.inset(-6.0f);
    scene.list.AddRectFilled({ground.x, ground.y}, {ground.right() + 6.0f, ground.bottom() + 6.0f},
                             scene.ink().paper, look::control_rounding, ImDrawFlags_RoundCornersTopLeft);
    return fit;
}

} // namespace

void sheet(widgets::Ui& ui, state::Session& session, const widgets::Rect& area, state::Backdrop* backdrop,
           const Uncertainty* uncertainty) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (!session.evaluation()) {
        pen::text(list, ui.type.body, area.x, area.y, ui.ink->ink_soft, words::nothing_to_draw);
        return;
    }
    // A copy: handling the finger may change the session while the scene still reads it.
    const document::Document document = session.document();
    Evaluation evaluation = *session.evaluation();
    if (uncertainty != nullptr && uncertainty->has_readings) {
        // The log's answers are those of the lure before a finger took hold; G and B follow the finger.
        const Vec3 g = evaluation.answers.g_m;
        const Vec3 b = evaluation.answers.b_m;
        evaluation.answers = uncertainty->evaluation.answers;
        if (session.unfinished()) {
            evaluation.answers.g_m = g;
            evaluation.answers.b_m = b;
        }
    }
    const state::ViewState view = session.view;
    Scene scene{ui, list, document, evaluation, view, {}, {}, state::Pane::side, false, {}, {}};
    if (backdrop != nullptr && !backdrop->there()) backdrop = nullptr;
    scene.backdrop = backdrop;
    if (!session.problems().empty()) scene.refusal = session.problems().front().sentence.text(ui.units);
    for (const auto& hole : document.holes)
        scene.bores.push_back(holes::place(hole, evaluation.body));

    const DrawnExtent now = spans(document, evaluation, view.step == state::Step::shape);
    const DrawnExtent s = view.touch.drawn.value_or(now);
    // In the Shape step heights need a ruler too.
    const float heights_w = view.step == state::Step::shape ? 34.0f : 0.0f;
    widgets::Rect room = area;
    room.x += heights_w;
    room.w -= heights_w;
    Places fitted = lay_out_large(s, room);
    // On an upright tablet, or with large text, all four views would leave the lure half the width: there one
    // of three is below it.
    const double width_share = fitted.scale * (s.aft_m - s.fore_m) / static_cast<double>(room.w);
    const bool squeezed = width_share < (room.w > 1.5f * room.h ? 0.6 : 0.45);
    const bool one_below = ui.phone || squeezed;
    if (one_below) fitted = lay_out_small(s, room, view.small_view);
    widgets::Rect touchable = area;
    const bool column = fitted.change && fitted.change->x > room.x;
    if (column) {
        touchable.w = fitted.change->x - 6.0f - area.x;
    } else if (fitted.change) {
        fitted.change->x = area.x;
        fitted.change->w = area.w;
        touchable.h = fitted.change->y - area.y;
    }
    take_zoom(ui, session, touchable);
    Places places = zoomed(fitted, touchable, session.view.zoom);
    ImFont* const small = ui.type.small;

    list.PushClipRect({area.x - 8.0f, area.y - 8.0f}, {touchable.right() + 8.0f, touchable.bottom() + 8.0f},
                      true);
    draw_station_line(scene, places);
    draw_side_view(scene, places.side, places.names_y);
    if (!one_below) {
        pen::text(list, small, area.x, places.side_head_y, ui.ink->ink_soft, words::from_the_side);
        if (!document.holes.empty()) draw_legend(scene, area.right() - 4.0f, places.above_head_y);
        pen::text(list, small, area.x, places.above_head_y, ui.ink->ink_soft, words::from_above);
    }
    if (places.above) draw_top_view(scene, *places.above);
    if (places.section) draw_section_view(scene, *places.section, places.scale);
    if (places.hang) draw_hang_view(scene, *places.hang);
    if (view.zoom.times > 1.0f) {
        // The ruler is fixed to the window, not to the paper that moves below it.
        list.AddRectFilled({area.x - 8.0f, area.y - 8.0f},
                           {area.right() + 8.0f, places.ruler.bottom() + 2.0f}, ui.ink->paper);
    }
    draw_ruler(scene, places.side, places.ruler);
    if (heights_w > 0.0f) {
        const float top = places.ruler.bottom() + 2.0f;
        draw_height_ruler(scene, places.side, {area.x, top, heights_w - 6.0f, touchable.bottom() - top},
                          now.belly_m, now.top_m);
    }
    draw_held(scene, places, touchable);
    list.PopClipRect();

    if (view.zoom.times > 1.0f) {
        if (widgets::button_at(ui, "draw.fit", fit_place(scene, places, touchable), words::fit,
                               widgets::ButtonKind::plain))
            session.view.zoom = {};
    }
    const widgets::Touch touch = widgets::touch_area(ui, "draw.sheet", touchable);
    const bool on_picture = scene.marks_can_be_moved() &&
                            take_backdrop_finger(ui, *backdrop, touch, places.side, view.touch.down);
    if (!on_picture) take_finger(scene, session, touch, places);
    if (session.view.touch.down && !session.view.touch.drawn) session.view.touch.drawn = s;
    take_keys(ui, session, touch);

    if (places.change) draw_switch(scene, session, *places.change);
}

} // namespace evenfall::shell::drawing
