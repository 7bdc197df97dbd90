#pragma once

#include "answers/answers.hpp"
#include "bench/lead/lead_plan.hpp"

#include <string>

namespace evenfall::output {

// The answers as JSON text, the same for the program, the page and the tests. Units are in the keys; numbers
// are rounded to a millionth of their unit; what does not apply (the fall of a floater) is null. Ends with a
// line break. Sentences (limit, sentence) are told in `units`; everything else stays metric, as its key says.

/// One finished lure: name, mass_g, mass_sigma_g, displaced_cm3, in_water_g, in_water_sigma_g, behaviour,
/// fall_mm_s, fall_slow_mm_s, fall_fast_mm_s, under_water_mm_s (down positive, a rise negative), its slow and
/// fast end, pitch_deg, roll_deg, bg_mm, g_mm, b_mm, water_kg_m3,
/// segments[], stages[], warnings[]. With `chance`, the chance of a right first fall
/// (bench/uncertainty/uncertainty.hpp) as chance_percent.
[[nodiscard]] std::string answers_json(const document::Document& document, const Evaluation& evaluation,
                                       std::optional<double> chance = std::nullopt,
                                       const units::UnitSet& units = units::metric);

/// A lead plan: the answers with it at the top level, as above, then met, fills[] (hole counted from 1, name,
/// material, mass_g, depth_mm, column_mm), shortfalls[] and, under "before", the answers without it.
[[nodiscard]] std::string lead_json(const LeadPlan& plan, const units::UnitSet& units = units::metric);

} // namespace evenfall::output
