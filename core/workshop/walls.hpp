#pragma once

#include "body/hinge_place.hpp"
#include "body/keep_out.hpp"

namespace evenfall::joints {

enum class WallKind {
    pin_and_face, ///< in front of the pin
    pin_and_skin, ///< beside the pin, at the height of its eyes
    pin_and_hole,
    pocket_and_skin, ///< beside the pocket
    pocket_and_hole,
};

struct Wall {
    WallKind between = WallKind::pin_and_face;
    double thickness_m = 0.0; ///< at the thinnest place; negative: they overlap
    std::optional<int> hole;  ///< index into document.holes
};

/// The thinnest wall of each kind at one joint, thinnest first. Kinds that do not occur are left out: linked
/// eyes have no pin.
///
/// Ballast holes that end short of the pin, or of a pocket's height, are not counted; a pocket may extend
/// into both segments.
///
///   pin  heights between which the pin runs
[[nodiscard]] std::vector<Wall> walls(const document::Document& document, const shape::Body& body, int joint,
                                      const HingePlace& place, const HeightRange& pin);

} // namespace evenfall::joints
