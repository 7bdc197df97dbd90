#pragma once

#include "base/sentence.hpp"
#include "bench/lead/solve.hpp"
#include "bench/uncertainty/model.hpp"

#include <optional>

namespace evenfall::lead {

/// Half width of the band of a weight in water that is asked for [kg]: the band's share of it, at least 0.2 %
/// of the displaced water (own choice: what a strip of trim wire corrects), as a share of a weight near zero
/// would be no band.
[[nodiscard]] double weight_band_kg(const document::Targets& targets, double displaced_kg);

/// A miss in units of its band, behind it in a sentence: " (3.2 times its band)".
[[nodiscard]] Sentence bands_text(double bands);

/// Which of the two comes first (LeadProblem::first).
[[nodiscard]] std::optional<std::size_t> first_of(document::MattersMore more);

/// How far a finished lure is from its targets, in units of their bands.
class Misses {
public:
    /// `drag` is the factor on all drag.
    Misses(const document::Targets& targets, const shape::Lines& lines, bench::FallModel falls, double drag);

    /// Speed asked: off by so many bands of speed. A lure that floats is off by the band's whole way from the
    /// speed to nothing, and further in proportion to the weight that it lacks. Hang: by the angle from G
    /// below B to plumb, beyond a right angle where G is above B.
    [[nodiscard]] BandMisses operator()(const ledger::Sum& sum);

    /// The law for a LeadProblem.
    [[nodiscard]] static MissLaw law(Misses misses);

private:
    [[nodiscard]] double fall_miss(const ledger::Sum& sum);
    [[nodiscard]] double hang_miss(const ledger::Sum& sum) const;
    /// Close to a sum with a fall, where one is asked for: its speed by its slopes.
    [[nodiscard]] std::optional<MissLaw::At> along_slopes(const ledger::Sum& sum);

    document::Targets targets_;
    bench::FallModel falls_;
    double drag_;
    double level_kg_; ///< for the speed asked, in a level fall
};

} // namespace evenfall::lead
