#pragma once

#include "body/body.hpp"
#include "water/fall/drag.hpp"

#include <vector>

namespace evenfall::fall {

/// Hydrodynamic properties of the carved body: computed once from its lines, independent of water, mass and
/// speed.
struct HydroBody {
    /// Drag area of one strip: Cd·width·length = pressure + friction·√(μ/(ρ v)), v the speed across it.
    struct Slice {
        double x_m = 0.0;
        double pressure_m2 = 0.0;
        double friction_m3_2 = 0.0;
    };
    std::vector<Slice> slices;
    /// Sums over the slices of a drag area, of it times x, and times x²: all that a steady fall needs of
    /// them.
    struct Moments {
        double sum = 0.0;
        double x_m = 0.0;
        double xx_m2 = 0.0;
    };
    Moments pressure, friction;
    EndEffect ends; ///< on their sum

    // Along its length: drag area = along_pressure + along_friction·√(μ/(ρ u)), acting at this height.
    double along_pressure_m2 = 0.0;
    double along_friction_m3_2 = 0.0;
    double along_z_m = 0.0;

    // Added mass, over the density of water.
    double surge_m3 = 0.0;
    double heave_m3 = 0.0;   ///< ∫a dx, corrected for the ends
    double heave_x_m4 = 0.0; ///< ∫a x dx, with the same correction
    double heave_xx_m5 = 0.0; ///< ∫a x² dx about the origin, so that about the added mass's own centre it has
                              ///< the correction for pitch

    double mean_height_m = 0.0; ///< of the sections, for the Reynolds number
};

/// Strips and ends as in drag.hpp. Along the body: ½ρu²·(1.3·S·Cf + (0.12 + 0.24 (d/l)³)·A), Cf = 1.328/√Re
/// on the length (laminar), S the skin, A the largest section, d the diameter of a disc of that area: form
/// after Hoerner 1965 for streamlined bodies (from memory), the factors an own estimate, ±40 %, the cube so
/// that a ball has its own drag. A body with blunt flat ends has more.
///
/// Added mass: section by section (Lewis), reduced for flow round the ends as in the ellipsoid of the same
/// length and the same ∫(half width)² and ∫(half height)²; along the length Lamb's coefficient of that
/// ellipsoid. Exact for ellipsoids except for the slicing (1e-3).
[[nodiscard]] HydroBody hull(const shape::Lines& lines, double skin_m2, double skin_z_m);
[[nodiscard]] HydroBody hull(const shape::Body& body);

} // namespace evenfall::fall
