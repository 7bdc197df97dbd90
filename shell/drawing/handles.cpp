#include "drawing/scene.hpp"
#include "state/drag.hpp"
#include "state/edits.hpp"

#include <cmath>
#include <string>

namespace evenfall::shell::drawing {
namespace {

using state::CurveKind;
using state::ItemKind;

/// A handle: small to look at, a fingertip wide to hit. The chosen one is larger, with a cross.
void draw_handle(Scene& scene, ImVec2 at, bool chosen, bool strong) {
    const float radius = chosen ? 7.0f : strong ? 4.5f : 3.5f;
    scene.list.AddCircleFilled(at, radius, scene.ink().paper);
    scene.list.AddCircle(at, radius, chosen ? scene.ink().mark : scene.ink().ink, 0,
                         chosen ? pen::heavy : pen::medium);
    if (!chosen) return;
    constexpr float arm = 3.5f;
    scene.list.AddLine({at.x - arm, at.y}, {at.x + arm, at.y}, scene.ink().mark, pen::hair);
    scene.list.AddLine({at.x, at.y - arm}, {at.x, at.y + arm}, scene.ink().mark, pen::hair);
}

void handle(Scene& scene, const std::string& id, state::Selection item, ImVec2 at, bool strong) {
    draw_handle(scene, at, scene.view.selection == item, strong);
    constexpr float half = 4.0f;
    add_hit(scene, id, item, {at.x - half, at.y - half, 2.0f * half, 2.0f * half}, -5);
}

void line_handles(Scene& scene, const WorldToScreen& map, CurveKind curve, const char* id) {
    const auto& points = state::curve_points(scene.document, curve);
    const bool strong = scene.view.curve == curve;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const state::Selection item{state::point_kind(curve), static_cast<int>(i)};
        const std::string name = "draw." + std::string(id) + "." + std::to_string(i);
        handle(scene, name, item, pen::vec(map.at(points[i].x_m, points[i].value)), strong);
        if (curve == CurveKind::half_width && points[i].value > 0.0) {
            handle(scene, name + ".port", item, pen::vec(map.at(points[i].x_m, -points[i].value)), strong);
        }
    }
}

} // namespace

void draw_line_points(Scene& scene, const WorldToScreen& map) {
    if (scene.view.step != state::Step::shape) return;
    if (scene.pane == state::Pane::above) {
        line_handles(scene, map, CurveKind::half_width, "width");
    } else {
        line_handles(scene, map, CurveKind::back, "back");
        line_handles(scene, map, CurveKind::belly, "belly");
    }
}

void draw_section_points(Scene& scene) {
    if (scene.view.step != state::Step::shape || !scene.section_map) return;
    const auto& section = scene.document.shape.section;
    const auto station = scene.body().lines->at(scene.view.section_x_m);
    const auto place = [&](double y, double z) {
        return pen::vec(
            scene.section_map->at(y * station.half_width_m, station.centre_z_m + z * station.half_height_m));
    };
    if (section.kind != document::SectionKind::drawn) {
        const int index = state::section_point_at(section, scene.view.section_x_m);
        const double share = state::diagonal_share(section.kind, station.parameter);
        handle(scene, "draw.corners", {ItemKind::corner_point, index}, place(share, share), true);
        return;
    }
    for (std::size_t i = 1; i + 1 < section.half_outline.size(); ++i) {
        const auto& point = section.half_outline[i];
        handle(scene, "draw.section.point." + std::to_string(i),
               {ItemKind::section_point, static_cast<int>(i)}, place(point.y, point.z), true);
    }
}

} // namespace evenfall::shell::drawing
