#pragma once

#include "body/hole_checks.hpp"
#include "ledger/build.hpp"
#include "ledger/fold.hpp"

#include <string>
#include <vector>

namespace evenfall::lead {

/// A hole that the plan may fill, with the longest fill it can take.
struct Candidate {
    std::size_t hole = 0; ///< index into document.holes
    std::string material;
    double density_kg_m3 = 0.0;
    double fill_area_m2 = 0.0; ///< cross-section of the rod, or of the hole where poured
    double cone_m3 = 0.0;      ///< of the drill point, filled first where poured
    double fill_free_m = 0.0;  ///< length from the skin that must stay free of fill (body/bore.hpp)
    double upper_m = 0.0;      ///< longest fill; 0 where the hole can take none
    holes::DepthLimit limit;
    bool depth_is_fixed =
        false; ///< use = drilled or leaded: the depth is fixed, the space above the fill stays empty
};

/// Which holes: those that the plan may fill (use ballast or drilled), or those too whose lead is in.
enum class Which { to_fill, leaded_too };

/// Those holes, in document order. All of them may be filled completely at once:
/// of two that would meet, the later one ends before the earlier one.
[[nodiscard]] std::vector<Candidate> candidates(const ledger::LedgerInputs& inputs,
                                                Which which = Which::to_fill);

/// The document's hole with a fill of this length, drilled as deep as that needs. Unused: not drilled, or
/// left empty.
[[nodiscard]] document::Hole with_fill(const ledger::LedgerInputs& inputs, const Candidate& candidate,
                                       double column_m, bool used);

/// The lines that the candidate's hole adds to the finished lure, summed.
[[nodiscard]] ledger::Sum contribution(const ledger::LedgerInputs& inputs, const Candidate& candidate,
                                       double column_m, bool used);

/// The same as a parabola in the length of the fill: the ledger is straight in it but for the fill's height.
/// A search asks for it thousands of times.
struct HoleSums {
    ledger::Sum unused;
    ledger::Sum empty, linear, square; ///< used, by powers of the length

    [[nodiscard]] static HoleSums of(const ledger::LedgerInputs& inputs, const Candidate& candidate);
    [[nodiscard]] ledger::Sum at(double column_m, bool used) const;
    [[nodiscard]] ledger::Sum fill(double column_m) const;     ///< beyond the hole in use without one
    [[nodiscard]] ledger::Sum slope_at(double column_m) const; ///< per metre of fill
};

} // namespace evenfall::lead
