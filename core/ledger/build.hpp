#pragma once

#include "base/outcome.hpp"
#include "body/body.hpp"
#include "body/bore.hpp"
#include "body/tail_loft.hpp"
#include "ledger/line.hpp"

#include <vector>

namespace evenfall::ledger {

/// What every line needs to know besides its own entry of the document.
struct LedgerInputs {
    const document::Document* document = nullptr;
    const shape::Body* body = nullptr;
    std::vector<holes::Bore> bores; ///< one for each hole
    double wood_kg_m3 = 0.0;        ///< as it lies on the bench, moisture included
    double wood_spread = 0.0;       ///< relative standard deviation of that density
    std::optional<tail::Loft> tail; ///< where the document has a soft tail by its shape
    double moisture_spread =
        0.0; ///< the same of its moisture, as a share of the density; 0 where it was weighed as it lies
};

/// Wood density, the stand of each hole, the tail. Problems: unknown wood, a tail that cannot be
/// (tail/loft.hpp).
[[nodiscard]] Outcome<LedgerInputs> prepare(const document::Document& document, const shape::Body& body);

/// All lines, in the order of the bench. Problems: a pocket that meets no wood, pockets and embedded
/// parts that leave none, a coat that has nothing to lie on, an unknown material.
[[nodiscard]] Outcome<Ledger> build(const LedgerInputs& inputs);

/// The lines of one hole as `hole` has it (not necessarily as the document has it), standing where bore
/// `index` stands: the lead plan asks for the same hole at other depths and fills. None where depth is 0.
void append_hole(const LedgerInputs& inputs, std::size_t index, const document::Hole& hole, Ledger& out);

} // namespace evenfall::ledger
