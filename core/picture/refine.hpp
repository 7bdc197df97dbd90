#pragma once

#include "picture/filters.hpp"
#include "picture/level_line.hpp"

namespace evenfall::picture {

/// A rough ring laid onto what the picture shows there.
struct Refined {
    Ring ring;
    bool drawn_line = false;
    double backed = 0.0; ///< share of spots with a clear line or rim under them
};

/// Moves each spot along the ring's normal onto the middle of the drawn line, or the steepest place of the
/// rim, within `reach` pixels; which of the two it is, the whole ring decides together. Spots without a clear
/// mark of their own (steepness or darkness below `clear`) go with their neighbours.
///   plane   evenly lit and smoothed, ground near 1
///   clear   steepness of an edge that counts, brightness per pixel
[[nodiscard]] Refined refined(const Plane& plane, const Ring& rough, double reach, double clear);

} // namespace evenfall::picture
