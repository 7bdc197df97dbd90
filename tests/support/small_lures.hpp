#pragma once

#include "document/document.hpp"

namespace evenfall::support {

/// A square-edged block 120 × 20 × 30 mm (x × y × z), centred at z = 0: every volume and centroid can be
/// computed by hand. One piece, bare, wood of 500 kg/m³, fresh water of 20 °C.
document::Document block();

/// A fish-shaped lure of 150 mm in three segments with relieved joints, five ballast holes from the belly,
/// hardware and coats. Invented. Targets: weight in water 1 g, level.
document::Document fish();

/// The same in four segments of similar length, two holes in each.
document::Document four_piece();

/// A capped ballast hole from the belly.
document::Hole belly_hole(double x_mm, double diameter_mm, double max_depth_mm);

} // namespace evenfall::support
