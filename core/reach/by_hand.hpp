#pragma once

// Hold these, vary that: one size of the lure for one figure of it; and a recipe at another length.

#include "base/outcome.hpp"
#include "base/sentence.hpp"
#include "document/document.hpp"

#include <vector>

namespace evenfall::reach {

/// The lure with another thickness (side to side), so that it weighs this much in water finished, its lead,
/// hooks and coats held. The thickness is rounded to a hundredth of a millimetre. Refused ("/in_water_g")
/// where no thickness that can be built does, with the range.
[[nodiscard]] Outcome<document::Document> thickness_for(const document::Document& document,
                                                        double in_water_kg);

/// A recipe at another length, and what was chosen anew.
struct Scaled {
    document::Document document;
    std::vector<Sentence> chosen; ///< "Front hook: size 6 instead of 4.", "Bits: 5.00 mm instead of 6.35 mm."
};

/// The recipe at another length: shape, places and pockets in proportion; hooks, wire, pins and bits of sizes
/// that the shop has, nearest to proportion; coats as thick as they were; lead planned anew for the same
/// targets. Unmet targets are no refusal. Refused: a length beyond the document's limits ("/length_mm"), and
/// what cannot be built.
[[nodiscard]] Outcome<Scaled> at_length(const document::Document& document, double length_m);

/// The same at the length (to 0.1 mm) that gives the finished lure this mass, its lead planned for its
/// targets. Refused ("/mass_g") where no length does, with the range.
[[nodiscard]] Outcome<Scaled> length_for(const document::Document& document, double mass_kg);

} // namespace evenfall::reach
