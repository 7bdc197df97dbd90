#pragma once

// Drag of a body of slender sections that moves across its length: strip by strip, each as if its section
// were part of an endless bar, all together lessened by what flows around the ends. Everything here is for
// one direction of flow: a strip seen from the side simply has its width and chord exchanged.

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
    double fullness = 2.0; ///< n of the superellipse that fills its box as much; 2 = ellipse
};

/// What the ends leave of the strips' drag: κ in drag = κ ∑ (strip drag).
/// Own estimate. Low end: fixed cylinders of length 6 to 10 widths have 0.63 to 0.68 of an endless one's drag
/// (engineering data book, table of finite cylinders; traces to Wieselsberger). Freely falling cylinders have
/// more, 0.8 to 0.9 (Isaacs and Thodos 1967, from memory). The middle is for lures of 6 to 9 widths length.
struct EndEffect {
    double low = 0.67;
    double usual = 0.80;
    double high = 0.95;
};
inline constexpr EndEffect end_effect{};

/// Share of its box that a section fills, A/(4ab) → n of the superellipse that fills as much.
/// Valid 0.5 (n = 1) up to 1; below 0.5 answers 1. A square corner answers 200, past which nothing changes.
/// Own fit of A/(4ab) = Γ(1+1/n)²/Γ(1+2/n); n is within 0.2 %, which moves the drag coefficient by under
/// 0.001.
[[nodiscard]] double equivalent_fullness(double filled_share);

/// The part of a strip's drag coefficient, on its width, that does not depend on speed.
///
///   1.1 t/c                         c ≥ t: elliptic section, below the drag crisis (Hoerner 1965, from
///   memory) 1.98 − 0.88 (c/t)^1.25          c < t: own bridge, same value and slope at c = t, 1.6 at c/t =
///   1/2 (Hoerner, from
///                                   memory) and 1.98 for a thin plate (engineering data book)
///   + 0.35 (n−2)/(1+0.5 (n−2))      n > 2: squarer than an ellipse, own estimate, ±0.1; nothing for n ≤ 2
[[nodiscard]] double pressure_drag_coefficient(const Strip& strip);

/// The part that friction on both flanks adds, on the width: 2 Cf (1 + c/t), Cf = 1.328/√Re (Blasius), Re = ρ
/// v c/μ (form of Hoerner 1965 for elliptic sections, from memory). Proportional to √(μ/(ρ v)).
///
///   speed_m_s   > 0
[[nodiscard]] double friction_drag_coefficient(const Strip& strip, double speed_m_s,
                                               const materials::WaterProperties& water);

/// Drag coefficient of a strip on its width, ends not counted: pressure and friction.
///
///   speed_m_s   > 0
///   valid       Re = ρ v c/μ from 500 to 50 000. A circular section is about a quarter high at Re 1000 and
///   right from 10 000 up.
[[nodiscard]] double section_drag_coefficient(const Strip& strip, double speed_m_s,
                                              const materials::WaterProperties& water);

/// The body sliced for flow up or down past it: 48 strips, closer towards both ends (equal steps of the angle
/// φ in x = L(1 − cos φ)/2), so that round ends cost nothing. Strips without width or height are left out.
/// The gaps of joints are counted as body: they are narrow against its width and lie in its wake.
[[nodiscard]] std::vector<Strip> strips(const shape::Lines& lines);

} // namespace evenfall::fall
