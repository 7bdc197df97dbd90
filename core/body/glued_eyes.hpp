#pragma once

#include "base/vec3.hpp"
#include "body/body.hpp"
#include "body/glue_gap.hpp"

#include <vector>

namespace evenfall::glue {

/// A hinge's eye as it sits glued in its own segment.
struct EyeInHole {
    int joint = 0;
    int segment = 0;
    Vec3 at_m;    ///< middle of the glued depth, which begins where the twist comes into wood
    EyeHole hole; ///< bored with the metric bit for its twist (bits::for_glue), or twist and least room where
                  ///< none fits
    double gap_m3 = 0.0;
};

/// Every eye of every hinge that is drawn: those of the segment that holds them, or one pair on either side
/// of each link. Glue goes no deeper than wire does. Left out: hinges that are not glued a millimetre deep,
/// and wire that gap_m3 refuses.
[[nodiscard]] std::vector<EyeInHole> eyes_in_holes(const document::Document& document, const shape::Body& body);

/// Room on each side between the twist's outside and its hole [m]; the valleys of the twist are wider.
[[nodiscard]] double width_m(const EyeHole& hole);

} // namespace evenfall::glue
