#pragma once

#include "document/document.hpp"

#include <optional>

namespace evenfall::shape {

/// What caliper readings of the carved body add to the drawn half width and half height [m], as points of a
/// smooth curve (curve.hpp) along the body: at each reading half the difference between reading and drawing,
/// so that the body has the measured thickness there; zero at nose and tail unless a reading was taken there.
/// The middle of the height stays as drawn, because a caliper does not measure from the datum line. The
/// shape's own curves must pass drawing_check.hpp; readings in order of x and on the body.
[[nodiscard]] document::CurvePoints half_width_correction(const document::Shape& shape);
[[nodiscard]] document::CurvePoints half_height_correction(const document::Shape& shape);

/// x of a place between nose and tail where drawing and readings together leave no wood [m]; absent where
/// there is none. Sampled at 32 places between neighbouring stations.
[[nodiscard]] std::optional<double> without_wood(const document::Shape& shape);

} // namespace evenfall::shape
