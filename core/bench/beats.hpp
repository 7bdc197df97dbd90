#pragma once

// What beats counted on the water say of the beats that were foretold.

#include "document/document.hpp"
#include "water/swim/draws.hpp"

#include <optional>

namespace evenfall::bench {

/// ln of the beats per metre in the water over those foretold, normal.
struct BeatsError {
    double mean = 0.0;
    double sigma = 0.0;
    int counts = 0; ///< that were taken into account
};

/// Beats per metre of a count; absent where its way is not told.
[[nodiscard]] std::optional<double> counted_per_m(const document::Reading& reading);

/// Standard deviation of the ln of a count: its own, or usually half a beat at its ends and 5 % of way and
/// pace (own estimate).
[[nodiscard]] double count_sigma_ln(const document::Reading& reading);

/// The lure on the bench (the latest in the log), given its counts and what its recipe has learnt of earlier
/// lures. `foretold_per_m`: of the design as it is; `sigma_ln`: how far that may be off before any count. A
/// count of a design that has been changed since (foretold then by more than 2 % otherwise) is believed less.
[[nodiscard]] BeatsError beats_error(const document::Document& document, std::optional<double> foretold_per_m,
                                     double sigma_ln);

/// A band of beats per metre and what it rests on.
struct KnownBeats {
    swim::Beats per_m;
    bool is_learnt = false; ///< of counts, of this lure or of earlier ones of its recipe
    int counts = 0;         ///< of this lure, that were taken into account
};
/// A band that was worked out, narrowed by the counts in the log and by what the recipe has learnt: as if the
/// ln were normal about the band's middle, as wide as its ends are apart. The band itself where there is
/// neither.
[[nodiscard]] KnownBeats known_beats(const document::Document& document, const swim::Beats& worked_out);

/// What the next lure of the recipe begins with; absent where nothing was counted.
[[nodiscard]] std::optional<document::Correction> beats_for_next_lure(const document::Document& document);

} // namespace evenfall::bench
