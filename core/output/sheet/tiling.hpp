#pragma once

#include <vector>

namespace evenfall::sheet {

/// A stretch of a drawing that fits the paper.
struct Tile {
    double from_mm = 0.0;
    double to_mm = 0.0;
};

/// A drawing from `from_mm` to `to_mm` cut into stretches no longer than `window_mm`, as few as will do and
/// all of one length, neighbours sharing at least `overlap_mm` for gluing. The window must be longer than the
/// overlap.
[[nodiscard]] std::vector<Tile> tiles(double from_mm, double to_mm, double window_mm, double overlap_mm);

} // namespace evenfall::sheet
