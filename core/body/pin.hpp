#pragma once

namespace evenfall::joints {

/// The upright axis that two segments turn about.
struct Pin {
    double x_m = 0.0; ///< from the nose
    double y_m = 0.0; ///< off the middle plane, to starboard
};

/// Which way the tail end of the lure goes.
enum class Way { port, starboard };

} // namespace evenfall::joints
