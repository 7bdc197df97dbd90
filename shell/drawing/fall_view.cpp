#include "drawing/outline.hpp"
#include "drawing/water_sheet.hpp"
#include "look/words_drawing.hpp"
#include "look/words_water.hpp"
#include "widgets/plot.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace evenfall::shell::drawing {
namespace {

namespace words = look::words;
using state::Pose;
using widgets::Quantity;
using widgets::Unit;

constexpr float scale_width = 52.0f; ///< for the depth scale and its figures

/// The body about its centre of buoyancy, to be drawn at any place and pitch. Seen from port, the nose to the
/// left.
struct BodyFigure {
    std::vector<std::vector<WoodSpan>> segments;
    Vec3 b_m;
    double reach_m = 0.0; ///< from B to its farthest point
};

BodyFigure figure_of(const Scene& scene, int columns) {
    BodyFigure figure;
    figure.b_m = scene.evaluation.answers.b_m;
    for (int s = 0; s < static_cast<int>(scene.body().segments.size()); ++s) {
        figure.segments.push_back(side_columns(scene.body(), s, columns));
        for (const WoodSpan& c : figure.segments.back()) {
            for (double z : {c.low_m, c.high_m})
                figure.reach_m = std::max(figure.reach_m, std::hypot(c.x_m - figure.b_m.x, z - figure.b_m.z));
        }
    }
    return figure;
}

enum class Ghost { whole, earlier };

void set_down(Scene& scene, const BodyFigure& figure, const WorldToScreen& map, double u_m, double v_m,
              double pitch_rad, Ghost ghost, float weight) {
    const auto& ink = scene.ink();
    const auto turned = [&](double x_m, double z_m) {
        const ViewPoint p = pitched(x_m - figure.b_m.x, z_m - figure.b_m.z, pitch_rad);
        return pen::vec(map.at(u_m + p.u, v_m + p.v));
    };
    for (const auto& columns : figure.segments) {
        std::vector<ImVec2> back;
        std::vector<ImVec2> belly;
        for (const WoodSpan& c : columns) {
            back.push_back(turned(c.x_m, c.high_m));
            belly.push_back(turned(c.x_m, c.low_m));
        }
        const bool whole = ghost == Ghost::whole;
        pen::fill_ribbon(scene.list, back, belly, whole ? ink.wood : look::faded(ink.wood, 0.34f));
        pen::outline_ribbon(scene.list, back, belly, whole ? ink.ink : look::faded(ink.ink, 0.34f), weight);
    }
}

/// Distances between ticks and between figures in metres, round in the unit of the figures.
struct DepthScale {
    double tick_m = 0.0;
    double figure_m = 0.0;
    double one_m = 1.0; ///< of the unit
    std::string_view unit{};
};

DepthScale depth_scale(const Scene& scene, double depth_m, float height) {
    const bool metric = scene.ui.units.of(Quantity::length) == Unit::mm;
    // Depths are in metres or feet: millimetres are too fine.
    const double one = metric ? 1.0 : 12.0 * widgets::from_unit(1.0, Unit::inch);
    const int figures = std::max(2, static_cast<int>(height / 64.0f));
    const double step = widgets::round_step(depth_m / one, figures);
    return {step * one / 5.0, step * one, one, metric ? "m" : "ft"};
}

void draw_scale(Scene& scene, const WorldToScreen& map, double depth_m, float x, const DepthScale& scale) {
    auto& list = scene.list;
    const auto& ink = scene.ink();
    ImFont* const font = scene.ui.type.small;
    const float top = map.at(0.0, 0.0).y;
    const float low = map.at(0.0, -depth_m).y;
    list.AddLine({x, top}, {x, low}, ink.line, pen::medium);
    const int ticks = static_cast<int>(std::floor(depth_m / scale.tick_m + 1e-6));
    for (int i = 0; i <= ticks; ++i) {
        const float y = std::round(map.at(0.0, -i * scale.tick_m).y);
        const bool figure = i % 5 == 0;
        list.AddLine({x, y}, {x + (figure ? 10.0f : 5.0f), y}, ink.line, figure ? pen::medium : pen::hair);
        if (!figure) continue;
        const double value = i * scale.tick_m / scale.one_m;
        const int decimals =
            scale.figure_m / scale.one_m < 0.99 ? (scale.figure_m / scale.one_m < 0.099 ? 2 : 1) : 0;
        std::string text = widgets::number_text(value, Unit::one, decimals);
        if (i == 0 || i + 5 > ticks) {
            text += ' ';
            text += scale.unit;
        }
        pen::text(list, font, x - 6.0f, y - 0.5f * font->FontSize, ink.ink_soft, text, pen::Side::right);
    }
}

/// Seconds between the earlier poses that are drawn: a round number, with few enough poses to tell them
/// apart.
double pose_step_s(double end_s, double depth_px, double lure_px) {
    const double most = std::clamp(depth_px / std::max(1.35 * lure_px, 16.0), 2.0, 12.0);
    return widgets::round_step(end_s, static_cast<int>(most));
}

void draw_figures(Scene& scene, const Pose& pose, const widgets::Rect& rect) {
    widgets::Ui& ui = scene.ui;
    const Unit length = ui.units.of(Quantity::length);
    const Unit speed = ui.units.of(Quantity::fall);
    const bool metric = length == Unit::mm;
    const double shown_depth =
        metric ? pose.depth_m : pose.depth_m / (12.0 * widgets::from_unit(1.0, Unit::inch));
    // Near rest the time per length has no limit.
    const bool slow = speed != Unit::mm_per_s && pose.down_m_s < 0.01;
    struct Line {
        const char* title;
        std::string number;
        std::string_view unit;
    };
    const std::array<Line, 4> lines{
        {{words::figure_time, widgets::number_text(pose.time_s, Unit::one, 2), words::second},
         {words::figure_depth, widgets::number_text(shown_depth, Unit::one, 2), metric ? "m" : "ft"},
         {words::figure_speed, slow ? std::string("–") : widgets::number_text(pose.down_m_s, speed),
          widgets::symbol(speed)},
         {words::figure_pitch, widgets::number_text(pose.pitch_rad, Unit::degree),
          widgets::symbol(Unit::degree)}}};
    const float step = rect.h / static_cast<float>(lines.size());
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const widgets::Rect row{rect.x, rect.y + static_cast<float>(i) * step, rect.w, step};
        widgets::text_in(ui, row, ui.type.small, scene.ink().ink_soft, lines[i].title);
        widgets::figure_in(ui, row, ui.phone ? ui.type.label_strong : ui.type.body_strong, scene.ink().ink,
                           lines[i].number, lines[i].unit);
    }
}

/// The lure in its present attitude, enlarged.
void draw_larger(Scene& scene, const Pose& pose, double steepest_rad, const widgets::Rect& rect) {
    auto& list = scene.list;
    const auto& ink = scene.ink();
    ImFont* const font = scene.ui.type.small;
    list.AddRectFilled({rect.x, rect.y}, {rect.right(), rect.bottom()}, ink.paper, look::control_rounding);
    list.AddRect({rect.x, rect.y}, {rect.right(), rect.bottom()}, ink.rule, look::control_rounding, 0,
                 pen::hair);
    pen::text(list, font, rect.x + 8.0f, rect.y + 5.0f, ink.ink_soft, words::enlarged);
    const BodyFigure figure = figure_of(scene, 40);
    // Room for what projects aft and below, at any pitch.
    const PartsExtent out = reach(scene.document, scene.evaluation);
    const double behind = std::max(figure.reach_m, out.aft_m - figure.b_m.x);
    const double wide = 2.0 * std::max(behind, figure.reach_m);
    const double hang = std::max(0.15 * wide, figure.b_m.z - out.lowest_z_m);
    const double high = 2.0 * std::max(hang, figure.reach_m * std::sin(std::min(steepest_rad, 1.57)));
    const double scale = fitting_px_per_m(wide, high, rect.w - 16.0f, rect.h - 30.0f);
    const ImVec2 middle{rect.x + 0.5f * rect.w, rect.y + 0.5f * (rect.h + 16.0f)};
    const WorldToScreen map(scale, 0.0, 0.0, {middle.x, middle.y});
    const ImVec2 level[] = {{rect.x + 8.0f, middle.y}, {rect.right() - 8.0f, middle.y}};
    pen::dashed(list, level, ink.water_line, pen::hair, 7.0f, 5.0f);
    const WorldToScreen lure =
        WorldToScreen(scale, figure.b_m.x, figure.b_m.z, {middle.x, middle.y}).turned(pose.pitch_rad);
    list.PushClipRect({rect.x + 1.0f, rect.y + 1.0f}, {rect.right() - 1.0f, rect.bottom() - 1.0f}, true);
    set_down(scene, figure, map, 0.0, 0.0, pose.pitch_rad, Ghost::whole, look::outline);
    draw_dress(scene, lure);
    list.PopClipRect();
}

} // namespace

void draw_fall(Scene& scene, const fall::Track& track, double now_s, const widgets::Rect& rect) {
    auto& list = scene.list;
    const auto& ink = scene.ink();
    const bool phone = scene.ui.phone;
    ImFont* const font = scene.ui.type.small;
    list.AddRectFilled({rect.x, rect.y}, {rect.right(), rect.bottom()}, ink.water, look::control_rounding);

    const BodyFigure figure = figure_of(scene, 20);
    double left = 0.0;
    double right = 0.0;
    double steepest = 0.0;
    for (const fall::TrackPoint& p : track.points) {
        left = std::min(left, -p.forward_m);
        right = std::max(right, -p.forward_m);
        steepest = std::max(steepest, std::abs(p.state.pitch_rad));
    }
    const double depth = track.points.back().depth_m;
    const double margin = figure.reach_m;
    const double margin_v =
        std::max(0.02, figure.reach_m * std::max(0.25, std::sin(std::min(steepest, 1.57))));
    const float column_w = phone ? 124.0f : 196.0f;
    const float head = phone ? 6.0f : 26.0f;
    const float foot = 24.0f;
    const widgets::Rect way{rect.x + scale_width + 8.0f, rect.y + head,
                            rect.w - scale_width - column_w - 28.0f, rect.h - head - foot};
    const double px = fitting_px_per_m(right - left + 2.0 * margin, depth + 2.0 * margin_v, way.w, way.h);
    const double middle = 0.5 * (left + right);
    const float drawn_h = static_cast<float>((depth + 2.0 * margin_v) * px);
    const float top = way.y + 0.5f * (way.h - drawn_h);
    const WorldToScreen map(px, middle, margin_v, {way.x + 0.5f * way.w, top});

    if (!phone) pen::text(list, font, rect.x + 10.0f, rect.y + 7.0f, ink.ink_soft, words::from_rest);
    const DepthScale scale = depth_scale(scene, depth, static_cast<float>(depth * px));
    draw_scale(scene, map, depth, rect.x + scale_width, scale);
    // Lines of equal depth across the water.
    for (double d = 0.0; d <= depth + 1e-6; d += scale.figure_m) {
        const float y = std::round(map.at(0.0, -d).y);
        list.AddLine({rect.x + scale_width + 14.0f, y}, {way.right(), y}, look::faded(ink.water_line, 0.22f),
                     pen::hair);
    }

    std::vector<ImVec2> path;
    for (const fall::TrackPoint& p : track.points)
        path.push_back(pen::vec(map.at(-p.forward_m, -p.depth_m)));
    pen::dashed(list, path, look::faded(ink.water_line, 0.8f), pen::hair, 3.0f, 4.0f);

    const double end_s = state::duration_s(track);
    const double step_s = pose_step_s(end_s, depth * px, margin_v * px);
    list.PushClipRect({rect.x, rect.y}, {rect.right(), rect.bottom()}, true);
    for (int i = 0; i * step_s < now_s - 0.3 * step_s; ++i) {
        const Pose pose = state::pose_at(track, i * step_s);
        set_down(scene, figure, map, -pose.forward_m, -pose.depth_m, pose.pitch_rad, Ghost::earlier,
                 pen::hair);
    }
    const Pose now = state::pose_at(track, now_s);
    set_down(scene, figure, map, -now.forward_m, -now.depth_m, now.pitch_rad, Ghost::whole, pen::medium);
    // Its position on the scale.
    const float now_y = map.at(0.0, -now.depth_m).y;
    const float sx = rect.x + scale_width + 12.0f;
    list.AddTriangleFilled({sx, now_y}, {sx + 9.0f, now_y - 5.0f}, {sx + 9.0f, now_y + 5.0f}, ink.mark);
    list.PopClipRect();

    const std::string every = std::string(words::a_pose_every) + " " +
                              widgets::number_text(step_s, Unit::one,
                                                   step_s < 0.1   ? 2
                                                   : step_s < 1.0 ? 1
                                                                  : 0) +
                              " " + words::second;
    pen::text(list, font, rect.x + 10.0f, rect.bottom() - font->FontSize - 5.0f, ink.ink_soft, every);

    const float column_x = rect.right() - column_w - 10.0f;
    float figures_y = rect.y + 10.0f;
    // Where the height is too small for both, only the figures are shown.
    if (rect.h > 164.0f) {
        const float larger_h = std::clamp(0.36f * rect.h, 76.0f, steepest > 0.6 ? 210.0f : 132.0f);
        draw_larger(scene, now, steepest, {column_x, figures_y, column_w, larger_h});
        figures_y += larger_h + 6.0f;
    }
    const float figures_h = std::min(4.0f * (phone ? 26.0f : 34.0f), rect.bottom() - 8.0f - figures_y);
    draw_figures(scene, now, {column_x + 4.0f, figures_y, column_w - 8.0f, figures_h});
}

} // namespace evenfall::shell::drawing
