#pragma once

// The minimiser behind rests(). Private to this folder.

#include "water/afloat/state.hpp"

#include <functional>

namespace evenfall::afloat {

struct Arrival {
    State state;
    bool arrived = false;
    int cuts = 0;
};

/// Follows E downhill from a state. `on_step` hears of every accepted state and may stop the walk by saying
/// true.
[[nodiscard]] Arrival downhill(const Afloat& afloat, const State& start,
                               const std::function<bool(const State&)>& on_step);

/// Newton's method for depth and pitch at the heel of `start` (turning along only, whatever the sign of the
/// stiffness against heel); downhill in E, and never over nose or tail to another heel. Not arrived where it
/// ends within 3° of standing on either.
///   close_enough    imbalance of volume (share) and of moment (arm over length) to stop at
[[nodiscard]] Arrival trimmed(const Afloat& afloat, const State& start, double close_enough);

/// A state at this attitude whose volume is right.
[[nodiscard]] State settled(const Afloat& afloat, const Vec3& up, double depth_guess_m, int* cuts);

/// The length that arms are measured against.
[[nodiscard]] double length_scale_m(const Afloat& afloat);

} // namespace evenfall::afloat
