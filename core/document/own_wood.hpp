#pragma once

#include "document/document.hpp"

#include <algorithm>

namespace evenfall::document {

/// The density that a board of the lure's own wood was weighed at. What was learnt of the density before was
/// learnt of another figure, and goes: corrections of density and moisture, and a spread of its own.
inline void set_weighed_density(Document& document, double density_kg_m3) {
    document.wood.density_kg_m3 = density_kg_m3;
    document.wood.density_spread.reset();
    auto& learnt = document.corrections;
    learnt.erase(std::remove_if(learnt.begin(), learnt.end(),
                                [](const Correction& c) {
                                    return c.of == Cause::wood_density || c.of == Cause::moisture;
                                }),
                 learnt.end());
}

} // namespace evenfall::document
