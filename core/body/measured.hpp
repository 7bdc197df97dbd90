#pragma once

#include "document/document.hpp"

#include <optional>

namespace evenfall::shape {

/// What caliper readings of the carved body add to the drawn half width and half height [m], as points of a
/// smooth curve (shape/curve.hpp) along the body: at each reading, half of what was read less what was drawn,
/// so that the body is exactly as thick there as the caliper says; nothing at nose and tail unless a reading
/// was taken there. The middle of the height stays where it was drawn, since a caliper does not see the datum
/// line. The shape's own curves must be sound (shape/drawing_check.hpp); readings in order of x and on the
/// body.
[[nodiscard]] document::CurvePoints half_width_correction(const document::Shape& shape);
[[nodiscard]] document::CurvePoints half_height_correction(const document::Shape& shape);

/// x of a place between nose and tail where drawing and readings together leave no wood [m]; none where all
/// is well. Looked for at 32 places between any two neighbouring stations.
[[nodiscard]] std::optional<double> without_wood(const document::Shape& shape);

} // namespace evenfall::shape
