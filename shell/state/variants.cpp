#include "state/variants.hpp"

#include <cstddef>
#include <utility>

namespace evenfall::shell::state {

Outcome<Variant> variant_of(const document::Document& document) {
    auto known = uncertainty(document);
    if (!known.ok()) return known.problems();
    Variant variant{document, std::move(known->evaluation), known->chances_now.both, {}};
    variant.fill_kg.resize(document.holes.size());
    for (const ledger::Line& line : variant.evaluation.ledger) {
        if (line.kind == ledger::Kind::fill)
            variant.fill_kg[static_cast<std::size_t>(line.item)] += line.mass_kg;
    }
    return variant;
}

} // namespace evenfall::shell::state
