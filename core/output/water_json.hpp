#pragma once

#include "answers/answers.hpp"
#include "water/afloat/float_answers.hpp"
#include "water/fall/descent.hpp"
#include "water/fall/hinge_loads.hpp"
#include "water/fall/water_sweep.hpp"

#include <string>

namespace evenfall::output {

/// The lure's behaviour in water, beyond its answers. Computed on demand: takes some milliseconds.
struct InWater {
    fall::SteadyFalls falls;
    fall::Track track;
    afloat::FloatAnswers afloat;
    fall::HingeLoads hinges;
    fall::Sweep sweep;
    Problems warnings; ///< of the lure itself, afloat and of its hinges
};

/// The finished lure in its fishing water, released from rest at its hang pitch.
///
///   depth_m   of the track, 0.001 to 100; a floating lure rises by as much
[[nodiscard]] Outcome<InWater> in_water(const document::Document& document, const Evaluation& evaluation,
                                        double depth_m);

/// As JSON: falls[] (manner, stable, main, pitch_deg, vertical_mm_s and its band, forward_mm_s, glide_deg),
/// track (reached_s, forward_mm, start_up_percent, points[] of [s, depth mm, forward mm, pitch °]), afloat
/// (floats, rests[], righting[], vanishing_deg, advice), under_water, hinges (segments[], joints[]), sweep
/// (by_temperature[], by_salinity[], still_at_C[]), warnings[].
[[nodiscard]] std::string water_json(const document::Document& document, const InWater& water,
                                     const units::UnitSet& units = units::metric);

/// "upright", "on its side" and the like.
[[nodiscard]] const char* posture_text(afloat::Posture posture);

} // namespace evenfall::output
