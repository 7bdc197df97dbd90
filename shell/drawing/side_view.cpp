#include "drawing/backdrop_view.hpp"
#include "drawing/scene.hpp"

#include "drawing/outline.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace evenfall::shell::drawing {
namespace {

constexpr int columns_per_segment = 72;

void draw_grain(Scene& scene, const WorldToScreen& map, const std::vector<WoodSpan>& columns) {
    // Thin lines along the body, like the growth rings of a board sawn along the grain, each with its own
    // variation.
    constexpr std::array<double, 11> heights{-0.86, -0.7, -0.53, -0.38, -0.2, -0.05,
                                             0.14,  0.3,  0.49,  0.66,  0.84};
    const double length = scene.body().lines->length_m();
    for (std::size_t k = 0; k < heights.size(); ++k) {
        std::vector<ImVec2> points;
        points.reserve(columns.size());
        for (const WoodSpan& column : columns) {
            const double middle = 0.5 * (column.low_m + column.high_m);
            const double half = 0.5 * (column.high_m - column.low_m);
            const double phase = 1.7 * static_cast<double>(k);
            const double wander = 0.035 * std::sin(9.0 * column.x_m / length + phase) +
                                  0.018 * std::sin(23.0 * column.x_m / length + 2.1 * phase);
            points.push_back(
                pen::vec(map.at(column.x_m, middle + half * std::clamp(heights[k] + wander, -0.95, 0.95))));
        }
        pen::line(scene.list, points, scene.ink().wood_grain, pen::hair);
    }
}

void draw_segment(Scene& scene, const WorldToScreen& map, int segment) {
    const auto columns = side_columns(scene.body(), segment, columns_per_segment);
    std::vector<ImVec2> back;
    std::vector<ImVec2> belly;
    for (const WoodSpan& column : columns) {
        back.push_back(pen::vec(map.at(column.x_m, column.high_m)));
        belly.push_back(pen::vec(map.at(column.x_m, column.low_m)));
    }
    pen::fill_ribbon(scene.list, back, belly, scene.ink().wood);
    draw_grain(scene, map, columns);
}

void outline_segment(Scene& scene, const WorldToScreen& map, int segment) {
    const auto columns = side_columns(scene.body(), segment, columns_per_segment);
    std::vector<ImVec2> back;
    std::vector<ImVec2> belly;
    for (const WoodSpan& column : columns) {
        back.push_back(pen::vec(map.at(column.x_m, column.high_m)));
        belly.push_back(pen::vec(map.at(column.x_m, column.low_m)));
    }
    pen::outline_ribbon(scene.list, back, belly, scene.ink().ink, look::outline);
}

void draw_reliefs(Scene& scene, const WorldToScreen& map) {
    for (std::size_t j = 0; j < scene.body().joints.size(); ++j) {
        for (bool fore : {true, false}) {
            std::vector<ImVec2> points;
            for (const auto& edge : relief_edge(scene.body(), static_cast<int>(j), fore, 25)) {
                points.push_back(pen::vec(map.at(edge.x_m, edge.z_m)));
            }
            pen::line(scene.list, points, scene.ink().ink_soft, pen::hair);
        }
    }
}

void draw_pockets(Scene& scene, const WorldToScreen& map) {
    const auto& lines = *scene.body().lines;
    for (std::size_t i = 0; i < scene.document.pockets.size(); ++i) {
        const auto& pocket = scene.document.pockets[i];
        const double length = lines.length_m();
        const double x0 = std::clamp(pocket.x_from_m, 0.0, length);
        const double x1 = std::clamp(pocket.x_to_m, 0.0, length);
        const auto station = lines.at(0.5 * (x0 + x1));
        const double z0 = pocket.z_from_m.value_or(station.centre_z_m - station.half_height_m);
        const double z1 = pocket.z_to_m.value_or(station.centre_z_m + station.half_height_m);
        const ImVec2 least = pen::vec(map.at(x0, z1));
        const ImVec2 most = pen::vec(map.at(x1, z0));
        const bool chosen = scene.chosen(state::ItemKind::pocket, i);
        pen::dashed_rect(scene.list, least, most, chosen ? scene.ink().mark : scene.ink().ink_soft,
                         chosen ? pen::heavy : pen::hair);
        add_hit(scene, "draw.pocket." + std::to_string(i), {state::ItemKind::pocket, static_cast<int>(i)},
                {least.x, least.y, most.x - least.x, most.y - least.y}, 3);
    }
}

void draw_joint_marks(Scene& scene, const WorldToScreen& map) {
    const auto& lines = *scene.body().lines;
    for (std::size_t j = 0; j < scene.document.joints.size(); ++j) {
        const auto& joint = scene.document.joints[j];
        const auto station = lines.at(std::clamp(joint.at_m, 0.0, lines.length_m()));
        const ImVec2 top =
            pen::vec(map.at(joint.at_m - 0.5 * joint.gap_m, station.centre_z_m + station.half_height_m));
        const ImVec2 low =
            pen::vec(map.at(joint.at_m + 0.5 * joint.gap_m, station.centre_z_m - station.half_height_m));
        if (scene.chosen(state::ItemKind::joint, j)) {
            pen::corners(scene.list, {top.x - 5.0f, top.y - 5.0f}, {low.x + 5.0f, low.y + 5.0f},
                         scene.ink().mark, 8.0f, pen::heavy);
        }
        add_hit(scene, "draw.joint." + std::to_string(j), {state::ItemKind::joint, static_cast<int>(j)},
                {top.x, top.y, low.x - top.x, low.y - top.y}, 1);
    }
}

} // namespace

void draw_side_view(Scene& scene, const WorldToScreen& map, float names_y) {
    scene.pane = state::Pane::side;
    scene.labels.clear();
    const auto& ink = scene.ink();
    const int segments = static_cast<int>(scene.body().segments.size());
    draw_board(scene, map);
    for (int s = 0; s < segments; ++s)
        draw_segment(scene, map, s);
    if (scene.backdrop != nullptr) draw_backdrop(scene, map);
    draw_reliefs(scene, map);
    for (int s = 0; s < segments; ++s)
        outline_segment(scene, map, s);
    draw_pockets(scene, map);
    draw_fittings(scene, map, false);
    draw_parts(scene, map);
    draw_soft_tail(scene, map, false);
    for (std::size_t i = 0; i < scene.document.holes.size(); ++i) {
        const auto& hole = scene.document.holes[i];
        draw_hole(scene, map, i, hole.x_m, 0.5 * hole.diameter_m, true);
        const auto& bore = scene.bores[i];
        if (bore.segment < 0) continue;
        const double depth = hole.depth_m > 0.0 ? hole.depth_m : hole.max_depth_m;
        const ImVec2 a = pen::vec(map.at(hole.x_m - 0.5 * hole.diameter_m, bore.mouth_z_m));
        const ImVec2 b =
            pen::vec(map.at(hole.x_m + 0.5 * hole.diameter_m, bore.mouth_z_m + bore.inward * depth));
        add_hit(scene, "draw.hole." + std::to_string(i), {state::ItemKind::hole, static_cast<int>(i)},
                {std::min(a.x, b.x), std::min(a.y, b.y), std::abs(b.x - a.x), std::abs(b.y - a.y)}, 0);
    }
    draw_joint_marks(scene, map);

    for (int s = 0; s < segments && s < static_cast<int>(scene.document.segment_names.size()); ++s) {
        const auto& wood = scene.body().segments[static_cast<std::size_t>(s)];
        const auto& name = scene.document.segment_names[static_cast<std::size_t>(s)];
        const float room = map.px(wood.x_to_m - wood.x_from_m) - 4.0f;
        ImFont* const font = widgets::text_width(scene.ui.type.label, name) <= room ? scene.ui.type.label
                                                                                    : scene.ui.type.small;
        if (widgets::text_width(font, name) > room + 12.0f) continue;
        const float middle = map.at(0.5 * (wood.x_from_m + wood.x_to_m), 0.0).x;
        pen::text(scene.list, font, middle, names_y, ink.ink_soft, name, pen::Side::middle, ink.paper);
        const float width = widgets::text_width(font, name);
        scene.labels.push_back({middle - 0.5f * width, names_y, width, font->FontSize});
    }
    draw_centres(scene, map, false);
    draw_readings(scene, map);
    draw_line_points(scene, map);
    if (scene.marks_can_be_moved()) draw_backdrop_marks(scene, map);
}

} // namespace evenfall::shell::drawing
