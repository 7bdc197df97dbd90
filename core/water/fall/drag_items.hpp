#pragma once

#include "base/vec3.hpp"
#include "body/lines.hpp"
#include "document/document.hpp"
#include "ledger/line.hpp"

#include <vector>

namespace evenfall::fall {

/// Something small outside the skin that the water drags at: force = ½ρ·CdA·|V|·V against its own motion.
struct DragItem {
    Vec3 at_m;
    double cd_area_low_m2 = 0.0;
    double cd_area_m2 = 0.0;
    double cd_area_high_m2 = 0.0;
};

/// Hooks, rings, tail: the parts of a ledger whose centre lies outside the skin, up to a stage. What lies
/// inside (pins, eyes in their gap, hangers but for their loop) is left out, as gaps are counted as body. Own
/// estimate, from the volume of water that the part pushes aside and its material, all at 0.2 m/s in water of
/// 15 °C:
///
///   wire     steel, brass and other hardware metals: round wire of 1.1 mm at 2 g, as the cube root of mass
///   (all hooks taken for one
///            form at different sizes); its whole length broadside, times 0.45 for shanks that hang along the
///            flow and lie in each other's wake. Spread 0.25 to 0.65: a wire at random lies at 3π/16 = 0.59,
///            a bundle of three shanks far lower.
///   plate    soft plastics: a plate 2.5 mm thick, square, standing upright as a tail does, so that the flow
///   meets its edge
///            (coefficient 1.2) and rubs both flanks (0.02). Spread half to double. A tail by its shape
///            counts as such a plate with its own areas, seen from above (the edge) and from the side (the
///            flank); its tenon is in the wood's shade and left out.
///   ball     everything else: a ball of that volume. Spread 0.7 to 1.6.
[[nodiscard]] std::vector<DragItem> drag_items(const shape::Lines& lines, const document::Document& document,
                                               const ledger::Ledger& ledger, Stage stage = Stage::dressed);

} // namespace evenfall::fall
