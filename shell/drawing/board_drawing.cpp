#include "body.hpp"
#include "drawing/scene.hpp"
#include "look/words_drawing.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::shell::drawing {
namespace {

namespace words = look::words;

/// The saw line: the body's edge offset by the allowance, perpendicular to it.
std::vector<ImVec2> saw_edge(const Scene& scene, const WorldToScreen& map, double side, double saw_m) {
    const auto& lines = *scene.body().lines;
    const bool above = scene.pane == state::Pane::above;
    const auto edge = [&](double x) {
        const auto at = lines.at(x);
        return above ? side * at.half_width_m : at.centre_z_m + side * at.half_height_m;
    };
    constexpr int count = 64;
    const double length = lines.length_m();
    std::vector<ImVec2> points;
    points.push_back(pen::vec(map.at(-saw_m, edge(0.0))));
    for (int i = 0; i <= count; ++i) {
        const double x = length * i / count;
        const double hair = 1e-3 * length;
        const double from = std::max(x - hair, 0.0);
        const double to = std::min(x + hair, length);
        const double slope = (edge(to) - edge(from)) / (to - from);
        const double norm = std::hypot(1.0, slope);
        points.push_back(pen::vec(map.at(x - side * saw_m * slope / norm, edge(x) + side * saw_m / norm)));
    }
    points.push_back(pen::vec(map.at(length + saw_m, edge(length))));
    return points;
}

} // namespace

void draw_board(Scene& scene, const WorldToScreen& map) {
    if (!scene.document.board || scene.view.step != state::Step::shape) return;
    const auto& board = *scene.document.board;
    const auto& lines = *scene.body().lines;
    const auto box = shape::body_box(lines);
    const bool above = scene.pane == state::Pane::above;
    const bool fits = shape::board_warnings(board, lines).empty();
    const double middle = above ? 0.0 : 0.5 * (box.low_z_m + box.high_z_m);
    const double half = 0.5 * (above ? board.thickness_m : board.height_m);
    const double u = 0.5 * (box.length_m - board.length_m);
    const ImVec2 least = pen::vec(map.at(u, middle + half));
    const ImVec2 most = pen::vec(map.at(u + board.length_m, middle - half));
    const auto& ink = scene.ink();
    const ImU32 colour = fits ? ink.line : ink.mark;
    const ImVec2 edge[] = {least, {most.x, least.y}, most, {least.x, most.y}, least};
    pen::dashed(scene.list, edge, colour, fits ? pen::hair : pen::heavy, 14.0f, 4.0f);
    for (const double side : {1.0, -1.0})
        pen::dashed(scene.list, saw_edge(scene, map, side, board.saw_m), colour, pen::hair, 3.0f, 3.0f);
    if (!scene.lens) {
        pen::text(scene.list, scene.ui.type.small, most.x - 4.0f,
                  most.y - scene.ui.type.small->FontSize - 3.0f, fits ? ink.ink_soft : ink.mark,
                  fits ? words::board : words::board_short, pen::Side::right, ink.paper);
    }
}

void draw_readings(Scene& scene, const WorldToScreen& map) {
    const bool above = scene.pane == state::Pane::above;
    const auto& ink = scene.ink();
    for (const auto& reading : scene.document.shape.measured) {
        if (above ? !reading.width_m : !reading.height_m) continue;
        const auto station = scene.body().lines->at(reading.x_m);
        const double middle = above ? 0.0 : station.centre_z_m;
        const double half = above ? station.half_width_m : station.half_height_m;
        for (const double side : {1.0, -1.0}) {
            // A caliper jaw: a short stroke along the skin on a stem.
            const ImVec2 at = pen::vec(map.at(reading.x_m, middle + side * half));
            const float out = side > 0.0 ? -1.0f : 1.0f;
            constexpr float stem = 9.0f;
            constexpr float jaw = 5.0f;
            scene.list.AddLine({at.x - jaw, at.y}, {at.x + jaw, at.y}, ink.water_line, pen::heavy);
            scene.list.AddLine(at, {at.x, at.y + out * stem}, ink.water_line, pen::medium);
        }
    }
}

} // namespace evenfall::shell::drawing
