#pragma once

#include "picture/ring.hpp"

namespace evenfall::picture {

/// A rough ring laid onto what the picture shows there.
struct Refined {
    Ring ring;
    bool drawn_line = false;
    double backed = 0.0; ///< share of spots with a clear line or rim under them
};

/// Moves each spot along the ring's normal onto the middle of the drawn line, or the steepest place of the
/// rim, within `reach` pixels; which of the two it is, the whole ring decides together. Spots without a clear
/// mark of their own, and those right beside a gap, lie straight between their marked neighbours.
///   plane   smoothed brightness
///   clear   steepness of an edge that carries on, brightness per pixel
[[nodiscard]] Refined refined(const Plane& plane, const Ring& rough, double reach, double clear);

} // namespace evenfall::picture
