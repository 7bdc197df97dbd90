#pragma once

#include "base/outcome.hpp"
#include "body/body.hpp"
#include "body/bore.hpp"
#include "body/geometry.hpp"
#include "body/tail_loft.hpp"
#include "ledger/carved_size.hpp"
#include "ledger/line.hpp"

#include <vector>

namespace evenfall::ledger {

/// Inputs common to all lines, besides their own entries in the document.
struct LedgerInputs {
    const document::Document* document = nullptr;
    const shape::Body* body = nullptr;
    std::vector<holes::Bore> bores; ///< one for each hole
    CarvedSize carved;
    double wood_kg_m3 = 0.0;                ///< at the piece's moisture
    double wood_spread = 0.0;               ///< relative standard deviation of that density
    std::optional<tail::TailGeometry> tail; ///< present where the document has a soft tail with a drawn shape
    double moisture_spread = 0.0; ///< relative standard deviation of density due to moisture; 0 where the
                                  ///< wood was weighed at its moisture
};

/// Computes wood density, hole positions and tail geometry. Problems: unknown wood, an impossible tail
/// (tail_loft.hpp).
[[nodiscard]] Outcome<LedgerInputs> ledger_inputs(const document::Document& document,
                                                  const shape::Body& body);

/// All lines, in the order of the work steps. The pockets are those of the same document. Problems: a pocket
/// that meets no wood, pockets and embedded parts that leave none of a segment, a coat without a surface, an
/// unknown material.
[[nodiscard]] Outcome<Ledger> build(const LedgerInputs& inputs,
                                    const std::vector<shape::PocketPiece>& pockets);

/// The lines of one hole with depth and fill as in `hole` (which may differ from the document), at the
/// position of bore `index`: the lead plan tries other depths and fills. None where the depth is 0.
void append_hole(const LedgerInputs& inputs, std::size_t index, const document::Hole& hole, Ledger& out);

} // namespace evenfall::ledger
