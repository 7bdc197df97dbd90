#pragma once

// The minimiser used by rests(). Private to this folder.

#include "water/afloat/state.hpp"

#include <functional>

namespace evenfall::afloat {

struct DescentEnd {
    FloatState state;
    bool arrived = false;
    int cuts = 0;
};

/// Minimises E from a start. `on_step` is called for every accepted state and stops the iteration by
/// returning true.
[[nodiscard]] DescentEnd minimised(const Afloat& afloat, const FloatState& start,
                                   const std::function<bool(const FloatState&)>& on_step);

/// Newton's method for depth and pitch at the heel of `start` (rotation along only, whatever the stiffness
/// against heel). E decreases, and the step never passes nose or tail to another heel. Not arrived where it
/// ends within 3° of standing on either.
///
///   close_enough  imbalance of volume (share) and of moment (arm over length) at which to stop
[[nodiscard]] DescentEnd trimmed(const Afloat& afloat, const FloatState& start, double close_enough);

/// The state at this attitude with the right volume under water (to a thousandth).
[[nodiscard]] FloatState with_right_volume(const Afloat& afloat, const Vec3& up, double depth_guess_m,
                                           int* cuts);

/// The length by which arms are divided.
[[nodiscard]] double length_scale_m(const Afloat& afloat);

} // namespace evenfall::afloat
