#pragma once

namespace evenfall::joints {

/// The vertical axis of a joint, about which two segments turn.
struct Pin {
    double x_m = 0.0; ///< from the nose
    double y_m = 0.0; ///< from the middle plane, to starboard
};

/// Side to which the tail swings.
enum class SwingSide { port, starboard };

} // namespace evenfall::joints
