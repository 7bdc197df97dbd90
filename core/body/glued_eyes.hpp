#pragma once

#include "base/vec3.hpp"
#include "body/body.hpp"
#include "body/glue_gap.hpp"

#include <vector>

namespace evenfall::glue {

/// A hinge eye glued into its segment.
struct GluedEye {
    int joint = 0;
    int segment = 0;
    Vec3 at_m;    ///< middle of the glued depth, which begins where the twist enters the wood
    EyeHole hole; ///< drilled with the metric bit for its twist (bits::for_glue), or twist plus least
                  ///< clearance where none fits
    double gap_m3 = 0.0;
};

/// All eyes of all drawn hinges: those in the segment that holds them, or one pair on either side of each
/// link. Glue goes no deeper than the wire does. Left out: hinges glued less than a millimetre deep, and wire
/// that gap_m3 refuses.
[[nodiscard]] std::vector<GluedEye> glued_eyes(const document::Document& document, const shape::Body& body);

/// Clearance on each side between the twist's outside and its hole [m]; wider in the valleys of the twist.
[[nodiscard]] double width_m(const EyeHole& hole);

} // namespace evenfall::glue
