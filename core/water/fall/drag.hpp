#pragma once

// Drag of a slender body that moves across its length: strip by strip, each as if its section were part of an
// infinitely long bar, in total reduced by the flow round the ends. Everything here is for one direction of
// flow: for flow from the side, exchange width and chord.

#include "body/lines.hpp"
#include "materials/water_properties.hpp"

#include <vector>

namespace evenfall::fall {

/// A slice of the body across its length, as the flow meets it.
struct Strip {
    double x_m = 0.0;      ///< its middle
    double length_m = 0.0; ///< along x
    double width_m = 0.0;  ///< t: across the flow; > 0
    double chord_m = 0.0;  ///< c: along the flow; > 0
    double exponent = 2.0; ///< n of the superellipse with the same filled share; 2 = ellipse
};

/// Reduction of the strips' drag by the ends: κ in drag = κ ∑ (strip drag). Own estimate. Low end: fixed
/// cylinders of length 6 to 10 widths have 0.63 to 0.68 of an infinitely long one's drag (engineering data
/// book, table of finite cylinders; traces to Wieselsberger). Freely falling cylinders have more, 0.8 to 0.9
/// (Isaacs and Thodos 1967, from memory). The middle is for lures of 6 to 9 widths length.
struct EndEffect {
    double low = 0.67;
    double usual = 0.80;
    double high = 0.95;
};
inline constexpr EndEffect end_effect{};

/// Share of its box that a section fills, A/(4ab) → n of the superellipse with the same share. Valid from 0.5
/// (n = 1) to 1; below 0.5 gives 1. A square corner gives 200, beyond which nothing changes. Own fit of
/// A/(4ab) = Γ(1+1/n)²/Γ(1+2/n); n is within 0.2 %, which changes the drag coefficient by under 0.001.
[[nodiscard]] double equivalent_exponent(double filled_share);

/// The part of a strip's drag coefficient, on its width, that does not depend on speed.
///
///   1.1 t/c                     c ≥ t: elliptic section, below the drag crisis (Hoerner 1965, from memory)
///   1.98 − 0.88 (c/t)^1.25      c < t: own interpolation, same value and slope at c = t, 1.6 at c/t = 1/2
///                               (Hoerner, from memory) and 1.98 for a thin plate (engineering data book)
///   + 0.35 (n−2)/(1+0.5 (n−2))  n > 2: squarer than an ellipse, own estimate, ±0.1; nothing for n ≤ 2
[[nodiscard]] double pressure_drag_coefficient(const Strip& strip);

/// The part from friction on both flanks, on the width: 2 Cf (1 + c/t), Cf = 1.328/√Re (Blasius), Re = ρ v
/// c/μ (form of Hoerner 1965 for elliptic sections, from memory). Proportional to √(μ/(ρ v)).
///
///   speed_m_s   > 0
[[nodiscard]] double friction_drag_coefficient(const Strip& strip, double speed_m_s,
                                               const materials::WaterProperties& water);

/// Drag coefficient of a strip on its width, without the end effect: pressure and friction.
///
///   speed_m_s   > 0
///   valid       Re = ρ v c/μ from 500 to 50 000. A circular section is about a quarter too high at Re 1000
///               and right from 10 000 up.
[[nodiscard]] double section_drag_coefficient(const Strip& strip, double speed_m_s,
                                              const materials::WaterProperties& water);

/// Slices the body for flow up or down past it: 48 strips, closer towards both ends (equal steps of the angle
/// φ in x = L(1 − cos φ)/2), so that round ends lose no accuracy. Strips without width or height are left
/// out. The gaps of joints count as body: they are narrow and lie in its wake.
[[nodiscard]] std::vector<Strip> strips(const shape::Lines& lines);

} // namespace evenfall::fall
