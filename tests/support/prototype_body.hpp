#pragma once

#include "body/body.hpp"
#include "support/drawn_shapes.hpp"

#include <memory>

namespace evenfall::support {

/// The body of 140 mm whose fall was computed by a prototype: 35 mm high, 20 mm wide, exponent 2.6, uncut.
inline std::shared_ptr<const shape::Lines> prototype_body() {
    return shape::drawn_lines(prototype_shape()).value();
}

// The prototype's volume, centroid and skin area.
inline constexpr double prototype_volume_m3 = 57.4377e-6;
inline constexpr double prototype_middle_m = 0.060849;
inline constexpr double prototype_skin_m2 = 105.076e-4;

} // namespace evenfall::support
