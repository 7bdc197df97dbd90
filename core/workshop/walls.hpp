#pragma once

#include "body/hinge_place.hpp"

namespace evenfall::joints {

/// Wood left round pockets and pins below which it is called thin. Common practice, no source.
inline constexpr double thin_wall_m = 1.5e-3;

enum class Between {
    pin_and_face, ///< in front of the pin
    pin_and_skin, ///< beside the pin, at the height of its eyes
    pin_and_hole,
    pocket_and_skin, ///< beside the pocket
    pocket_and_hole,
};

struct Wall {
    Between between = Between::pin_and_face;
    double thickness_m = 0.0; ///< at the thinnest place; negative: they meet
    std::optional<int> hole;  ///< of document.holes
};

/// The thinnest wall of each sort at one joint, thinnest first. Sorts that do not occur are left out: linked
/// eyes have no pin.
///
/// Ballast holes that end short of the pin, or of a pocket's height, do not count against it; a pocket may
/// reach into both segments.
///
/// pin  heights that the pin takes up
[[nodiscard]] std::vector<Wall> walls(const document::Document& document, const shape::Body& body, int joint,
                                      const HingePlace& place, const Heights& pin);

} // namespace evenfall::joints
