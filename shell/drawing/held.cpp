#include "drawing/finger.hpp"

#include "look/words_drawing.hpp"

#include <algorithm>
#include <string>

namespace evenfall::shell::drawing {
namespace {

namespace words = look::words;
using state::ItemKind;
using state::Pane;

/// Where the held item is asked to be, on the window.
widgets::Rect asked_place(const Scene& scene, const Places& places, ImVec2 at) {
    const auto& touch = scene.view.touch;
    constexpr float half_mark = 9.0f;
    widgets::Rect place{at.x - half_mark, at.y - half_mark, 2.0f * half_mark, 2.0f * half_mark};
    const auto index = static_cast<std::size_t>(std::max(touch.moving.index, 0));
    if (touch.pane == Pane::section) return place;
    const WorldToScreen& map = touch.pane == Pane::above && places.above ? *places.above : places.side;
    if (touch.moving.kind == ItemKind::hole && index < scene.document.holes.size()) {
        const auto& hole = scene.document.holes[index];
        const float radius = map.px(0.5 * hole.diameter_m);
        const ImVec2 centre = pen::vec(map.at(touch.to_u, touch.to_v));
        if (touch.pane == Pane::above)
            return {centre.x - radius, centre.y - radius, 2.0f * radius, 2.0f * radius};
        const auto& bore = scene.bores[index];
        const double depth = hole.depth_m > 0.0 ? hole.depth_m : hole.max_depth_m;
        const float a = map.at(0.0, bore.mouth_z_m).y;
        const float b = map.at(0.0, bore.mouth_z_m + bore.inward * depth).y;
        return {centre.x - radius, std::min(a, b), 2.0f * radius, std::abs(a - b)};
    }
    if (touch.moving.kind == ItemKind::joint && index < scene.document.joints.size()) {
        const auto station =
            scene.body().lines->at(std::clamp(touch.to_u, 0.0, scene.body().lines->length_m()));
        const float x = map.at(touch.to_u, 0.0).x;
        const float top = map.at(0.0, station.centre_z_m + station.half_height_m).y;
        const float half = std::max(map.px(0.5 * scene.document.joints[index].gap_m), 3.0f);
        return {x - half, top, 2.0f * half, map.px(2.0 * station.half_height_m)};
    }
    if (touch.moving.kind == ItemKind::pocket && index < scene.document.pockets.size()) {
        const auto& pocket = scene.document.pockets[index];
        const float half = map.px(0.5 * (pocket.x_to_m - pocket.x_from_m));
        const float x = map.at(touch.to_u, 0.0).x;
        return {x - half, at.y - 14.0f, 2.0f * half, 28.0f};
    }
    const ImVec2 point = pen::vec(map.at(touch.to_u, touch.to_v));
    return {point.x - half_mark, point.y - half_mark, 2.0f * half_mark, 2.0f * half_mark};
}

/// A barred ring: "not here", readable without colour.
void barred_sign(ImDrawList& list, ImVec2 middle, float radius, ImU32 ground, ImU32 colour) {
    list.AddCircleFilled(middle, radius, ground);
    list.AddCircle(middle, radius, colour, 0, 2.5f);
    const float arm = 0.62f * radius;
    list.AddLine({middle.x - arm, middle.y + arm}, {middle.x + arm, middle.y - arm}, colour, 2.5f);
}

void draw_refusal(Scene& scene, const widgets::Rect& place, const widgets::Rect& area,
                  const std::string& reason) {
    auto& list = scene.list;
    const auto& ink = scene.ink();
    const ImVec2 least{place.x, place.y};
    const ImVec2 most{place.right(), place.bottom()};
    list.AddRectFilled(least, most, ink.paper);
    pen::hatch(list, least, most, ink.mark, 5.0f, true);
    list.AddRect(least, most, ink.mark, 0.0f, 0, pen::heavy);
    const float middle = 0.5f * (place.x + place.right());

    ImFont* const font = scene.ui.type.label;
    const float room = std::min(area.w - 24.0f, 300.0f);
    const std::string text =
        widgets::broken_at_spaces(font, std::string(words::cannot_be_here) + " " + reason, room - 44.0f);
    const auto lines = 1 + std::count(text.begin(), text.end(), '\n');
    const float height = static_cast<float>(lines) * (font->FontSize + 2.0f) + 16.0f;
    // Above the finger; where there is no room, well below it.
    float y = place.y - height - 56.0f;
    if (y < area.y + 36.0f) y = std::min(place.bottom() + 44.0f, area.bottom() - height - 4.0f);
    const float x =
        std::clamp(middle - 0.5f * room, area.x + 4.0f, std::max(area.x + 4.0f, area.right() - room - 4.0f));
    list.AddRectFilled({x, y}, {x + room, y + height}, ink.paper, look::control_rounding);
    list.AddRect({x, y}, {x + room, y + height}, ink.mark, look::control_rounding, 0, pen::heavy);
    barred_sign(list, {x + 20.0f, y + 0.5f * height}, 9.0f, ink.paper, ink.mark);
    list.AddText(font, font->FontSize, {x + 38.0f, y + 8.0f}, ink.ink, text.c_str());
}

void draw_lens(Scene& scene, const Places& places, const widgets::Rect& area, ImVec2 at, Pane pane) {
    constexpr float side = 132.0f;
    constexpr float above_finger = 44.0f;
    constexpr double times = 2.5;
    float x = at.x - 0.5f * side;
    float y = at.y - above_finger - side;
    if (y < area.y) {
        // No room above: beside the hand.
        y = area.y + 2.0f;
        x = at.x > area.x + 0.5f * area.w ? at.x - side - 60.0f : at.x + 60.0f;
    }
    x = std::clamp(x, area.x, std::max(area.x, area.right() - side));
    const ImVec2 least{x, y};
    const ImVec2 most{x + side, y + side};
    auto& list = scene.list;
    list.AddRectFilled(least, most, scene.ink().paper, look::control_rounding);
    list.PushClipRect(least, most, true);
    const WorldToScreen map = pane == Pane::section                 ? *scene.section_map
                              : pane == Pane::above && places.above ? *places.above
                                                                    : places.side;
    const WorldToScreen near(times * map.px_per_m(), map.u_m(at.x), map.v_m(at.y),
                             {x + 0.5f * side, y + 0.5f * side});
    scene.lens = true;
    if (pane == Pane::section) {
        draw_section_at(scene, near);
        scene.section_map = map;
    } else if (pane == Pane::above) {
        draw_top_view(scene, near);
    } else {
        draw_side_view(scene, near, y - 100.0f);
    }
    scene.lens = false;
    list.PopClipRect();
    list.AddRect(least, most, scene.ink().ink, look::control_rounding, 0, pen::heavy);
}

} // namespace

void draw_held(Scene& scene, const Places& places, const widgets::Rect& area) {
    const auto& touch = scene.view.touch;
    const ImVec2 at = ImGui::GetIO().MousePos;
    const bool finger = ImGui::GetIO().MouseSource == ImGuiMouseSource_TouchScreen;
    if (scene.backdrop != nullptr && scene.backdrop->held && finger && ImGui::IsMousePosValid(&at)) {
        draw_lens(scene, places, area, at, Pane::side);
    }
    if (!touch.down || !touch.moved || touch.moving.kind == ItemKind::none || !ImGui::IsMousePosValid(&at))
        return;
    scene.ui.items.record({touch.refused ? "draw.refused" : "draw.held", at.x, at.y, 1.0f, 1.0f, false});
    // A finger covers the drawing, a mouse does not. A refusal replaces the magnifier.
    if (touch.refused) {
        draw_refusal(scene, asked_place(scene, places, at), area, scene.refusal);
    } else if (finger && (touch.pane != Pane::section || scene.section_map)) {
        draw_lens(scene, places, area, at, touch.pane);
    }
}

} // namespace evenfall::shell::drawing
