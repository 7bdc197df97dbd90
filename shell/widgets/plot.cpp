#include "widgets/plot.hpp"

#include "imgui_internal.h"

#include <algorithm>
#include <cmath>

namespace evenfall::shell::widgets {
namespace {

struct Range {
    double least = 0.0;
    double most = 1.0;
    double step = 1.0;
};

Range heights(const Plot& plot) {
    bool any = plot.with_zero;
    double least = 0.0;
    double most = 0.0;
    const auto take = [&](double y) {
        least = any ? std::min(least, y) : y;
        most = any ? std::max(most, y) : y;
        any = true;
    };
    for (const PlotLine& line : plot.lines) {
        for (const PlotPoint& p : line.points)
            take(p.y);
    }
    for (const PlotDot& dot : plot.dots)
        take(dot.at.y);
    if (!(most - least > 1e-12)) most = least + 1.0;
    const double step = round_step(most - least, 4);
    return {std::floor(least / step + 1e-6) * step, std::ceil(most / step - 1e-6) * step, step};
}

int decimals_of(double step) {
    return std::clamp(static_cast<int>(std::ceil(-std::log10(step) - 1e-9)), 0, 4);
}

struct Frame {
    Rect box;
    double x_least, x_most;
    Range y;
    [[nodiscard]] ImVec2 at(double x, double up) const {
        return {box.x + box.w * static_cast<float>((x - x_least) / (x_most - x_least)),
                box.bottom() - box.h * static_cast<float>((up - y.least) / (y.most - y.least))};
    }
};

void draw_axes(Ui& ui, const Plot& plot, const Frame& frame) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const look::Palette& ink = ui.inks();
    ImFont* const font = ui.type.small;
    const int decimals = decimals_of(frame.y.step);
    const int rows = static_cast<int>(std::lround((frame.y.most - frame.y.least) / frame.y.step));
    for (int i = 0; i <= rows; ++i) {
        const double value = frame.y.least + i * frame.y.step;
        const float y = std::round(frame.at(frame.x_least, value).y);
        const bool zero = plot.with_zero && std::abs(value) < 1e-9 * frame.y.step + 1e-12;
        list.AddRectFilled({frame.box.x - 4.0f, y}, {frame.box.right(), y + 1.0f},
                           zero ? ink.line : ink.rule);
        text_in(ui, {frame.box.x - 52.0f, y - 10.0f, 44.0f, 20.0f}, font, ink.ink_soft,
                widgets::number_text(zero ? 0.0 : value, Unit::one, decimals), Align::right);
    }
    list.AddRectFilled({frame.box.x, frame.box.y}, {frame.box.x + 1.0f, frame.box.bottom()}, ink.line);
    const double first = std::ceil(plot.x_least / plot.x_step - 1e-9) * plot.x_step;
    for (double value = first; value <= plot.x_most + 1e-9; value += plot.x_step) {
        const float x = std::round(frame.at(value, frame.y.least).x);
        list.AddRectFilled({x, frame.box.bottom()}, {x + 1.0f, frame.box.bottom() + 5.0f}, ink.line);
        const bool last = value + plot.x_step > plot.x_most + 1e-9;
        std::string text = widgets::number_text(value, Unit::one, decimals_of(plot.x_step));
        const bool close = plot.x_unit == "°";
        if (last && !close) text += ' ';
        if (last || close) text += plot.x_unit;
        const float w = text_width(font, text);
        const float left = std::min(x - 0.5f * w, frame.box.right() + 8.0f - w);
        text_in(ui, {left, frame.box.bottom() + 5.0f, w, 18.0f}, font, ink.ink_soft, text);
        if (!plot.x_below) continue;
        const std::string below = plot.x_below(value);
        const float below_w = text_width(font, below);
        const float below_x = std::min(x - 0.5f * below_w, frame.box.right() + 8.0f - below_w);
        text_in(ui, {below_x, frame.box.bottom() + 22.0f, below_w, 18.0f}, font, ink.ink_soft, below);
    }
}

/// Upright hatching between the first two lines, and strokes that close the region at its ends.
void draw_region(Ui& ui, const Plot& plot, const Frame& frame) {
    const PlotLine& one = plot.lines[0];
    const PlotLine& other = plot.lines[1];
    if (one.points.empty() || other.points.empty()) return;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const look::Palette& ink = ui.inks();
    for (float x = frame.box.x + 3.0f; x < frame.box.right(); x += 5.0f) {
        const double value = frame.x_least + static_cast<double>((x - frame.box.x) / frame.box.w) *
                                                 (frame.x_most - frame.x_least);
        const auto a = read_off(one, value);
        const auto b = read_off(other, value);
        if (a && b)
            list.AddLine({x, frame.at(value, *a).y}, {x, frame.at(value, *b).y},
                         look::faded(ink.water_line, 0.55f), 1.0f);
    }
    const auto close = [&](const PlotPoint& a, const PlotPoint& b) {
        list.AddLine(frame.at(a.x, a.y), frame.at(b.x, b.y), ink.water_line, 2.25f);
    };
    close(one.points.front(), other.points.front());
    close(one.points.back(), other.points.back());
}

void draw_dot(Ui& ui, const Frame& frame, const PlotDot& dot) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const look::Palette& ink = ui.inks();
    const ImVec2 at = frame.at(dot.at.x, dot.at.y);
    list.AddCircleFilled(at, 6.0f, dot.solid ? ink.ink : ink.card, 24);
    list.AddCircle(at, 6.0f, dot.solid ? ink.card : ink.mark, 24, dot.solid ? 1.5f : 2.5f);
    // Over the hatching; above a full dot and below an open one, as two may lie side by side.
    const float w = text_width(ui.type.small, dot.text);
    const float x = std::clamp(at.x - 0.5f * w, frame.box.x, std::max(frame.box.x, frame.box.right() - w));
    const float y = at.y + (dot.solid ? -20.0f : 20.0f);
    list.AddRectFilled({x - 3.0f, y - 10.0f}, {x + w + 3.0f, y + 10.0f}, ink.card, 3.0f);
    text_in(ui, {x, y - 10.0f, w, 20.0f}, ui.type.small, ink.ink, dot.text);
}

void draw_lines(Ui& ui, const Plot& plot, const Frame& frame) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const look::Palette& ink = ui.inks();
    if (plot.hatched) {
        const float zero_y = frame.at(frame.x_least, 0.0).y;
        for (float x = frame.box.x + 3.0f; x < frame.box.right(); x += 5.0f) {
            const double value = frame.x_least + static_cast<double>((x - frame.box.x) / frame.box.w) *
                                                     (frame.x_most - frame.x_least);
            for (const PlotLine& line : plot.lines) {
                const auto up = read_off(line, value);
                if (up && *up > 0.0)
                    list.AddLine({x, zero_y}, {x, frame.at(value, *up).y}, look::faded(ink.water_line, 0.55f),
                                 1.0f);
            }
        }
    }
    for (const PlotLine& line : plot.lines) {
        std::vector<ImVec2> points;
        for (const PlotPoint& p : line.points)
            points.push_back(frame.at(p.x, p.y));
        if (!line.dashed) {
            list.AddPolyline(points.data(), static_cast<int>(points.size()), ink.water_line, 0, 2.25f);
            continue;
        }
        // Pieces of equal length along x: the curves are smooth enough.
        constexpr int pieces = 24;
        for (int i = 0; i < pieces && points.size() > 1; ++i) {
            const double from = line.points.front().x;
            const double span = line.points.back().x - from;
            const double a = from + span * i / pieces;
            const double b = a + 0.55 * span / pieces;
            list.AddLine(frame.at(a, read_off(line, a).value_or(0.0)),
                         frame.at(b, read_off(line, b).value_or(0.0)), ink.mark, 2.0f);
        }
    }
}

void draw_mark(Ui& ui, const Frame& frame, const PlotMark& mark, float above) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const look::Palette& ink = ui.inks();
    const float x = std::round(frame.at(mark.x, frame.y.least).x);
    for (float y = frame.box.y + above; y < frame.box.bottom(); y += 8.0f)
        list.AddLine({x, y}, {x, std::min(y + 5.0f, frame.box.bottom())}, ink.ink, 1.25f);
    const float w = text_width(ui.type.small, mark.text);
    const float left = std::clamp(x - 0.5f * w, frame.box.x + 2.0f, frame.box.right() - w);
    list.AddRectFilled({left - 3.0f, frame.box.y + above - 18.0f}, {left + w + 3.0f, frame.box.y + above},
                       ink.card, 3.0f);
    text_in(ui, {left, frame.box.y + above - 18.0f, w, 18.0f}, ui.type.small, ink.ink, mark.text);
}

} // namespace

double round_step(double span, int parts) {
    const double raw = span / std::max(parts, 1);
    const double ten = std::pow(10.0, std::floor(std::log10(raw)));
    for (const double times : {1.0, 2.0, 5.0}) {
        if (times * ten >= raw * 0.999) return times * ten;
    }
    return 10.0 * ten;
}

std::optional<double> read_off(const PlotLine& line, double x) {
    const auto& points = line.points;
    if (points.empty() || x < points.front().x - 1e-9 || x > points.back().x + 1e-9) return std::nullopt;
    for (std::size_t i = 1; i < points.size(); ++i) {
        if (x > points[i].x && i + 1 < points.size()) continue;
        const double span = points[i].x - points[i - 1].x;
        const double t = span > 0.0 ? std::clamp((x - points[i - 1].x) / span, 0.0, 1.0) : 0.0;
        return std::lerp(points[i - 1].y, points[i].y, t);
    }
    return points.front().y;
}

std::optional<double> plot(Ui& ui, std::string_view id, const Plot& plot, std::optional<double> read_x,
                           std::string_view read, float height) {
    gap(8.0f);
    const look::Palette& ink = ui.inks();
    const Rect head = take_row(plot.topic == help::Topic::none ? 24.0f : 44.0f);
    const Touch asked = help_area(ui, plot.topic, head);
    help_text_in(ui, head, ui.type.label, ink.ink_soft, plot.title, plot.topic);
    if (asked.focused) focus_ring(ui, head, look::control_rounding);
    text_in(ui, head, ui.type.label_strong, ink.ink, read, Align::right);
    const Rect whole = take_row(height);
    const Touch touch = touch_area(ui, id, whole);
    const float marks_h = plot.marks.empty() ? 8.0f : 26.0f;
    const float figures_h = plot.x_below ? 51.0f : 34.0f;
    const Frame frame{{whole.x + 46.0f, whole.y + 8.0f, whole.w - 56.0f, whole.h - figures_h},
                      plot.x_least,
                      plot.x_most,
                      heights(plot)};
    draw_axes(ui, plot, frame);
    if (plot.region && plot.lines.size() > 1) draw_region(ui, plot, frame);
    draw_lines(ui, plot, frame);
    for (const PlotDot& dot : plot.dots)
        draw_dot(ui, frame, dot);
    for (const PlotMark& mark : plot.marks)
        draw_mark(ui, frame, mark, marks_h - 6.0f);
    if (touch.focused) focus_ring(ui, whole, look::control_rounding);

    std::optional<double> moved;
    const double span = plot.x_most - plot.x_least;
    if (touch.pressed && ImGui::IsMousePosValid()) {
        const ImVec2 way = ImGui::GetMouseDragDelta(ImGuiMouseButton_Left, 0.0f);
        if (std::abs(way.x) > 6.0f && std::abs(way.x) > std::abs(way.y)) ui.glide.owned = true;
        const double share = static_cast<double>((ImGui::GetIO().MousePos.x - frame.box.x) / frame.box.w);
        moved = plot.x_least + std::clamp(share, 0.0, 1.0) * span;
    } else if (touch.tapped && !ImGui::IsMousePosValid()) {
        const double next = read_x.value_or(plot.x_least) + 0.05 * span;
        moved = next > plot.x_most + 1e-9 ? plot.x_least : next;
    }
    if (const auto shown = moved ? moved : read_x; shown && !plot.lines.empty()) {
        ImDrawList& list = *ImGui::GetWindowDrawList();
        const float x = frame.at(*shown, frame.y.least).x;
        list.AddLine({x, frame.box.y}, {x, frame.box.bottom()}, ink.ink_soft, 1.0f);
        for (const PlotLine& line : plot.lines) {
            const auto up = read_off(line, *shown);
            if (!up) continue;
            list.AddCircleFilled(frame.at(*shown, *up), 5.0f, ink.card, 20);
            list.AddCircle(frame.at(*shown, *up), 5.0f, line.dashed ? ink.mark : ink.water_line, 20, 2.0f);
        }
    }
    return moved;
}

} // namespace evenfall::shell::widgets
