#include "drawing/turned_outline.hpp"
#include "drawing/water_sheet.hpp"
#include "look/words_drawing.hpp"
#include "look/words_water.hpp"
#include "water.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace evenfall::shell::drawing {
namespace {

namespace words = look::words;
using afloat::Rest;
using widgets::Quantity;
using widgets::Unit;

const char* posture_word(afloat::Posture posture) {
    switch (posture) {
    case afloat::Posture::upright:
        return words::upright;
    case afloat::Posture::on_its_side:
        return words::on_its_side;
    case afloat::Posture::on_its_back:
        return words::on_its_back;
    case afloat::Posture::nose_up:
        return words::stands_nose_up;
    case afloat::Posture::nose_down:
        return words::stands_nose_down;
    }
    return "";
}

/// The long direction in a vertical plane, as it floats: the nose to the left, the water surface at height 0
/// after subtracting `depth_m`.
ViewDirection side_look(const Rest& rest) {
    // On nose or tail, any horizontal direction will do.
    if (std::hypot(rest.up.y, rest.up.z) < 1e-6) return {{0.0, 1.0, 0.0}, rest.up};
    return {afloat::level_axes(rest.up).along, rest.up};
}
ViewDirection end_look(const Rest& rest) {
    if (std::hypot(rest.up.y, rest.up.z) < 1e-6) return {{0.0, 1.0, 0.0}, rest.up};
    return {afloat::level_axes(rest.up).across, rest.up};
}

struct FloatPicture {
    std::vector<Silhouette> segments; ///< side view; or
    std::vector<ViewPoint> rim;       ///< end view
    double least_u = 1e9, most_u = -1e9, least_v = 1e9, most_v = -1e9;
    void take(const ViewPoint& p) {
        least_u = std::min(least_u, p.u);
        most_u = std::max(most_u, p.u);
        least_v = std::min(least_v, p.v);
        most_v = std::max(most_v, p.v);
    }
};

FloatPicture side_picture(const Scene& scene, const Rest& rest) {
    FloatPicture picture;
    const ViewDirection look = side_look(rest);
    for (int s = 0; s < static_cast<int>(scene.body().segments.size()); ++s) {
        Silhouette edges = silhouette(scene.body(), s, look, 36);
        for (auto* side : {&edges.one, &edges.other}) {
            for (ViewPoint& p : *side) {
                p.v -= rest.depth_m;
                picture.take(p);
            }
        }
        picture.segments.push_back(std::move(edges));
    }
    return picture;
}

FloatPicture end_picture(const Scene& scene, const Rest& rest) {
    FloatPicture picture;
    const auto& lines = *scene.body().lines;
    picture.rim = section_rim(lines, largest_section_x_m(lines), end_look(rest), 72);
    for (ViewPoint& p : picture.rim) {
        p.v -= rest.depth_m;
        picture.take(p);
    }
    return picture;
}

/// Water up to the surface, the lure in it, and the water in front of the lure.
WorldToScreen draw_in_water(Scene& scene, const FloatPicture& picture, const widgets::Rect& rect,
                            float margin, double most_px_per_m) {
    auto& list = scene.list;
    const auto& ink = scene.ink();
    const double high = std::max(picture.most_v, 0.0) - std::min(picture.least_v, 0.0);
    const double px =
        std::min(most_px_per_m, fitting_px_per_m(picture.most_u - picture.least_u, high,
                                                 rect.w - 2.0f * margin, rect.h - 2.0f * margin));
    const double middle_u = 0.5 * (picture.least_u + picture.most_u);
    const double middle_v = 0.5 * (std::max(picture.most_v, 0.0) + std::min(picture.least_v, 0.0));
    const WorldToScreen map(px, middle_u, middle_v, {rect.x + 0.5f * rect.w, rect.y + 0.5f * rect.h});
    const float surface = std::round(map.at(0.0, 0.0).y);
    list.AddRectFilled({rect.x, surface}, {rect.right(), rect.bottom()}, ink.water, look::control_rounding,
                       ImDrawFlags_RoundCornersBottom);
    for (const Silhouette& edges : picture.segments) {
        std::vector<ImVec2> one;
        std::vector<ImVec2> other;
        for (const ViewPoint& p : edges.one)
            one.push_back(pen::vec(map.at(p.u, p.v)));
        for (const ViewPoint& p : edges.other)
            other.push_back(pen::vec(map.at(p.u, p.v)));
        pen::fill_ribbon(list, one, other, ink.wood);
        pen::outline_ribbon(list, one, other, ink.ink, look::outline);
    }
    if (!picture.rim.empty()) {
        std::vector<ImVec2> rim;
        for (const ViewPoint& p : picture.rim)
            rim.push_back(pen::vec(map.at(p.u, p.v)));
        const ImVec2 middle = pen::vec(map.at(middle_u, 0.5 * (picture.least_v + picture.most_v)));
        pen::fill_star(list, middle, rim, ink.wood);
        list.AddPolyline(rim.data(), static_cast<int>(rim.size()), ink.ink, ImDrawFlags_Closed,
                         look::outline);
    }
    // Water is drawn transparent over the parts below it.
    list.AddRectFilled({rect.x, surface}, {rect.right(), rect.bottom()}, look::faded(ink.water, 0.5f),
                       look::control_rounding, ImDrawFlags_RoundCornersBottom);
    list.AddLine({rect.x, surface}, {rect.right(), surface}, ink.water_line, pen::heavy);
    const float sign_x = rect.right() - 18.0f;
    list.AddTriangle({sign_x, surface - 1.0f}, {sign_x - 6.0f, surface - 10.0f},
                     {sign_x + 6.0f, surface - 10.0f}, ink.water_line, pen::medium);
    for (const float k : {1.0f, 2.0f}) {
        list.AddLine({sign_x - 9.0f + 3.0f * k, surface + 4.0f * k},
                     {sign_x + 9.0f - 3.0f * k, surface + 4.0f * k}, ink.water_line, pen::hair);
    }
    return map;
}

/// Draft of one end: a dimension line from the surface, beside the lure, its text below the lure.
void draw_draft(Scene& scene, const WorldToScreen& map, const FloatPicture& picture, bool fore,
                double draft_m) {
    if (!(draft_m > 0.0)) return;
    auto& list = scene.list;
    const auto& ink = scene.ink();
    const double u = fore ? picture.least_u : picture.most_u;
    const float out = fore ? -14.0f : 14.0f;
    const ImVec2 end = pen::vec(map.at(u, -draft_m));
    const ImVec2 top{end.x + out, map.at(u, 0.0).y};
    const ImVec2 low{end.x + out, end.y};
    list.AddLine(top, low, ink.ink, pen::hair);
    list.AddLine({low.x + 0.4f * out, low.y}, {end.x - 0.5f * out, low.y}, ink.ink, pen::hair);
    if (low.y - top.y > 16.0f) {
        pen::arrow_head(list, low, 0.0f, 1.0f, 7.0f, ink.ink);
        pen::arrow_head(list, top, 0.0f, -1.0f, 7.0f, ink.ink);
    }
    const std::string text = std::string(fore ? words::draft_fore : words::draft_aft) + " " +
                             widgets::value_text(draft_m, scene.ui.units.of(Quantity::length));
    const float y = map.at(0.0, std::min(picture.least_v, -draft_m)).y + 8.0f;
    pen::text(list, scene.ui.type.small, low.x, y, ink.ink, text, fore ? pen::Side::left : pen::Side::right);
}

std::string angles_text(const Rest& rest) {
    std::string text =
        std::string(words::figure_pitch) + " " + widgets::value_text(rest.pitch_rad, Unit::degree);
    if (!afloat::stands(rest.posture) && std::abs(rest.heel_rad) > 0.0087)
        text += ", " + std::string(words::heel_word) + " " + widgets::value_text(rest.heel_rad, Unit::degree);
    return text;
}

void draw_others(Scene& scene, const afloat::FloatAnswers& afloat, const widgets::Rect& rect) {
    auto& list = scene.list;
    const auto& ink = scene.ink();
    const std::size_t count = std::min<std::size_t>(afloat.rests.size() - 1, scene.ui.phone ? 2 : 3);
    const float each =
        (rect.w - 8.0f * static_cast<float>(count - 1)) / static_cast<float>(std::max<std::size_t>(count, 2));
    for (std::size_t i = 0; i < count; ++i) {
        const Rest& rest = afloat.rests[i + 1];
        const widgets::Rect place{rect.x + static_cast<float>(i) * (each + 8.0f), rect.y, each, rect.h};
        list.AddRect({place.x, place.y}, {place.right(), place.bottom()}, ink.rule, look::control_rounding, 0,
                     pen::hair);
        const bool stands = afloat::stands(rest.posture);
        const widgets::Rect drawn{place.x + 1.0f, place.y + 1.0f, 0.42f * place.w, place.h - 2.0f};
        draw_in_water(scene, stands ? side_picture(scene, rest) : end_picture(scene, rest), drawn, 14.0f,
                      1e9);
        const float x = drawn.right() + 8.0f;
        const float w = place.right() - x - 6.0f;
        const std::string words_of_it =
            widgets::broken_at_spaces(scene.ui.type.label_strong, posture_words(rest), w);
        pen::text(list, scene.ui.type.label_strong, x, place.y + 6.0f, ink.ink, words_of_it);
        const auto lines = static_cast<float>(1 + std::count(words_of_it.begin(), words_of_it.end(), '\n'));
        pen::text(list, scene.ui.type.small, x, place.y + 8.0f + lines * scene.ui.type.label_strong->FontSize,
                  ink.ink_soft, widgets::broken_at_spaces(scene.ui.type.small, angles_text(rest), w));
    }
}

} // namespace

std::string posture_words(const Rest& rest) {
    std::string text = posture_word(rest.posture);
    if (rest.has_twin) text += std::string(", ") + words::either_side;
    return text;
}

void draw_afloat(Scene& scene, const afloat::FloatAnswers& afloat, const widgets::Rect& rect) {
    auto& list = scene.list;
    const auto& ink = scene.ink();
    const widgets::Ui& ui = scene.ui;
    ImFont* const small = ui.type.small;
    if (afloat.rests.empty() && !afloat.upright) {
        pen::text(list, ui.type.body, rect.x + 12.0f, rect.y + 12.0f, ink.ink, words::no_rest);
        return;
    }
    const Rest& rest = afloat.rests.empty() ? *afloat.upright : afloat.rests.front();
    const bool others = afloat.rests.size() > 1;
    const float others_h = others ? (ui.phone ? 78.0f : 128.0f) : 0.0f;
    const float others_head = others ? 22.0f : 0.0f;
    const float head = ui.phone ? 44.0f : 52.0f;
    const widgets::Rect main{rect.x, rect.y + head, rect.w, rect.h - head - others_h - others_head - 8.0f};

    pen::text(list, small, rect.x + 4.0f, rect.y + 2.0f, ink.ink_soft, words::afloat_at_rest);
    pen::text(list, ui.type.title, rect.x + 4.0f, rect.y + 18.0f, ink.ink, posture_words(rest));
    pen::text(list, ui.type.label, rect.right() - 6.0f, rect.y + 1.0f, ink.ink,
              widgets::value_text(rest.volume_out, Unit::percent, 0) + " " + words::out_of_the_water,
              pen::Side::right);
    pen::text(list, ui.type.label, rect.right() - 6.0f, rect.y + 21.0f, ink.ink_soft, angles_text(rest),
              pen::Side::right);

    const FloatPicture side = side_picture(scene, rest);
    // Also from behind on the large screen: heel is best read there.
    const float end_w = ui.phone ? 0.0f : std::min(150.0f, 0.24f * main.w);
    const widgets::Rect side_rect{main.x, main.y, main.w - (end_w > 0.0f ? end_w + 12.0f : 0.0f), main.h};
    const WorldToScreen map = draw_in_water(scene, side, side_rect, ui.phone ? 48.0f : 46.0f, 1e9);
    draw_draft(scene, map, side, true, rest.draft_fore_m);
    draw_draft(scene, map, side, false, rest.draft_aft_m);
    if (end_w > 0.0f) {
        const widgets::Rect end_rect{main.right() - end_w, main.y, end_w, main.h};
        draw_in_water(scene, end_picture(scene, rest), end_rect, 26.0f, map.px_per_m() * 2.0);
        pen::text(list, small, end_rect.x + 0.5f * end_w, end_rect.bottom() - 2.0f * small->FontSize - 10.0f,
                  ink.ink_soft, widgets::broken_at_spaces(small, words::from_behind, end_w - 12.0f),
                  pen::Side::middle);
    }
    if (others) {
        pen::text(list, small, rect.x + 4.0f, main.bottom() + 6.0f, ink.ink_soft, words::lies_also);
        draw_others(scene, afloat, {rect.x, rect.bottom() - others_h, rect.w, others_h});
    }
}

} // namespace evenfall::shell::drawing
