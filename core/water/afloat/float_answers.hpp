#pragma once

// Everything about a document afloat, in one call.

#include "base/outcome.hpp"
#include "body/body.hpp"
#include "document/document.hpp"
#include "ledger/line.hpp"
#include "water/afloat/rest.hpp"
#include "water/afloat/righting.hpp"

namespace evenfall::afloat {

struct FloatAnswers {
    bool floats = false; ///< lighter than the water it displaces when fully submerged
    std::optional<Rest>
        upright; ///< draft and pitch when kept from heeling; stable only where gm_transverse_m > 0
    std::vector<Rest> rests; ///< all attitudes of rest, nearest to upright first
    RightingCurve righting;  ///< with free trim; empty where it sinks
    UnderWater under_water;
    UprightAdvice advice;
    Problems warnings; ///< other attitudes of rest; that it does not stay upright at all is reported by
                       ///< roll_over_warning()
};

/// The finished lure in water of this density. Problems: a density that is not a positive number, a ledger
/// without mass or displacement.
[[nodiscard]] Outcome<FloatAnswers> float_answers(const shape::Body& body, const ledger::Ledger& ledger,
                                                  const document::Document& document, double water_kg_m3);

/// For a lure that floats and does not stay upright: how far G must come down, or how much heavier it must
/// be. Absent where it sinks, stays upright, or stands on nose or tail. evaluate() adds it to its warnings,
/// before any wood is cut.
[[nodiscard]] std::optional<Problem> roll_over_warning(const shape::Body& body, const ledger::Ledger& ledger,
                                                       const document::Document& document,
                                                       double water_kg_m3);

/// Only `upright` of float_answers(): fast enough to follow a dragging finger.
[[nodiscard]] std::optional<Rest> upright_answer(const shape::Body& body, const ledger::Ledger& ledger,
                                                 const document::Document& document, double water_kg_m3);

} // namespace evenfall::afloat
