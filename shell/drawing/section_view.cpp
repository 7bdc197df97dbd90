#include "drawing/scene.hpp"
#include "look/words_drawing.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace evenfall::shell::drawing {
namespace {

namespace words = look::words;

/// Round factors by which a section may be drawn larger than the side view.
constexpr std::array<double, 5> factors{3.0, 2.0, 1.5, 1.0, 0.5};

void draw_end_grain(Scene& scene, const WorldToScreen& map, double x_m, const shape::Station& station) {
    // Growth rings of a flat-sawn board: flat arcs, ending just inside the skin.
    for (double share = -0.85; share < 0.95; share += 0.19) {
        std::vector<ImVec2> ring;
        const double z0 = station.centre_z_m + share * station.half_height_m;
        const double half = 0.97 * shape::skin_half_width(*scene.body().lines, x_m, z0);
        for (int k = 0; k <= 20; ++k) {
            const double y = half * (-1.0 + 0.1 * k);
            const double lift = 0.10 * station.half_height_m *
                                (1.0 - (y / station.half_width_m) * (y / station.half_width_m));
            const double z = z0 + lift * (1.0 - std::abs(share));
            if (std::abs(y) <= shape::skin_half_width(*scene.body().lines, x_m, z))
                ring.push_back(pen::vec(map.at(y, z)));
        }
        pen::line(scene.list, ring, scene.ink().wood_grain, pen::hair);
    }
}

} // namespace

void draw_section_at(Scene& scene, const WorldToScreen& map) {
    const auto& lines = *scene.body().lines;
    const auto& ink = scene.ink();
    const double x = std::clamp(scene.view.section_x_m, 0.0, lines.length_m());
    const auto station = lines.at(x);
    ImFont* const font = scene.ui.type.small;
    scene.pane = state::Pane::section;
    scene.section_map = map;
    std::vector<ImVec2> rim;
    for (const auto& point : shape::section_outline(lines, x, 48))
        rim.push_back(pen::vec(map.at(point.u, point.v)));
    if (rim.size() < 3) return;
    const bool wood = shape::segment_at(scene.body(), x) >= 0;
    const ImVec2 middle = pen::vec(map.at(0.0, station.centre_z_m));
    if (!wood) {
        // In a gap there is no wood: only the outline, dashed.
        rim.push_back(rim.front());
        pen::dashed(scene.list, rim, ink.ink, pen::medium);
        pen::text(scene.list, font, middle.x, middle.y - 0.5f * font->FontSize, ink.ink_soft,
                  words::in_the_gap, pen::Side::middle, ink.paper);
        return;
    }
    pen::fill_star(scene.list, middle, rim, ink.wood_shade);
    draw_end_grain(scene, map, x, station);
    for (std::size_t i = 0; i < scene.document.holes.size(); ++i) {
        const auto& hole = scene.document.holes[i];
        const double radius = 0.5 * hole.diameter_m;
        const double off = std::abs(x - hole.x_m);
        if (off >= radius) continue;
        draw_hole(scene, map, i, hole.y_m, std::sqrt(radius * radius - off * off), false);
    }
    for (const auto& pocket : scene.document.pockets) {
        if (x < pocket.x_from_m || x > pocket.x_to_m) continue;
        const double z0 = pocket.z_from_m.value_or(station.centre_z_m - station.half_height_m);
        const double z1 = pocket.z_to_m.value_or(station.centre_z_m + station.half_height_m);
        const ImVec2 least = pen::vec(map.at(pocket.y_m - 0.5 * pocket.width_m, z1));
        const ImVec2 most = pen::vec(map.at(pocket.y_m + 0.5 * pocket.width_m, z0));
        scene.list.AddRectFilled(least, most, ink.cavity);
        pen::dashed_rect(scene.list, least, most, ink.ink_soft, pen::hair);
    }
    scene.list.AddPolyline(rim.data(), static_cast<int>(rim.size()), ink.ink, ImDrawFlags_Closed,
                           look::outline);
    draw_section_points(scene);
}

void draw_section_view(Scene& scene, const widgets::Rect& rect, double px_per_m) {
    const auto& lines = *scene.body().lines;
    const auto& ink = scene.ink();
    const double x = std::clamp(scene.view.section_x_m, 0.0, lines.length_m());
    const auto station = lines.at(x);
    const double width = 2.0 * station.half_width_m;
    const double height = 2.0 * station.half_height_m;
    ImFont* const font = scene.ui.type.small;
    // Text in its own column on the left, so that the drawing has the full height.
    const float column = 92.0f;
    const float other = rect.w > 320.0f ? column : 0.0f;
    const widgets::Rect room{rect.x + column, rect.y, rect.w - column - other, rect.h};

    // From the tallest and widest station, so that the scale is constant as the station moves.
    double tallest = 0.0;
    double widest = 0.0;
    for (double at : lines.breakpoints_m()) {
        tallest = std::max(tallest, 2.0 * lines.at(at).half_height_m);
        widest = std::max(widest, 2.0 * lines.at(at).half_width_m);
    }
    const double fit = fitting_px_per_m(widest, tallest, room.w - 8.0f, room.h - 3.0f);
    double factor = factors.back();
    for (double f : factors) {
        if (f * px_per_m <= fit) {
            factor = f;
            break;
        }
    }
    const WorldToScreen map(factor * px_per_m, 0.0, station.centre_z_m,
                            {room.x + 0.5f * room.w, room.y + 0.5f * room.h});

    const widgets::Unit unit = scene.ui.units.of(widgets::Quantity::length);
    const float line = font->FontSize + 3.0f;
    pen::text(scene.list, font, rect.x, rect.y, ink.ink_soft, words::section);
    pen::text(scene.list, scene.ui.type.label_strong, rect.x, rect.y + line, ink.ink,
              widgets::value_text(x, unit));
    // Where the height is small, the second pair of lines is on the other side.
    const bool low = rect.h < 5.0f * line;
    const pen::Side side = low ? pen::Side::right : pen::Side::left;
    const float foot_x = low ? rect.right() : rect.x;
    const float foot_y = low ? rect.y : rect.bottom() - 2.0f * line;
    pen::text(scene.list, font, foot_x, foot_y, ink.ink_soft,
              widgets::number_text(width, unit) + " " + words::times + " " +
                  widgets::value_text(height, unit),
              side);
    std::string scale_text = words::same_scale;
    if (factor != 1.0) {
        scale_text = std::string(words::scale) + " " + words::times + " " +
                     widgets::number_text(factor, widgets::Unit::one, factor == std::floor(factor) ? 0 : 1);
    }
    pen::text(scene.list, font, foot_x, foot_y + line, ink.ink_soft, scale_text, side);

    draw_section_at(scene, map);
}

} // namespace evenfall::shell::drawing
