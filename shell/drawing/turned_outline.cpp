#include "drawing/turned_outline.hpp"

#include "drawing/outline.hpp"

#include <cmath>
#include <numbers>

namespace evenfall::shell::drawing {

std::vector<ViewPoint> section_rim(const shape::Lines& lines, double x_m, const ViewDirection& look,
                                   int count) {
    const auto station = lines.at(x_m);
    std::vector<ViewPoint> rim;
    rim.reserve(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i) {
        const double turn = 2.0 * std::numbers::pi * i / count;
        const double z = station.centre_z_m + station.half_height_m * std::cos(turn);
        const double side = std::sin(turn) < 0.0 ? -1.0 : 1.0;
        rim.push_back(look.at({x_m, side * shape::skin_half_width(lines, x_m, z), z}));
    }
    return rim;
}

Silhouette silhouette(const shape::Body& body, int segment, const ViewDirection& look, int count) {
    constexpr int around = 32;
    // Perpendicular to the projected long axis: the edges are the outermost points on both sides of it.
    const double length = std::hypot(look.right.x, look.up.x);
    const double out_u = length > 0.0 ? -look.up.x / length : 0.0;
    const double out_v = length > 0.0 ? look.right.x / length : 1.0;
    Silhouette edges;
    for (const WoodSpan& column : side_columns(body, segment, count)) {
        ViewPoint high;
        ViewPoint low;
        double highest = -1e9;
        double lowest = 1e9;
        for (const ViewPoint& p : section_rim(*body.lines, column.x_m, look, around)) {
            const double out = out_u * p.u + out_v * p.v;
            if (out > highest) {
                highest = out;
                high = p;
            }
            if (out < lowest) {
                lowest = out;
                low = p;
            }
        }
        edges.one.push_back(high);
        edges.other.push_back(low);
    }
    return edges;
}

double largest_section_x_m(const shape::Lines& lines) {
    double best = 0.0;
    double at = 0.0;
    const double length = lines.length_m();
    constexpr int stations = 64;
    for (int i = 1; i < stations; ++i) {
        const double x = length * i / stations;
        const auto station = lines.at(x);
        const double size = station.half_height_m * station.half_width_m;
        if (size > best) {
            best = size;
            at = x;
        }
    }
    return at;
}

} // namespace evenfall::shell::drawing
