#include "drawing/chain_view.hpp"

#include "drawing/outline.hpp"
#include "drawing/pen.hpp"
#include "drawing/world_to_screen.hpp"

#include <algorithm>
#include <vector>

namespace evenfall::shell::drawing {
namespace {

struct Edge {
    std::vector<joints::Pin> port;
    std::vector<joints::Pin> starboard;
};

struct Extent {
    double least_x = 1e9, most_x = -1e9, least_y = 1e9, most_y = -1e9;
    void take(const joints::Pin& p) {
        least_x = std::min(least_x, p.x_m);
        most_x = std::max(most_x, p.x_m);
        least_y = std::min(least_y, p.y_m);
        most_y = std::max(most_y, p.y_m);
    }
};

} // namespace

void draw_chain(const widgets::Ui& ui, const shape::Body& body, std::span<const joints::Pin> pins,
                std::span<const double> swings_rad, const widgets::Rect& rect) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const look::Palette& ink = ui.inks();
    const auto stands = joints::chain_poses(pins, swings_rad);
    std::vector<Edge> edges;
    Extent extent;
    for (std::size_t s = 0; s < stands.size(); ++s) {
        Edge edge;
        for (const WoodSpan& c : top_columns(body, static_cast<int>(s), 48)) {
            edge.port.push_back(stands[s].of(c.x_m, c.low_m));
            edge.starboard.push_back(stands[s].of(c.x_m, c.high_m));
            extent.take(edge.port.back());
            extent.take(edge.starboard.back());
        }
        edges.push_back(std::move(edge));
    }
    const double scale = fitting_px_per_m(extent.most_x - extent.least_x, extent.most_y - extent.least_y,
                                          rect.w - 8.0f, rect.h - 8.0f);
    // Starboard is up, as in the view from above.
    const WorldToScreen map(scale, 0.5 * (extent.least_x + extent.most_x),
                            0.5 * (extent.least_y + extent.most_y),
                            {rect.x + 0.5f * rect.w, rect.y + 0.5f * rect.h});
    for (const Edge& edge : edges) {
        std::vector<ImVec2> one;
        std::vector<ImVec2> other;
        for (const auto& p : edge.starboard)
            one.push_back(pen::vec(map.at(p.x_m, p.y_m)));
        for (const auto& p : edge.port)
            other.push_back(pen::vec(map.at(p.x_m, p.y_m)));
        pen::fill_ribbon(list, one, other, ink.wood);
        pen::outline_ribbon(list, one, other, ink.ink, look::outline);
    }
    for (std::size_t k = 0; k < pins.size(); ++k) {
        const joints::Pin at = stands[k].of(pins[k].x_m, pins[k].y_m);
        list.AddCircleFilled(pen::vec(map.at(at.x_m, at.y_m)), 3.0f, ink.metal);
    }
}

} // namespace evenfall::shell::drawing
