#include "output/sheet/tiling.hpp"

#include <cmath>

namespace evenfall::sheet {

std::vector<Tile> tiles(double from_mm, double to_mm, double window_mm, double overlap_mm) {
    const double length = to_mm - from_mm;
    if (length <= window_mm) return {{from_mm, to_mm}};
    const double count = std::ceil((length - overlap_mm) / (window_mm - overlap_mm));
    const double each = (length - overlap_mm) / count + overlap_mm;
    std::vector<Tile> out;
    for (double k = 0.0; k < count; k += 1.0) {
        const double start = from_mm + k * (each - overlap_mm);
        out.push_back({start, start + each});
    }
    out.back().to_mm = to_mm;
    return out;
}

} // namespace evenfall::sheet
