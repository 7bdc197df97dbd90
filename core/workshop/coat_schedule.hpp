#pragma once

#include "answers/answers.hpp"

#include <vector>

namespace evenfall::resin {

/// Grams of one coat by the surface they lie on: the coat's lines of the ledger.
struct CoatGrams {
    int coat = 0; ///< index into document.coats, in order of work
    double skin_kg = 0.0;
    double faces_kg = 0.0; ///< of the joints
    double pockets_kg = 0.0;
    double skin_m2 = 0.0; ///< that it covers
    double faces_m2 = 0.0;
    double pockets_m2 = 0.0;
    [[nodiscard]] double together_kg() const { return skin_kg + faces_kg + pockets_kg; }
};

/// One entry for each coat. The ledger knows skin and joint faces of a segment as one line: its grams are
/// shared by area.
[[nodiscard]] std::vector<CoatGrams> schedule(const document::Document& document, const Evaluation& evaluation);

/// Is this coat a film of two-part resin?
[[nodiscard]] bool is_resin(const document::Coat& coat);
/// The first such film, as an index into document.coats; −1 where there is none.
[[nodiscard]] int resin_coat(const document::Document& document);

} // namespace evenfall::resin
