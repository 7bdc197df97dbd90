#pragma once

#include "base/vec3.hpp"
#include "water/afloat/attitude.hpp"

namespace evenfall::afloat {

/// The part under the plane up·r = depth, and the waterplane.
///
/// Volume and moment are the gradient of Φ = ∫(depth − up·r) dV over the wet part: ∂Φ/∂depth = volume, ∂Φ/∂up
/// = −moment; the waterplane's integrals are its second derivatives. Flotation follows from these.
struct Immersion {
    double volume_m3 = 0.0;
    Vec3 moment_m4; ///< ∫r dV

    LevelAxes level;        ///< directions X and Y of the integrals below
    double area_m2 = 0.0;   ///< of the waterplane
    double along_m3 = 0.0;  ///< ∫X dA, X = r·along
    double across_m3 = 0.0; ///< ∫Y dA, Y = r·across
    double along_m4 = 0.0;  ///< ∫X² dA
    double across_m4 = 0.0; ///< ∫Y² dA
    double mixed_m4 = 0.0;  ///< ∫XY dA

    /// Centre of buoyancy; the origin where nothing is wet.
    [[nodiscard]] Vec3 b_m() const { return volume_m3 > 0.0 ? moment_m4 / volume_m3 : Vec3{}; }

    /// Second moments of the waterplane about its own centroid [m⁴]: I in BM = I/V.
    [[nodiscard]] double own_across_m4() const {
        return area_m2 > 0.0 ? across_m4 - across_m3 * across_m3 / area_m2 : 0.0;
    }
    [[nodiscard]] double own_along_m4() const {
        return area_m2 > 0.0 ? along_m4 - along_m3 * along_m3 / area_m2 : 0.0;
    }
    [[nodiscard]] double own_mixed_m4() const {
        return area_m2 > 0.0 ? mixed_m4 - along_m3 * across_m3 / area_m2 : 0.0;
    }
};

} // namespace evenfall::afloat
