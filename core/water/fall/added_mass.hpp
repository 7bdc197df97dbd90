#pragma once

// Added mass: water that a body accelerates with it, and that turns it broadside when it moves obliquely.
// Given as volumes of water; times its density they are kilograms.

namespace evenfall::fall {

/// Added mass of an ellipsoid in unbounded ideal fluid, as shares of the displaced fluid.
struct EllipsoidShares {
    double surge = 0.0;    ///< along its length
    double heave = 0.0;    ///< along its height
    double pitch_m2 = 0.0; ///< pitching: added moment of inertia over displaced mass
};

/// Exact for half axes > 0, in any order of size; 1e-12 where length and height differ by more than a
/// millionth. A sphere, and any ellipsoid that is round in its middle plane, gives 0 for pitch.
///
/// Source: Lamb, Hydrodynamics, Art. 114 and 115 (from memory; checked against his printed table by test),
/// with his integrals α₀ and γ₀ as Carlson's R_D.
[[nodiscard]] EllipsoidShares ellipsoid_shares(double half_length_m, double half_width_m,
                                               double half_height_m);

/// Added mass of a section that moves along its height, over ρπ·(half width)²: 1 for every ellipse, more for
/// squarer sections.
///
///   width_per_height   > 0
///   filled_share       A/(4ab), 0.5 to 1
///
/// Lewis 1929, two-parameter sections (conformal map z + a₁/z + a₃/z³, formulas from memory): exact for
/// those, 5 % low on a square.
[[nodiscard]] double section_added_mass(double width_per_height, double filled_share);

} // namespace evenfall::fall
