#pragma once

#include "output/sheet/model.hpp"

namespace evenfall::sheet {

/// Lines at 45° inside a closed outline (even-odd), `spacing_mm` apart, aligned to the page so that
/// neighbouring areas match.
[[nodiscard]] std::vector<Polyline> hatch(const std::vector<Point>& outline, double spacing_mm);

} // namespace evenfall::sheet
