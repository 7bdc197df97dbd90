#include "drawing/outline.hpp"
#include "drawing/scene.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace evenfall::shell::drawing {

void draw_top_view(Scene& scene, const WorldToScreen& map) {
    scene.pane = state::Pane::above;
    auto& list = scene.list;
    const auto& ink = scene.ink();
    draw_board(scene, map);
    const double length = scene.body().lines->length_m();
    const int segments = static_cast<int>(scene.body().segments.size());
    for (int s = 0; s < segments; ++s) {
        const auto columns = top_columns(scene.body(), s, 96);
        std::vector<ImVec2> port;
        std::vector<ImVec2> starboard;
        for (const WoodSpan& column : columns) {
            starboard.push_back(pen::vec(map.at(column.x_m, column.high_m)));
            port.push_back(pen::vec(map.at(column.x_m, column.low_m)));
        }
        pen::fill_ribbon(list, starboard, port, ink.wood);
        constexpr std::array<double, 5> ways{-0.66, -0.3, 0.04, 0.4, 0.72};
        for (std::size_t k = 0; k < ways.size(); ++k) {
            // The grain runs straight through the board: a relieved face cuts it off.
            std::vector<ImVec2> grain;
            const auto flush = [&] {
                pen::line(list, grain, ink.wood_grain, pen::hair);
                grain.clear();
            };
            for (const WoodSpan& column : columns) {
                const double wander =
                    0.05 * std::sin(7.0 * column.x_m / length + 1.9 * static_cast<double>(k));
                const double y = scene.body().lines->at(column.x_m).half_width_m *
                                 std::clamp(ways[k] + wander, -0.95, 0.95);
                if (std::abs(y) < column.high_m)
                    grain.push_back(pen::vec(map.at(column.x_m, y)));
                else
                    flush();
            }
            flush();
        }
        pen::outline_ribbon(list, starboard, port, ink.ink, look::outline);
    }
    draw_soft_tail(scene, map, true);
    // The middle plane as a centre line: long dashes.
    const ImVec2 axis[] = {pen::vec(map.at(-0.02 * length, 0.0)), pen::vec(map.at(1.02 * length, 0.0))};
    pen::dashed(list, axis, look::faded(ink.line, 0.7f), pen::hair, 12.0f, 5.0f);

    for (std::size_t i = 0; i < scene.document.pockets.size(); ++i) {
        const auto& pocket = scene.document.pockets[i];
        const ImVec2 a = pen::vec(map.at(pocket.x_from_m, pocket.y_m + 0.5 * pocket.width_m));
        const ImVec2 b = pen::vec(map.at(std::min(pocket.x_to_m, length), pocket.y_m - 0.5 * pocket.width_m));
        pen::dashed_rect(list, a, b, scene.chosen(state::ItemKind::pocket, i) ? ink.mark : ink.ink_soft,
                         pen::hair);
        add_hit(scene, "draw.above.pocket." + std::to_string(i),
                {state::ItemKind::pocket, static_cast<int>(i)}, {a.x, a.y, b.x - a.x, b.y - a.y}, 3);
    }
    draw_fittings(scene, map, true);
    for (std::size_t i = 0; i < scene.document.holes.size(); ++i) {
        const auto& hole = scene.document.holes[i];
        if (scene.bores[i].segment < 0) continue;
        const ImVec2 at = pen::vec(map.at(hole.x_m, hole.y_m));
        const float radius = map.px(0.5 * hole.diameter_m);
        add_hit(scene, "draw.above.hole." + std::to_string(i), {state::ItemKind::hole, static_cast<int>(i)},
                {at.x - radius, at.y - radius, 2.0f * radius, 2.0f * radius}, 0);
        const bool chosen = scene.chosen(state::ItemKind::hole, i);
        const ImU32 colour = chosen ? ink.mark : ink.ink;
        const float weight = chosen ? pen::heavy : pen::hair;
        if (hole.from == document::HoleFrom::back) {
            list.AddCircleFilled(at, radius, hole.cap ? ink.cap : ink.cavity);
            list.AddCircle(at, radius, colour, 0, weight + 0.5f);
            continue;
        }
        // Below the wood: dashed, as hidden edges are.
        std::vector<ImVec2> circle;
        for (int k = 0; k <= 36; ++k) {
            const float t = 6.2831853f * static_cast<float>(k) / 36.0f;
            circle.push_back({at.x + radius * std::cos(t), at.y + radius * std::sin(t)});
        }
        pen::dashed(list, circle, colour, weight, 3.5f, 2.5f);
    }
    draw_centres(scene, map, true);
    draw_readings(scene, map);
    draw_line_points(scene, map);
}

} // namespace evenfall::shell::drawing
