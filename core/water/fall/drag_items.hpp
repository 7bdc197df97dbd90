#pragma once

#include "base/vec3.hpp"
#include "body/lines.hpp"
#include "document/document.hpp"
#include "ledger/line.hpp"

#include <vector>

namespace evenfall::fall {

/// A small part outside the skin with drag: force = ½ρ·CdA·|V|·V against its own motion.
struct DragItem {
    Vec3 at_m;
    double cd_area_low_m2 = 0.0;
    double cd_area_m2 = 0.0;
    double cd_area_high_m2 = 0.0;
    int segment = 0;      ///< that it hangs on
    bool is_tail = false; ///< a soft tail, drawn or as a plate
};

/// A soft tail that was weighed whole, as a plate: so thick, and square.
inline constexpr double soft_plate_m = 2.5e-3;
[[nodiscard]] double soft_plate_side_m(double volume_m3);

/// Hooks, rings, tail: the parts of a ledger whose centre is outside the skin, up to a stage. Parts inside
/// (pins, eyes in their gap, hangers except their loop) are left out, as gaps count as body. Own estimate,
/// from the part's displaced volume and its material, all at 0.2 m/s in water of 15 °C:
///
///   wire   steel, brass and other hardware metals: round wire of 1.1 mm at 2 g, as the cube root of mass
///          (all hooks taken as one shape at different sizes); its whole length broadside, times 0.45 for
///          shanks that hang along the flow and in each other's wake. Range 0.25 to 0.65: randomly oriented
///          wire has 3π/16 = 0.59, a bundle of three shanks far less.
///   plate  soft plastics: a plate 2.5 mm thick, square, standing vertically like a tail, so that the flow
///          meets its edge (coefficient 1.2) and both flanks have friction (0.02). Range half to double. A
///          tail with a drawn shape counts as such a plate with its own areas, from above (the edge) and from
///          the side (the flank); its tenon is behind the wood and left out.
///   ball   everything else: a sphere of that volume. Range 0.7 to 1.6.
[[nodiscard]] std::vector<DragItem> drag_items(const shape::Lines& lines, const document::Document& document,
                                               const ledger::Ledger& ledger, Stage stage = Stage::rigged);

} // namespace evenfall::fall
