#pragma once

#include "document/document.hpp"

#include <vector>

namespace evenfall::reach {

/// The bits for ballast holes that a shop has at hand, thin to wide, [m]: by 1/32 in where this lure's holes
/// are of fractions of an inch, else by half a millimetre (common practice, no source).
[[nodiscard]] std::vector<double> shop_bits_m(const document::Document& document);

} // namespace evenfall::reach
