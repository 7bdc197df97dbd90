#include "drawing/outline.hpp"
#include "drawing/water_sheet.hpp"
#include "look/words_swim.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace evenfall::shell::drawing {
namespace {

namespace words = look::words;
using joints::Pin;
using joints::SegmentPose;

/// A segment's rim from above, as drawn straight.
struct Rim {
    std::vector<Pin> port;
    std::vector<Pin> starboard;
    void take(const std::vector<WoodSpan>& columns, double aft_m = 0.0) {
        for (const WoodSpan& c : columns) {
            port.push_back({c.x_m + aft_m, c.low_m});
            starboard.push_back({c.x_m + aft_m, c.high_m});
        }
    }
};

struct Figure {
    std::vector<Rim> segments;
    Rim tail;           ///< drawn by its lines; empty where there is none
    double end_m = 0.0; ///< how far aft it all reaches
};

Figure figure_of(const Scene& scene, int columns) {
    Figure figure;
    for (int s = 0; s < static_cast<int>(scene.body().segments.size()); ++s) {
        figure.segments.emplace_back();
        figure.segments.back().take(top_columns(scene.body(), s, columns));
    }
    if (scene.document.tail) {
        if (const auto body = evenfall::tail::shaped(*scene.document.tail); body.ok())
            figure.tail.take(top_columns(*body, 0, columns), scene.document.tail->x_m);
    }
    figure.end_m = std::max(scene.body().lines->length_m(), reach(scene.document, scene.evaluation).aft_m);
    return figure;
}

/// What a whole beat covers, and the way on which its tail's path shows.
struct Extent {
    double aft_m = 0.0;
    double port_m = 0.0; ///< y of its ends to either side
    double starboard_m = 0.0;
};

Extent extent_of(const Figure& figure, const swim::Wave& wave) {
    Extent extent{0.0, wave.poses.front().y_m, wave.poses.front().y_m};
    const auto take = [&extent](const Pin& p) {
        extent.aft_m = std::max(extent.aft_m, p.x_m);
        extent.port_m = std::min(extent.port_m, p.y_m);
        extent.starboard_m = std::max(extent.starboard_m, p.y_m);
    };
    for (std::size_t i = 0; i < wave.poses.size(); ++i) {
        const auto stands =
            state::segments_at(wave, static_cast<double>(i) / static_cast<double>(wave.poses.size()));
        for (std::size_t s = 0; s < std::min(stands.size(), figure.segments.size()); ++s) {
            for (const auto* side : {&figure.segments[s].port, &figure.segments[s].starboard}) {
                for (std::size_t k = 0; k < side->size(); k += 6)
                    take(stands[s].of((*side)[k].x_m, (*side)[k].y_m));
            }
        }
        if (!stands.empty()) take(stands.back().of(figure.end_m, 0.0));
    }
    return extent;
}

/// The way of travel: the middle of that of the line tie.
double way_y_m(const swim::Wave& wave) {
    double sum_m = 0.0;
    for (const auto& pose : wave.poses)
        sum_m += pose.y_m;
    return sum_m / static_cast<double>(wave.poses.size());
}

class Painter {
public:
    Painter(Scene& scene, const Figure& figure, const swim::Wave& wave, const WorldToScreen& map)
        : scene_(scene), figure_(figure), wave_(wave), map_(map) {}

    /// All of one beat at once, as a long exposure shows it: darkest where the lure turns back.
    void swept() {
        constexpr int exposures = 24;
        const ImU32 veil = look::faded(scene_.ink().water_line, 0.035f);
        for (int i = 0; i < exposures; ++i) {
            const auto stands = state::segments_at(wave_, static_cast<double>(i) / exposures);
            for (std::size_t s = 0; s < std::min(stands.size(), figure_.segments.size()); ++s)
                ribbon(figure_.segments[s], stands[s], veil);
        }
    }

    /// Where the end of the tail has been in the water.
    void path(double beat, double to_m) {
        if (!(wave_.beats_per_m > 0.0)) return;
        constexpr double step = 1.0 / 90.0;
        std::vector<ImVec2> points;
        for (int i = 0; i < 400; ++i) {
            const auto stands = state::segments_at(wave_, beat - i * step);
            const Pin end = stands.back().of(figure_.end_m, 0.0);
            const double x_m = end.x_m + i * step / wave_.beats_per_m;
            points.push_back(pen::vec(map_.at(x_m, end.y_m)));
            if (x_m > to_m) break;
        }
        pen::line(scene_.list, points, look::faded(scene_.ink().water_line, 0.55f), pen::medium);
    }

    /// The line that pulls it: from so far ahead that it lies level.
    void line(double beat, float left) {
        const Pin tie = state::segments_at(wave_, beat).front().of(wave_.x_m.front(), 0.0);
        const ImVec2 at = pen::vec(map_.at(tie.x_m, tie.y_m));
        scene_.list.AddLine({left, at.y}, at, scene_.ink().line, pen::hair);
        // A tie ahead of the nose stands on its eye.
        const double nose_m = scene_.body().lines->nose_m();
        if (wave_.x_m.front() >= nose_m) return;
        const Pin nose = state::segments_at(wave_, beat).front().of(nose_m, 0.0);
        scene_.list.AddLine(at, pen::vec(map_.at(nose.x_m, nose.y_m)), scene_.ink().metal, pen::medium);
    }

    void lure(double beat) {
        const auto& ink = scene_.ink();
        const auto stands = state::segments_at(wave_, beat);
        if (!figure_.tail.port.empty()) {
            ribbon(figure_.tail, stands.back(), look::faded(ink.tint, 0.55f), ink.ink, pen::medium);
        } else {
            // A weighed tail has no drawn shape: its reach along the middle.
            const double wood_m = scene_.body().lines->length_m();
            const Pin from = stands.back().of(wood_m, 0.0);
            const Pin to = stands.back().of(figure_.end_m, 0.0);
            scene_.list.AddLine(pen::vec(map_.at(from.x_m, from.y_m)), pen::vec(map_.at(to.x_m, to.y_m)),
                                ink.ink, pen::heavy);
        }
        for (std::size_t s = 0; s < std::min(stands.size(), figure_.segments.size()); ++s)
            ribbon(figure_.segments[s], stands[s], ink.wood, ink.ink, look::outline);
        for (std::size_t s = 0; s < stands.size(); ++s) {
            const Pin pin = stands[s].of(wave_.x_m[s], 0.0);
            scene_.list.AddCircleFilled(pen::vec(map_.at(pin.x_m, pin.y_m)), s == 0 ? 2.5f : 3.0f, ink.metal);
        }
    }

private:
    void ribbon(const Rim& rim, const SegmentPose& stand, ImU32 fill, ImU32 edge = 0, float weight = 0.0f) {
        const auto placed = [&](const std::vector<Pin>& side) {
            std::vector<ImVec2> points;
            points.reserve(side.size());
            for (const Pin& p : side) {
                const Pin at = stand.of(p.x_m, p.y_m);
                points.push_back(pen::vec(map_.at(at.x_m, at.y_m)));
            }
            return points;
        };
        const auto one = placed(rim.starboard);
        const auto other = placed(rim.port);
        pen::fill_ribbon(scene_.list, one, other, fill);
        if (weight > 0.0f) pen::outline_ribbon(scene_.list, one, other, edge, weight);
    }

    Scene& scene_;
    const Figure& figure_;
    const swim::Wave& wave_;
    const WorldToScreen& map_;
};

} // namespace

void draw_swim(Scene& scene, const swim::Wave& wave, double beat, const SwimLabels& labels,
               const widgets::Rect& rect) {
    auto& list = scene.list;
    const auto& ink = scene.ink();
    list.AddRectFilled({rect.x, rect.y}, {rect.right(), rect.bottom()}, ink.water, look::control_rounding);
    if (wave.poses.empty() || wave.x_m.empty()) return;
    const Figure figure = figure_of(scene, 40);
    const Extent extent = extent_of(figure, wave);
    const bool beats = wave.poses.size() > 1;
    // Room ahead for some of the line, behind for some of the path.
    const double ahead_m = 0.14 * figure.end_m;
    const double behind_m = (beats ? 0.55 : 0.14) * figure.end_m;
    constexpr float head = 30.0f;
    const widgets::Rect way{rect.x + 6.0f, rect.y + head, rect.w - 12.0f,
                            std::max(10.0f, rect.h - head - 8.0f)};
    const double wide_m = ahead_m + extent.aft_m + behind_m;
    const double scale = fitting_px_per_m(wide_m, extent.starboard_m - extent.port_m, way.w, way.h);
    const WorldToScreen map(scale, 0.5 * wide_m - ahead_m, 0.5 * (extent.port_m + extent.starboard_m),
                            {way.x + 0.5f * way.w, way.y + 0.5f * way.h});

    list.PushClipRect({rect.x, rect.y}, {rect.right(), rect.bottom()}, true);
    const float straight_y = map.at(0.0, way_y_m(wave)).y;
    const ImVec2 straight[] = {{rect.x, straight_y}, {rect.right(), straight_y}};
    pen::dashed(list, straight, look::faded(ink.water_line, 0.45f), pen::hair, 9.0f, 6.0f);
    Painter painter(scene, figure, wave, map);
    if (beats) {
        painter.swept();
        painter.path(beat, map.u_m(rect.right()));
    }
    painter.line(beat, rect.x);
    painter.lure(beat);
    list.PopClipRect();

    const auto& type = scene.ui.type;
    const float y = rect.y + 7.0f;
    pen::text(list, type.label_strong, rect.x + 10.0f, y, ink.ink, words::shape_not_size, pen::Side::left,
              ink.water);
    if (!scene.ui.phone) {
        const float x = rect.x + 10.0f + widgets::text_width(type.label_strong, words::shape_not_size);
        pen::text(list, type.label, x + 14.0f, y, ink.ink_soft, labels.tempo, pen::Side::left, ink.water);
    }
    pen::text(list, type.label, rect.right() - 10.0f, y, ink.ink, labels.beats, pen::Side::right, ink.water);
}

} // namespace evenfall::shell::drawing
