#pragma once

#include <vector>

namespace evenfall::sheet {

/// A part of a drawing that fits the paper.
struct Tile {
    double from_mm = 0.0;
    double to_mm = 0.0;
};

/// Divides a drawing from `from_mm` to `to_mm` into parts no longer than `window_mm`, as few as possible and
/// of equal length, neighbours sharing at least `overlap_mm` for gluing. The window must be longer than the
/// overlap.
[[nodiscard]] std::vector<Tile> tiles(double from_mm, double to_mm, double window_mm, double overlap_mm);

} // namespace evenfall::sheet
