#include "drawing/outline.hpp"
#include "drawing/scene.hpp"
#include "look/words.hpp"
#include "look/words_drawing.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace evenfall::shell::drawing {
namespace {

namespace words = look::words;

std::string attitude_words(const Answers& answers) {
    if (!answers.pitch_rad) return words::rolls_over;
    const double pitch = *answers.pitch_rad;
    const std::string size = widgets::value_text(std::abs(pitch), widgets::Unit::degree);
    if (size == widgets::value_text(0.0, widgets::Unit::degree)) return words::level;
    return size + " " + (pitch > 0.0 ? words::nose_up : words::nose_down);
}

std::string motion_words(const Scene& scene) {
    const auto& answers = scene.evaluation.answers;
    switch (answers.behaviour) {
    case Behaviour::floats:
        return words::floats_up;
    case Behaviour::suspends:
        return words::stays_still;
    case Behaviour::falls:
        break;
    }
    if (!answers.fall) return {};
    return widgets::value_text(answers.fall->speed_m_s, scene.ui.units.of(widgets::Quantity::fall));
}

} // namespace

void draw_hang_view(Scene& scene, const widgets::Rect& rect) {
    auto& list = scene.list;
    const auto& ink = scene.ink();
    const auto& answers = scene.evaluation.answers;
    list.AddRectFilled({rect.x, rect.y}, {rect.right(), rect.bottom()}, ink.water, 8.0f);
    ImFont* const small = scene.ui.type.small;
    ImFont* const strong = scene.ui.type.label_strong;
    const float margin = 10.0f;
    const std::string attitude = attitude_words(answers);
    // In a narrow view only the answer has room.
    if (widgets::text_width(small, words::under_water) + widgets::text_width(strong, attitude) <
        rect.w - 3.0f * margin)
        pen::text(list, small, rect.x + margin, rect.y + 8.0f, ink.ink_soft, words::under_water);
    pen::text(list, strong, rect.right() - margin, rect.y + 6.0f, ink.ink, attitude, pen::Side::right);

    const double pitch = answers.pitch_rad.value_or(0.0);
    const auto& lines = *scene.body().lines;
    const double length = lines.length_m();
    // Where the height is small, words are beside the lure instead of above and below it.
    const bool low = rect.h < 100.0f;
    const float head = low ? 8.0f : strong->FontSize + 12.0f;
    const float foot = low ? 8.0f : small->FontSize + 8.0f;
    const float side_room = low ? 104.0f : 34.0f;
    double tallest = 0.0;
    for (double at : lines.breakpoints_m())
        tallest = std::max(tallest, 2.0 * lines.at(at).half_height_m);
    const double wide = length * std::abs(std::cos(pitch)) + tallest * std::abs(std::sin(pitch));
    const double high = length * std::abs(std::sin(pitch)) + tallest * std::abs(std::cos(pitch));
    const double scale = fitting_px_per_m(wide, high, rect.w - 2.0f * margin - 2.0f * side_room,
                                          std::max(20.0f, rect.h - head - foot));
    const ImVec2 middle{rect.x + 0.5f * rect.w, rect.y + head + 0.5f * (rect.h - head - foot)};
    const WorldToScreen map(scale, 0.0, 0.0, {middle.x, middle.y});
    const auto turned = [&](double x_m, double z_m) {
        const ViewPoint p = pitched(x_m - 0.5 * length, z_m, pitch);
        return pen::vec(map.at(p.u, p.v));
    };

    const float drawn_from = middle.x - 0.5f * static_cast<float>(wide * scale);
    const float drawn_to = middle.x + 0.5f * static_cast<float>(wide * scale);

    // A horizontal reference line.
    const ImVec2 level[] = {{low ? drawn_from - 24.0f : rect.x + margin, middle.y},
                            {low ? drawn_to + 6.0f : rect.right() - margin, middle.y}};
    pen::dashed(list, level, look::faded(ink.water_line, 0.75f), pen::hair, 7.0f, 5.0f);

    for (int s = 0; s < static_cast<int>(scene.body().segments.size()); ++s) {
        std::vector<ImVec2> back;
        std::vector<ImVec2> belly;
        for (const WoodSpan& column : side_columns(scene.body(), s, 40)) {
            back.push_back(turned(column.x_m, column.high_m));
            belly.push_back(turned(column.x_m, column.low_m));
        }
        pen::fill_ribbon(list, back, belly, ink.wood);
        pen::outline_ribbon(list, back, belly, ink.ink, pen::medium);
    }
    const ImVec2 axis[] = {turned(-0.04 * length, 0.0), turned(1.04 * length, 0.0)};
    pen::line(list, axis, look::faded(ink.ink, 0.6f), pen::hair);

    // Its direction of motion, on the free side.
    const std::string motion = motion_words(scene);
    pen::text(list, small, rect.right() - margin, rect.bottom() - small->FontSize - 5.0f, ink.ink, motion,
              pen::Side::right);
    if (answers.behaviour != Behaviour::suspends) {
        const float down = answers.behaviour == Behaviour::falls ? 1.0f : -1.0f;
        const float x = low ? drawn_to + 14.0f : rect.right() - margin - 10.0f;
        const float reach = std::min(26.0f, 0.22f * rect.h);
        list.AddLine({x, middle.y - down * reach}, {x, middle.y + down * (reach - 6.0f)}, ink.water_line,
                     pen::heavy);
        pen::arrow_head(list, {x, middle.y + down * (reach + 4.0f)}, 0.0f, down, 10.0f, ink.water_line);
    }
    if (answers.roll_rad && std::abs(*answers.roll_rad) > 0.0087) {
        pen::text(list, small, rect.x + margin, rect.bottom() - small->FontSize - 5.0f, ink.mark,
                  widgets::value_text(std::abs(*answers.roll_rad), widgets::Unit::degree) + " " +
                      (*answers.roll_rad > 0.0 ? words::leans_starboard : words::leans_port));
    }
}

} // namespace evenfall::shell::drawing
