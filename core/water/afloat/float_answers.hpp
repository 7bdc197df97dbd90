#pragma once

// All that can be said of a document afloat, in one call.

#include "base/outcome.hpp"
#include "body/body.hpp"
#include "document/document.hpp"
#include "ledger/line.hpp"
#include "water/afloat/rest.hpp"
#include "water/afloat/righting.hpp"

namespace evenfall::afloat {

struct FloatAnswers {
    bool floats = false; ///< lighter than the water it can push aside
    std::optional<Rest>
        upright; ///< draft and pitch when kept from heeling; stable only where gm_transverse_m > 0
    std::vector<Rest> rests; ///< where it can come to lie, nearest to upright first
    RightingCurve righting;  ///< trim free; empty where it sinks
    UnderWater under_water;
    UprightAdvice advice;
    Problems warnings; ///< other ways to lie at rest. That it will not stay upright at all says
                       ///< roll_over_warning()
};

/// Finished lure in water of this density. Problems: a density that is no positive number, a ledger without
/// mass or displacement.
[[nodiscard]] Outcome<FloatAnswers> float_answers(const shape::Body& body, const ledger::Ledger& ledger,
                                                  const document::Document& document, double water_kg_m3);

/// A lure that floats and will not stay upright: by how much G must come down, or how much heavier it must
/// be. Absent where it sinks, stays upright, or stands on nose or tail. evaluate() puts it among its
/// warnings, before any wood is cut.
[[nodiscard]] std::optional<Problem> roll_over_warning(const shape::Body& body, const ledger::Ledger& ledger,
                                                       const document::Document& document, double water_kg_m3);

/// The part of float_answers() that a dragging finger can wait for: `upright` alone.
[[nodiscard]] std::optional<Rest> upright_answer(const shape::Body& body, const ledger::Ledger& ledger,
                                                 const document::Document& document, double water_kg_m3);

} // namespace evenfall::afloat
