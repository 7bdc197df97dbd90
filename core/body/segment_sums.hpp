#pragma once

// The integrals that make a segment. Full sections between two planes come first; then the wood that a V
// relief removes is subtracted (relief.hpp).

#include "base/vec3.hpp"
#include "body/rim_table.hpp"

namespace evenfall::shape {

/// Integrals over wood, about the origin (x from the nose, z from the datum line). Those odd in y are zero.
struct WoodSums {
    double volume = 0.0;
    double x = 0.0, z = 0.0;                       ///< ∫x dV, ∫z dV
    double xx = 0.0, yy = 0.0, zz = 0.0, xz = 0.0; ///< ∫x² dV …

    WoodSums& operator-=(const WoodSums& o);
};

/// Second moments of the volume about its centroid c [m⁵], from sums about the origin.
[[nodiscard]] Inertia own_inertia(const WoodSums& w, const Vec3& c);

/// Integrals over skin.
struct SkinSums {
    double area = 0.0;
    double x = 0.0, z = 0.0; ///< ∫x dA, ∫z dA
    /// Twice the skin's part of ∬H dA. With φ the direction of the outward normal seen along the body and h
    /// the tangent of its slope along the body, 2∬H dA = ∬(1 + h·atan h) dφ dx + Σ over plane ends of ∮ slope
    /// angle ds. The last term cancels the slope's part in the edge between skin and plane end, so an end
    /// counts as if the skin met it at a right angle: ½·π/2 per metre of edge. (Own derivation from the
    /// support function of the sections; tested against cylinder, sphere, spheroid.)
    double bend = 0.0;

    SkinSums& operator+=(const SkinSums& o);
    SkinSums& operator-=(const SkinSums& o);
};

/// Full sections between two planes of x.
[[nodiscard]] WoodSums wood_between(const Lines& lines, double from_m, double to_m);
[[nodiscard]] SkinSums skin_between(const Lines& lines, RimTable& rim, double from_m, double to_m);

/// One plane section.
struct SectionDisc {
    double area_m2 = 0.0;
    double centroid_z_m = 0.0;
    double rim_m = 0.0;
};
[[nodiscard]] SectionDisc section_disc(const Lines& lines, RimTable& rim, double x_m);

} // namespace evenfall::shape
