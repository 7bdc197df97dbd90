#pragma once

// The sentences of do_now(): cautions, and what the tub should show. What is to be done at each hole is a
// table (DoNow::holes). Each function adds to `steps`.

#include "bench/uncertainty/uncertainty.hpp"
#include "materials/water_properties.hpp"

namespace evenfall::bench {

/// How lead that is in is changed.
void describe_changes(DoNow& now);
/// What the tub should show after the change.
void describe_tub(DoNow& now, const materials::WaterProperties& tub);

} // namespace evenfall::bench
