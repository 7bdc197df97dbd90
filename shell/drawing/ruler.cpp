#include "drawing/scene.hpp"

#include <cmath>
#include <numeric>
#include <string>

namespace evenfall::shell::drawing {
namespace {

/// Divisions of a ruler: number of smallest steps between ticks of each length and between figures.
struct Division {
    double step_m;
    int middle;          ///< a tick of middle length every so many steps
    int large;           ///< a long tick every so many steps
    int figure;          ///< a figure every so many steps
    double figure_value; ///< value of one large step, in the unit of the figures
};

Division millimetres(double px_per_m) {
    const double px_per_mm = px_per_m * 1e-3;
    if (px_per_mm >= 24.0) return {0.0002, 1, 5, 5, 1.0 / 5.0};
    if (px_per_mm >= 10.0) return {0.0005, 1, 2, 10, 0.5};
    if (px_per_mm >= 2.2) return {0.001, 5, 10, px_per_mm >= 4.0 ? 10 : 20, 1.0};
    if (px_per_mm >= 1.2) return {0.002, 5, 10, 20, 2.0};
    return {0.005, 2, 4, 10, 5.0};
}

Division inches(double px_per_m, double inch_m) {
    const double px_per_inch = px_per_m * inch_m;
    if (px_per_inch >= 900.0) return {inch_m / 64.0, 2, 4, 8, 1.0 / 64.0};
    if (px_per_inch >= 300.0) return {inch_m / 32.0, 2, 4, 8, 1.0 / 32.0};
    if (px_per_inch >= 72.0) return {inch_m / 16.0, 4, 8, 16, 1.0 / 16.0};
    return {inch_m / 8.0, 2, 4, 8, 1.0 / 8.0};
}

float tick_length(const Division& division, int i) {
    if (i % division.figure == 0) return 12.0f;
    if (i % division.large == 0) return 9.0f;
    return i % division.middle == 0 ? 7.0f : 4.0f;
}

bool in_inches(const Scene& scene) {
    return scene.ui.units.of(widgets::Quantity::length) != widgets::Unit::mm;
}

Division division_of(const Scene& scene, double px_per_m) {
    return in_inches(scene) ? inches(px_per_m, widgets::from_unit(1.0, widgets::Unit::inch))
                            : millimetres(px_per_m);
}

/// A figure of the ruler: whole, or with a fraction ("1 3/8") where the divisions are that fine.
std::string figure_text(double value) {
    constexpr int finest = 64;
    if (value < 0.0) return "−" + figure_text(-value);
    const auto parts = static_cast<int>(std::lround(value * finest));
    const int whole = parts / finest;
    const int rest = parts % finest;
    if (rest == 0) return std::to_string(whole);
    const int common = std::gcd(rest, finest);
    const std::string fraction = std::to_string(rest / common) + "/" + std::to_string(finest / common);
    return whole == 0 ? fraction : std::to_string(whole) + " " + fraction;
}

} // namespace

void draw_ruler(Scene& scene, const WorldToScreen& map, const widgets::Rect& rect) {
    auto& list = scene.list;
    const auto& ink = scene.ink();
    const Division division = division_of(scene, map.px_per_m());
    const double length = scene.body().lines->length_m();
    ImFont* const font = scene.ui.type.small;

    const float edge = rect.bottom();
    const float x0 = map.at(0.0, 0.0).x;
    const float x1 = map.at(length, 0.0).x;
    list.AddLine({x0, edge}, {x1, edge}, ink.line, pen::hair);
    const int steps = static_cast<int>(std::floor(length / division.step_m + 1e-6));
    for (int i = 0; i <= steps; ++i) {
        const float x = std::round(map.at(i * division.step_m, 0.0).x) + 0.5f;
        list.AddLine({x, edge - tick_length(division, i)}, {x, edge}, ink.line, pen::hair);
        if (i % division.figure == 0) {
            std::string words = figure_text(i * division.figure_value);
            if (i == 0) words += in_inches(scene) ? " in" : " mm";
            const float half = 0.5f * widgets::text_width(font, words);
            // The last figure stays whole where its tick is closer to the edge than half its width.
            const bool last = x <= rect.right() && x + half > rect.right();
            pen::text(list, font,
                      i == 0 ? x - 1.0f
                      : last ? rect.right()
                             : x,
                      edge - 13.0f - font->FontSize, ink.ink_soft, words,
                      i == 0 ? pen::Side::left
                      : last ? pen::Side::right
                             : pen::Side::middle);
        }
    }

    // The station of the section: a flag that can be dragged along the ruler.
    const float sx = map.at(scene.view.section_x_m, 0.0).x;
    const ImVec2 flag[] = {{sx, edge + 2.0f}, {sx - 7.0f, edge - 9.0f}, {sx + 7.0f, edge - 9.0f}};
    list.AddTriangleFilled(flag[0], flag[1], flag[2], ink.paper);
    list.AddTriangle(flag[0], flag[1], flag[2], ink.ink, pen::medium);
    scene.ui.items.record({"draw.section", sx - 22.0f, edge - 30.0f, 44.0f, 44.0f, !scene.ui.covered});
}

void draw_height_ruler(Scene& scene, const WorldToScreen& map, const widgets::Rect& rect, double low_m,
                       double high_m) {
    auto& list = scene.list;
    const auto& ink = scene.ink();
    const Division division = division_of(scene, map.px_per_m());
    ImFont* const font = scene.ui.type.small;
    const float edge = rect.right();
    // Figures fit closer one above another than side by side.
    const bool close = map.px(division.large * division.step_m) > 1.2f * font->FontSize;
    const int figure = close ? division.large : division.figure;
    list.PushClipRect({rect.x, rect.y}, {edge + 1.0f, rect.bottom()}, true);
    list.AddLine({edge, map.at(0.0, high_m).y}, {edge, map.at(0.0, low_m).y}, ink.line, pen::hair);
    const int first = static_cast<int>(std::ceil(low_m / division.step_m - 1e-6));
    const int last = static_cast<int>(std::floor(high_m / division.step_m + 1e-6));
    for (int i = first; i <= last; ++i) {
        const float y = std::round(map.at(0.0, i * division.step_m).y) + 0.5f;
        const float tick = tick_length(division, i);
        list.AddLine({edge - tick, y}, {edge, y}, ink.line, pen::hair);
        if (i % figure == 0) {
            pen::text(list, font, edge - tick - 3.0f, y - 0.5f * font->FontSize, ink.ink_soft,
                      figure_text(i * division.figure_value), pen::Side::right);
        }
    }
    list.PopClipRect();
}

} // namespace evenfall::shell::drawing
