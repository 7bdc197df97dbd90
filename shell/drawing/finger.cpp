#include "drawing/finger.hpp"

#include "body.hpp"
#include "look/words_drawing.hpp"
#include "state/edits.hpp"

#include "imgui_internal.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace evenfall::shell::drawing {
namespace {

namespace words = look::words;
using state::CurveKind;
using state::DragPoint;
using state::ItemKind;
using state::Pane;
using state::Selection;

/// Handles of the shape move with the finger at once; other items only after they were chosen, so that a slip
/// never moves a hole.
bool is_handle(ItemKind kind) {
    return state::curve_of(kind).has_value() || kind == ItemKind::section_point;
}

/// A point of the window in the coordinates in which the items of a view are dragged.
std::optional<DragPoint> spot_under(const Scene& scene, const Places& places, Pane pane, ImVec2 at) {
    switch (pane) {
    case Pane::side:
        return DragPoint{places.side.u_m(at.x), places.side.v_m(at.y)};
    case Pane::above:
        if (!places.above) return std::nullopt;
        return DragPoint{places.above->u_m(at.x), places.above->v_m(at.y)};
    case Pane::section:
        break;
    }
    if (!scene.section_map) return std::nullopt;
    const auto station = scene.body().lines->at(scene.view.section_x_m);
    if (!(station.half_width_m > 0.0 && station.half_height_m > 0.0)) return std::nullopt;
    return DragPoint{scene.section_map->u_m(at.x) / station.half_width_m,
                     (scene.section_map->v_m(at.y) - station.centre_z_m) / station.half_height_m};
}

/// A line of the shape near a point of the window, and x there.
struct LineSpot {
    CurveKind curve;
    double x_m;
};
std::optional<LineSpot> line_under(const Scene& scene, const Places& places, ImVec2 at) {
    constexpr float near_px = 12.0f;
    const auto& shape = scene.document.shape;
    std::optional<LineSpot> best;
    float best_way = near_px;
    const auto consider = [&](const WorldToScreen& map, CurveKind curve, const document::CurvePoints& points,
                              double sign) {
        const double x = map.u_m(at.x);
        if (points.size() < 2 || x <= points.front().x_m || x >= points.back().x_m) return;
        const float way = std::abs(map.at(x, sign * shape::Curve(points).at(x).value).y - at.y);
        if (way >= best_way) return;
        best_way = way;
        best = LineSpot{curve, x};
    };
    consider(places.side, CurveKind::back, shape.back, 1.0);
    consider(places.side, CurveKind::belly, shape.belly, 1.0);
    if (places.above) {
        consider(*places.above, CurveKind::half_width, shape.half_width, 1.0);
        consider(*places.above, CurveKind::half_width, shape.half_width, -1.0);
    }
    return best;
}

void choose(state::Session& session, Selection item) {
    session.view.selection = item;
    session.view.step = state::step_of(item.kind);
    if (const auto curve = state::curve_of(item.kind)) session.view.curve = *curve;
    session.view.reveal = true;
}

void begin(Scene& scene, state::Session& session, const Places& places, ImVec2 at) {
    auto& finger = session.view.touch;
    finger = {};
    finger.down = true;
    const Hit* under = nearest_hit(scene.hits, at);
    if (under == nullptr) return;
    const bool held = is_handle(under->item.kind) || under->item == session.view.selection;
    const auto own = state::spot_of(session.document(), under->item, under->pane == Pane::above);
    const auto there = spot_under(scene, places, under->pane, at);
    if (!held || !own || !there) return;
    finger.moving = under->item;
    finger.pane = under->pane;
    finger.offset_u = own->u - there->u;
    // A point of the width line can be held on either side.
    const bool mirrored = under->item.kind == ItemKind::width_point && there->v < 0.0;
    finger.offset_v = mirrored ? -own->v - there->v : own->v - there->v;
}

void drag(const Scene& scene, state::Session& session, const Places& places, ImVec2 at) {
    auto& finger = session.view.touch;
    const auto there = spot_under(scene, places, finger.pane, at);
    if (!there) return;
    if (session.view.selection != finger.moving) choose(session, finger.moving);
    finger.to_u = there->u + finger.offset_u;
    finger.to_v = there->v + finger.offset_v;
    if (finger.moving.kind == ItemKind::width_point) finger.to_v = std::abs(finger.to_v);
    const bool sideways_only = finger.pane == Pane::side && (finger.moving.kind == ItemKind::hole ||
                                                             finger.moving.kind == ItemKind::joint);
    const double v = sideways_only ? 0.0 : finger.to_v;
    const state::DragRules rules = rules_of(session, finger.pane, places.side.px_per_m());
    finger.refused = !session.apply(state::move_to(session.kept(), finger.moving, {finger.to_u, v}, rules));
}

/// A tap on the line of a drawn section adds a point there. Its points are close together on the screen, so a
/// point must be hit exactly to win over the line.
bool tapped_section(const Scene& scene, state::Session& session, const Places& places, ImVec2 at) {
    constexpr float near_px = 12.0f;
    const auto& section = scene.document.shape.section;
    if (section.kind != document::SectionKind::drawn || !places.section || !places.section->holds(at))
        return false;
    const auto spot = spot_under(scene, places, Pane::section, at);
    if (!spot) return false;
    const auto nearest = state::nearest_on_section(section.half_outline, spot->u, spot->v);
    const auto station = scene.body().lines->at(scene.view.section_x_m);
    const auto apart = [&](const document::OutlinePoint& a, double y, double z) {
        return scene.section_map->px(
            std::hypot((y - a.y) * station.half_width_m, (z - a.z) * station.half_height_m));
    };
    if (nearest.place == 0 || apart(nearest.at, spot->u, spot->v) > near_px) return false;
    const auto& before = section.half_outline[static_cast<std::size_t>(nearest.place) - 1];
    const auto& after = section.half_outline[static_cast<std::size_t>(nearest.place)];
    const float reach = std::min(near_px, 0.35f * apart(before, after.y, after.z));
    if (apart(before, spot->u, spot->v) <= reach || apart(after, spot->u, spot->v) <= reach) return false;
    if (!session.apply({words::add_point_label, state::add_section_point(nearest.place, nearest.at)}))
        return false;
    choose(session, {ItemKind::section_point, nearest.place});
    return true;
}

void tap(const Scene& scene, state::Session& session, const Places& places, ImVec2 at) {
    const Hit* under = nearest_hit(scene.hits, at);
    const bool shaping = scene.view.step == state::Step::shape;
    const bool handle = under != nullptr && is_handle(under->item.kind);
    if (shaping && tapped_section(scene, session, places, at)) return;
    if (shaping && !handle) {
        if (const auto line = line_under(scene, places, at)) {
            const int place =
                state::place_for_point(state::curve_points(session.kept(), line->curve), line->x_m);
            const Selection added{state::point_kind(line->curve), place};
            if (place >= 0 &&
                session.apply({words::add_point_label, state::add_curve_point_at(line->curve, line->x_m)})) {
                choose(session, added);
                return;
            }
        }
    }
    if (under != nullptr) {
        choose(session, under->item);
        return;
    }
    const double now = scene.ui.now_s;
    auto& last = session.view.last_tap;
    constexpr double twice_s = 0.4;
    constexpr float twice_px = 30.0f;
    const bool again =
        last.at_s >= 0.0 && now - last.at_s < twice_s && std::hypot(last.x - at.x, last.y - at.y) < twice_px;
    last = {now, at.x, at.y};
    if (again && session.view.zoom.times > 1.0f) {
        session.view.zoom = {};
        last = {};
        return;
    }
    if (at.y <= places.side_bottom) {
        session.view.section_x_m = std::clamp(places.side.u_m(at.x), 0.0, scene.body().lines->length_m());
    }
}

void let_go(state::Session& session, bool lifted) {
    auto& finger = session.view.touch;
    if (finger.moving.kind == ItemKind::none || !finger.moved) return;
    if (!lifted) {
        // A second finger, or the system, ended the drag.
        session.abandon();
    } else if (finger.refused) {
        session.finish_at_last_allowed(words::put_back);
    } else {
        session.finish();
    }
}

} // namespace

state::DragRules rules_of(const state::Session& session, Pane pane, double px_per_m) {
    constexpr double reach_px = 6.0;
    state::DragRules rules;
    rules.snap = session.view.snap;
    rules.mirror = session.view.mirror;
    rules.inches = session.settings.units.inches();
    rules.above = pane == Pane::above;
    rules.reach_m = std::min(reach_px / px_per_m, 0.0015);
    return rules;
}

void take_zoom(widgets::Ui& ui, state::Session& session, const widgets::Rect& area) {
    if (ui.covered) return;
    auto& zoom = session.view.zoom;
    if (ui.pinch && area.holds({ui.pinch->x, ui.pinch->y})) {
        const auto pinch = *std::exchange(ui.pinch, std::nullopt);
        zoom =
            zoomed_about(zoom, area, pinch.x - pinch.dx, pinch.y - pinch.dy, pinch.zoom, pinch.dx, pinch.dy);
    }
    const ImGuiIO& io = ImGui::GetIO();
    if (io.MouseWheel != 0.0f && ImGui::IsMousePosValid() && area.holds(io.MousePos)) {
        constexpr float per_notch = 1.15f;
        zoom = zoomed_about(zoom, area, io.MousePos.x, io.MousePos.y, std::pow(per_notch, io.MouseWheel),
                            0.0f, 0.0f);
    }
}

void take_finger(Scene& scene, state::Session& session, const widgets::Touch& touch, const Places& places) {
    auto& finger = session.view.touch;
    const ImVec2 at = ImGui::GetIO().MousePos;
    const bool somewhere = ImGui::IsMousePosValid(&at);
    if (touch.pressed && !finger.down && somewhere) begin(scene, session, places, at);
    if (touch.pressed && finger.down && somewhere) {
        scene.ui.glide.owned = true;
        const ImVec2 way = ImGui::GetMouseDragDelta(ImGuiMouseButton_Left, 0.0f);
        constexpr float wobble_px = 8.0f;
        if (std::hypot(way.x, way.y) > wobble_px) finger.moved = true;
        if (finger.moved && finger.moving.kind != ItemKind::none) {
            drag(scene, session, places, at);
        } else if (finger.moved && at.y <= places.side_bottom + 200.0f) {
            session.view.section_x_m = std::clamp(places.side.u_m(at.x), 0.0, scene.body().lines->length_m());
        }
    }
    // A finger that leaves the drawing while it holds an item still holds it.
    const bool still_down = ImGui::IsMouseDown(ImGuiMouseButton_Left) && somewhere;
    if (!touch.pressed && finger.down && !still_down) {
        if (touch.tapped && !finger.moved && somewhere) tap(scene, session, places, at);
        let_go(session, somewhere);
        finger = {};
    }
}

void take_keys(widgets::Ui& ui, state::Session& session, const widgets::Touch& touch) {
    if (!touch.focused || ui.covered || session.view.touch.down) return;
    constexpr std::array<std::pair<ImGuiKey, DragPoint>, 4> keys{{{ImGuiKey_LeftArrow, {-1.0, 0.0}},
                                                                  {ImGuiKey_RightArrow, {1.0, 0.0}},
                                                                  {ImGuiKey_UpArrow, {0.0, 1.0}},
                                                                  {ImGuiKey_DownArrow, {0.0, -1.0}}}};
    const Selection item = session.view.selection;
    const auto from = state::spot_of(session.document(), item);
    if (!from) return;
    for (const auto& [key, way] : keys) {
        if (!ImGui::IsKeyPressed(key, true)) continue;
        // The arrow moves the item, not the keyboard focus.
        ImGui::NavMoveRequestCancel();
        session.apply(state::nudge(session.kept(), item, way, session.settings.units.inches()));
    }
}

} // namespace evenfall::shell::drawing
