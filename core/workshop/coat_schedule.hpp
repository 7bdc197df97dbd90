#pragma once

#include "answers/answers.hpp"

#include <vector>

namespace evenfall::resin {

/// Mass of one coat by surface, from the coat's lines in the ledger.
struct CoatGrams {
    int coat = 0; ///< index into document.coats, in order of application
    double skin_kg = 0.0;
    double faces_kg = 0.0; ///< joint faces
    double pockets_kg = 0.0;
    double skin_m2 = 0.0; ///< covered area
    double faces_m2 = 0.0;
    double pockets_m2 = 0.0;
    [[nodiscard]] double together_kg() const { return skin_kg + faces_kg + pockets_kg; }
};

/// One entry for each coat. The ledger has skin and joint faces of a segment in one line; its mass is divided
/// by area.
[[nodiscard]] std::vector<CoatGrams> schedule(const document::Document& document,
                                              const Evaluation& evaluation);

/// True where this coat is a film of two-part resin.
[[nodiscard]] bool is_resin(const document::Coat& coat);
/// The first such film, as an index into document.coats; −1 where there is none.
[[nodiscard]] int resin_coat(const document::Document& document);

} // namespace evenfall::resin
