#pragma once

#include "body/hinge_place.hpp"

namespace evenfall::joints {

/// A hinge's pin along its axis: from 2 mm inside the belly to 2 mm inside the back (under filler; common
/// practice, no source).
struct PinSpan {
    double length_m = 0.0; ///< 0 where its place is outside the wood
    double middle_z_m = 0.0;

    [[nodiscard]] HeightRange heights() const {
        return {middle_z_m - 0.5 * length_m, middle_z_m + 0.5 * length_m};
    }
};

/// Off the middle plane back and belly are closer to each other.
[[nodiscard]] PinSpan pin_span(const Pin& pin, const shape::Body& body);

/// What holds the pin: wood outside the pockets. Where a pocket is open above or below, that end of the pin
/// does not bear.
struct PinHold {
    double in_wood_m = 0.0;
    double span_m = 0.0; ///< the highest pocket that it crosses; 0: none
};
[[nodiscard]] PinHold pin_hold(const document::Document& document, const Pin& pin,
                               const HeightRange& heights);

} // namespace evenfall::joints
