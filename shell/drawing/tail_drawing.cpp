#include "body.hpp"
#include "drawing/outline.hpp"
#include "drawing/scene.hpp"

#include <algorithm>

namespace evenfall::shell::drawing {

void draw_soft_tail(Scene& scene, const WorldToScreen& map, bool above, bool to_choose) {
    if (!scene.document.tail) return;
    const document::Tail& tail = *scene.document.tail;
    const auto body = evenfall::tail::shaped(tail);
    if (!body.ok()) return;
    const double z = above ? 0.0 : tail.z_m;
    std::vector<ImVec2> high;
    std::vector<ImVec2> low;
    double most = 0.0;
    double least = 0.0;
    for (const WoodSpan& column : above ? top_columns(*body, 0, 48) : side_columns(*body, 0, 48)) {
        high.push_back(pen::vec(map.at(tail.x_m + column.x_m, z + column.high_m)));
        low.push_back(pen::vec(map.at(tail.x_m + column.x_m, z + column.low_m)));
        most = std::max(most, column.high_m);
        least = std::min(least, column.low_m);
    }
    const bool chosen = scene.chosen(state::ItemKind::tail, 0);
    const ImU32 ink = chosen ? scene.ink().mark : scene.ink().ink;
    pen::fill_ribbon(scene.list, high, low, look::faded(scene.ink().tint, 0.55f));
    pen::outline_ribbon(scene.list, high, low, ink, pen::medium);
    if (tail.tenon) {
        const double half = 0.5 * (above ? tail.tenon->thickness_m : tail.tenon->height_m);
        const double fore = tail.x_m - tail.tenon->length_m;
        const ImVec2 tenon[] = {pen::vec(map.at(tail.x_m, z + half)), pen::vec(map.at(fore, z + half)),
                                pen::vec(map.at(fore, z - half)), pen::vec(map.at(tail.x_m, z - half))};
        pen::dashed(scene.list, tenon, ink, pen::hair);
    }
    if (!to_choose) return;
    const ImVec2 from = pen::vec(map.at(tail.x_m, z + most));
    const ImVec2 to = pen::vec(map.at(tail.x_m + tail.back.back().x_m, z + least));
    if (chosen)
        pen::corners(scene.list, {from.x - 5.0f, from.y - 5.0f}, {to.x + 5.0f, to.y + 5.0f}, scene.ink().mark,
                     7.0f, pen::heavy);
    add_hit(scene, above ? "draw.above.tail" : "draw.tail", {state::ItemKind::tail, 0},
            {from.x, from.y, to.x - from.x, to.y - from.y}, 2);
}

} // namespace evenfall::shell::drawing
