#pragma once

#include "body/hole_checks.hpp"
#include "ledger/build.hpp"
#include "ledger/fold.hpp"

#include <string>
#include <vector>

namespace evenfall::lead {

/// A hole that the plan may fill, with the longest column of fill it can take.
struct Candidate {
    std::size_t hole = 0; ///< index into document.holes
    std::string material;
    double density_kg_m3 = 0.0;
    double fill_area_m2 = 0.0; ///< of the stock, or of the hole where poured
    double cone_m3 = 0.0;      ///< of the drill point, filled first where poured
    double covered_m = 0.0;    ///< from the skin to the nearest the fill may come (holes/bore.hpp)
    double upper_m = 0.0;      ///< longest column; 0 where the hole can take none
    holes::DepthLimit limit;
    bool depth_is_cut = false; ///< use = drilled: the void above the fill stays
};

/// Every hole with use ballast or drilled, in document order. All of them may be filled to the end at once:
/// of two that would meet, the later one stops short of the earlier one.
[[nodiscard]] std::vector<Candidate> candidates(const ledger::LedgerInputs& inputs);

/// The document's hole with a column of fill this long, drilled as deep as that needs. Unused: not drilled,
/// or left empty.
[[nodiscard]] document::Hole with_column(const ledger::LedgerInputs& inputs, const Candidate& candidate,
                                         double column_m, bool used);

/// What the candidate's hole adds to the finished lure.
[[nodiscard]] ledger::Sum contribution(const ledger::LedgerInputs& inputs, const Candidate& candidate,
                                       double column_m, bool used);

} // namespace evenfall::lead
