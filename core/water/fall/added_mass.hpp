#pragma once

// Water that a body carries along when its speed changes, and that turns it across its path when it moves
// aslant. All as volumes of water: times its density they are kilograms.

namespace evenfall::fall {

/// Added mass of an ellipsoid in endless ideal fluid, as shares of the fluid it displaces.
struct EllipsoidShares {
    double surge = 0.0;    ///< along its length
    double heave = 0.0;    ///< along its height
    double pitch_m2 = 0.0; ///< turning nose up and down: added moment of inertia over displaced mass
};

/// Exact for half axes > 0, in any order of size; 1e-12 where length and height differ by more than a
/// millionth. A sphere, and any ellipsoid round in its middle plane, answers 0 for pitch. Source   Lamb,
/// Hydrodynamics, Art. 114 and 115 (from memory; held against his printed table by test), with his integrals
///          α₀ and γ₀ as Carlson's R_D.
[[nodiscard]] EllipsoidShares ellipsoid_shares(double half_length_m, double half_width_m,
                                               double half_height_m);

/// Added mass of a section that moves along its height, over ρπ·(half width)²: 1 for every ellipse, more for
/// squarer ones.
///
///   width_per_height   > 0
///   filled_share       A/(4ab), 0.5 to 1
///
/// Lewis 1929, two-parameter sections (conformal map z + a₁/z + a₃/z³, formulas from memory): exact for
/// those, 5 % low on a square.
[[nodiscard]] double section_added_mass(double width_per_height, double filled_share);

} // namespace evenfall::fall
