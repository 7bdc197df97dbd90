#include "drawing/drill_view.hpp"

#include "body.hpp"
#include "drawing/outline.hpp"
#include "drawing/pen.hpp"
#include "look/words_drill.hpp"

#include <algorithm>
#include <string>

namespace evenfall::shell::drawing {
namespace {

namespace words = look::words;

/// Metres of a segment → pixels, with belly or back on top.
struct BenchMap {
    double px_per_m = 1.0;
    double x_m = 0.0;
    double z_m = 0.0; ///< at `at`
    bool belly_up = false;
    ImVec2 at;

    [[nodiscard]] ImVec2 operator()(double x, double z) const {
        const double down = belly_up ? z - z_m : z_m - z;
        return {at.x + static_cast<float>((x - x_m) * px_per_m), at.y + static_cast<float>(down * px_per_m)};
    }
    [[nodiscard]] float px(double length_m) const { return static_cast<float>(length_m * px_per_m); }
};

struct Drawn {
    widgets::Ui& ui;
    ImDrawList& list;
    const document::Document& document;
    const shape::Body& body;
    BenchMap map;

    [[nodiscard]] const look::Palette& ink() const { return ui.inks(); }
};

/// Part of a hole between two depths from the skin.
void box(const Drawn& d, const document::Hole& hole, const holes::Bore& bore, double from_m, double to_m,
         ImU32 ground, ImU32 rim) {
    const double r = 0.5 * hole.diameter_m;
    const ImVec2 a = d.map(hole.x_m - r, bore.mouth_z_m + bore.inward * from_m);
    const ImVec2 b = d.map(hole.x_m + r, bore.mouth_z_m + bore.inward * to_m);
    const ImVec2 least{std::min(a.x, b.x), std::min(a.y, b.y)};
    const ImVec2 most{std::max(a.x, b.x), std::max(a.y, b.y)};
    if (ground != 0) d.list.AddRectFilled(least, most, ground);
    d.list.AddRect(least, most, rim, 0.0f, 0, pen::medium);
}

void draw_wood(const Drawn& d, int segment) {
    const auto columns = side_columns(d.body, segment, 64);
    std::vector<ImVec2> top, low;
    for (const WoodSpan& span : columns) {
        low.push_back(d.map(span.x_m, span.low_m));
        top.push_back(d.map(span.x_m, span.high_m));
    }
    pen::fill_ribbon(d.list, low, top, d.ink().wood);
    pen::outline_ribbon(d.list, low, top, d.ink().ink, look::outline);
}

/// The bit at the bottom of the hole, the tape round it at the skin, and the depth beside them.
void draw_bit(const Drawn& d, const document::Hole& hole, const holes::Bore& bore, const HoleStep& step,
              float above_px) {
    const ImVec2 mouth = d.map(hole.x_m, bore.mouth_z_m);
    const ImVec2 deep = d.map(hole.x_m, bore.mouth_z_m + bore.inward * step.depth_m);
    const float half = 0.5f * d.map.px(step.diameter_m);
    const float top = mouth.y - above_px;
    d.list.AddRectFilled({mouth.x - half, top}, {mouth.x + half, deep.y}, look::faded(d.ink().metal, 0.45f));
    d.list.AddRect({mouth.x - half, top}, {mouth.x + half, deep.y}, d.ink().ink, 0.0f, 0, pen::medium);
    for (float y = top; y < deep.y - half; y += 9.0f)
        d.list.AddLine({mouth.x - half, y + half}, {mouth.x + half, y}, d.ink().ink, pen::hair);
    const float tape = half + 7.0f;
    d.list.AddRectFilled({mouth.x - tape, mouth.y - 14.0f}, {mouth.x + tape, mouth.y}, d.ink().mark);
    // The depth: an arrow from the skin to the tip.
    const float x = mouth.x + tape + 14.0f;
    d.list.AddLine({x, mouth.y}, {x, deep.y}, d.ink().ink, pen::medium);
    pen::arrow_head(d.list, {x, mouth.y}, 0.0f, -1.0f, 8.0f, d.ink().ink);
    pen::arrow_head(d.list, {x, deep.y}, 0.0f, 1.0f, 8.0f, d.ink().ink);
    const std::string depth = widgets::value_text(step.depth_m, d.ui.units.of(widgets::Quantity::length));
    ImFont* const font = d.ui.type.body_strong;
    pen::text(d.list, font, x + 10.0f, 0.5f * (mouth.y + deep.y - font->FontSize), d.ink().ink, depth,
              pen::Side::left, d.ink().wood);
    pen::text(d.list, d.ui.type.label, mouth.x + tape + 8.0f, mouth.y - 16.0f - d.ui.type.label->FontSize,
              d.ink().mark, words::tape_here);
}

} // namespace

void drill_view(widgets::Ui& ui, const document::Document& document, const shape::Body& body,
                const HoleStep& step, const widgets::Rect& rect) {
    const document::Hole& hole = document.holes[static_cast<std::size_t>(step.hole)];
    const holes::Bore bore = holes::place(hole, body);
    if (bore.segment < 0 || rect.h < 60.0f || rect.w < 60.0f) return;
    const auto columns = side_columns(body, bore.segment, 64);
    double low = columns.front().low_m, high = columns.front().high_m;
    for (const WoodSpan& span : columns) {
        low = std::min(low, span.low_m);
        high = std::max(high, span.high_m);
    }
    const double length = columns.back().x_m - columns.front().x_m;
    const bool belly_up = hole.from == document::HoleFrom::belly;
    const float label = ui.type.body_strong->FontSize + 6.0f;
    const float bit_px = std::min(0.28f * rect.h, 110.0f);
    const float wood_h = rect.h - bit_px - label - 8.0f;
    const double px_per_m = std::min((rect.w - 24.0f) / length, wood_h / (high - low));
    const float middle_y = rect.y + bit_px + 0.5f * wood_h;
    Drawn d{ui,
            *ImGui::GetWindowDrawList(),
            document,
            body,
            {px_per_m,
             0.5 * (columns.front().x_m + columns.back().x_m),
             0.5 * (low + high),
             belly_up,
             {rect.x + 0.5f * rect.w, middle_y}}};
    draw_wood(d, bore.segment);
    for (std::size_t i = 0; i < document.holes.size(); ++i) {
        const document::Hole& other = document.holes[i];
        if (static_cast<int>(i) == step.hole || other.depth_m <= 0.0) continue;
        const holes::Bore place = holes::place(other, body);
        if (place.segment == bore.segment) box(d, other, place, 0.0, other.depth_m, 0, d.ink().line);
    }
    if (hole.depth_m > 0.0) {
        box(d, hole, bore, 0.0, hole.depth_m, d.ink().cavity, d.ink().ink);
        const holes::HoleContents inside = holes::contents(hole, bore);
        if (inside.fill_column_m > 0.0)
            box(d, hole, bore, hole.depth_m - inside.fill_column_m, hole.depth_m, d.ink().lead, d.ink().ink);
    }
    const ImVec2 nose = d.map(columns.front().x_m, 0.5 * (low + high));
    pen::arrow_head(d.list, {nose.x + 6.0f, nose.y}, -1.0f, 0.0f, 12.0f, d.ink().ink_soft);
    pen::text(d.list, ui.type.label, nose.x + 20.0f, nose.y - 0.5f * ui.type.label->FontSize,
              d.ink().ink_soft, words::to_the_nose, pen::Side::left, d.ink().wood);
    const double foot_z = belly_up ? high : low;
    pen::text(d.list, ui.type.body_strong, d.map(hole.x_m, foot_z).x, d.map(hole.x_m, foot_z).y + 6.0f,
              d.ink().ink_soft, belly_up ? words::back_below : words::belly_below, pen::Side::middle);
    if (step.drills) draw_bit(d, hole, bore, step, bit_px - 26.0f);
}

} // namespace evenfall::shell::drawing
