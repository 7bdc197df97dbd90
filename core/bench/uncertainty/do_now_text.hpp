#pragma once

// The sentences of do_now(). Each function adds to `steps`.

#include "bench/uncertainty/uncertainty.hpp"
#include "materials/water_properties.hpp"

namespace evenfall::bench {

/// What to do at each changed hole; `before` is the document as it was.
void describe_changes(DoNow& now, const document::Document& before);
/// The lead plan, hole by hole.
void describe_plan(DoNow& now, const LeadPlan& plan);
/// What the tub should show after the change.
void describe_tub(DoNow& now, const materials::WaterProperties& tub);

} // namespace evenfall::bench
