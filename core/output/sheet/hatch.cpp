#include "output/sheet/hatch.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace evenfall::sheet {

std::vector<Polyline> hatch(const std::vector<Point>& outline, double spacing_mm) {
    if (outline.size() < 3) return {};
    const double step = spacing_mm * std::numbers::sqrt2;
    const auto along = [](const Point& p) { return p.x_mm + p.y_mm; };
    const auto [least, greatest] = std::minmax_element(
        outline.begin(), outline.end(), [&](const Point& a, const Point& b) { return along(a) < along(b); });
    const double last = along(*greatest);
    std::vector<Polyline> out;
    for (double line = (std::floor(along(*least) / step) + 0.5) * step; line < last; line += step) {
        std::vector<double> crossings; // x where the line x + y = constant crosses an edge
        for (std::size_t k = 0; k < outline.size(); ++k) {
            const Point& a = outline[k];
            const Point& b = outline[(k + 1) % outline.size()];
            const double da = along(a) - line, db = along(b) - line;
            if ((da < 0.0) == (db < 0.0)) continue;
            crossings.push_back(a.x_mm + (b.x_mm - a.x_mm) * da / (da - db));
        }
        std::sort(crossings.begin(), crossings.end());
        for (std::size_t k = 0; k + 1 < crossings.size(); k += 2)
            out.push_back(
                {{{crossings[k], line - crossings[k]}, {crossings[k + 1], line - crossings[k + 1]}}, false});
    }
    return out;
}

} // namespace evenfall::sheet
