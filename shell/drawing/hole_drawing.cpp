#include "drawing/scene.hpp"

#include "evenfall.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace evenfall::shell::drawing {

void draw_hole(Scene& scene, const WorldToScreen& map, std::size_t index, double middle_u_m,
               double half_width_m, bool with_number) {
    using pen::vec;
    const auto& hole = scene.document.holes[index];
    const auto& bore = scene.bores[index];
    if (bore.segment < 0) return;
    auto& list = scene.list;
    const auto& ink = scene.ink();
    const bool chosen = scene.chosen(state::ItemKind::hole, index);
    const bool drilled = hole.depth_m > 0.0;
    const double reach_m = drilled ? hole.depth_m : hole.max_depth_m;

    // A rectangle between two depths from the skin, as screen corners (upper left, lower right).
    struct ScreenBox {
        ImVec2 least;
        ImVec2 most;
    };
    const auto box = [&](double depth_from_m, double depth_to_m, double half_m) {
        const ImVec2 a = vec(map.at(middle_u_m - half_m, bore.mouth_z_m + bore.inward * depth_from_m));
        const ImVec2 b = vec(map.at(middle_u_m + half_m, bore.mouth_z_m + bore.inward * depth_to_m));
        return ScreenBox{{std::min(a.x, b.x), std::min(a.y, b.y)}, {std::max(a.x, b.x), std::max(a.y, b.y)}};
    };
    const ScreenBox whole = box(0.0, reach_m, half_width_m);

    if (!drilled) {
        // Not drilled yet: how far the bit may go.
        pen::dashed_rect(list, whole.least, whole.most, chosen ? ink.mark : ink.line,
                         chosen ? pen::medium : pen::hair);
    } else {
        list.AddRectFilled(whole.least, whole.most, ink.cavity);
        if (hole.end == document::HoleEnd::point_118) {
            const double point_m = 2.0 * half_width_m * holes::point_height_per_diameter;
            const auto deep = bore.mouth_z_m + bore.inward * hole.depth_m;
            const ImVec2 cone[] = {vec(map.at(middle_u_m - half_width_m, deep)),
                                   vec(map.at(middle_u_m, deep + bore.inward * point_m)),
                                   vec(map.at(middle_u_m + half_width_m, deep))};
            const bool filled = hole.fill && !hole.fill->stock_diameter_m;
            list.AddTriangleFilled(cone[0], cone[1], cone[2], filled ? ink.lead : ink.cavity);
            pen::line(list, cone, ink.ink, pen::hair);
        }
        const auto inside = holes::contents(hole, bore);
        if (holes::is_plugged(hole)) {
            list.AddRectFilled(whole.least, whole.most, ink.cap);
            pen::hatch(list, whole.least, whole.most, ink.lead, 5.0f, true);
        } else {
            if (inside.fill_column_m > 0.0) {
                double half = half_width_m;
                if (hole.fill && hole.fill->stock_diameter_m)
                    half = std::min(half, 0.5 * *hole.fill->stock_diameter_m);
                const ScreenBox fill = box(hole.depth_m - inside.fill_column_m, hole.depth_m, half);
                list.AddRectFilled(fill.least, fill.most, ink.lead);
                pen::dots(list, fill.least, fill.most, ink.lead_hatch, 6.0f);
                list.AddLine({fill.least.x, bore.inward > 0.0 ? fill.most.y : fill.least.y},
                             {fill.most.x, bore.inward > 0.0 ? fill.most.y : fill.least.y}, ink.ink,
                             pen::hair);
            }
            if (hole.cap) {
                const ScreenBox cap = box(0.0, std::min(hole.cap->length_m, hole.depth_m), half_width_m);
                list.AddRectFilled(cap.least, cap.most, ink.cap);
                pen::hatch(list, cap.least, cap.most, ink.lead, 4.0f);
                list.AddRect(cap.least, cap.most, ink.ink, 0.0f, 0, pen::hair);
            }
        }
        list.AddRect(whole.least, whole.most, ink.ink, 0.0f, 0, pen::medium);
    }
    if (chosen) {
        const float out = 5.0f;
        pen::corners(list, {whole.least.x - out, whole.least.y - out},
                     {whole.most.x + out, whole.most.y + out}, ink.mark, 7.0f, pen::heavy);
    }
    if (with_number) {
        ImFont* const font = chosen ? scene.ui.type.label_strong : scene.ui.type.label;
        const float middle = 0.5f * (whole.least.x + whole.most.x);
        // Below the belly; a hole from the back has its number at its deep end, because the segments' names
        // are above it.
        const float y = whole.most.y + (chosen ? 7.0f : 4.0f);
        const std::string number = std::to_string(index + 1);
        pen::text(list, font, middle, y, chosen ? ink.mark : ink.ink, number, pen::Side::middle,
                  bore.inward > 0.0 ? ink.paper : ink.wood);
        const float width = widgets::text_width(font, number) + 6.0f;
        scene.labels.push_back({middle - 0.5f * width, y, width, font->FontSize});
    }
}

} // namespace evenfall::shell::drawing
