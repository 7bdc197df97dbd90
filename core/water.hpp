#pragma once

// A lure in the water: afloat, falling, its hinges under load, other waters, how it swims, and what counts of
// its beats say of that.

#include "bench/beats.hpp"
#include "water/afloat/attitude.hpp"
#include "water/afloat/float_answers.hpp"
#include "water/fall/descent.hpp"
#include "water/fall/hinge_loads.hpp"
#include "water/fall/water_sweep.hpp"
#include "water/hang.hpp"
#include "water/swim/compare.hpp"
#include "water/swim/swim.hpp"
