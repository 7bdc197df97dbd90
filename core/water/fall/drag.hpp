#pragma once

// Drag of a body that moves across its length: strip by strip, each as if its section were part of an
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

/// Reduction of the strips' drag by the ends: κ in drag = κ ∑ (strip drag). These are the values of a slender
/// body, of 6 to 9 widths length; own estimate. Low end: fixed cylinders of length 6 to 10 widths have 0.63
/// to 0.68 of an infinitely long one's drag (a table of finite cylinders after Wieselsberger 1922, from
/// memory). Freely falling cylinders have more, 0.8 to 0.9 (Isaacs and Thodos 1967, from memory).
struct EndEffect {
    double low = 0.67;
    double usual = 0.80;
    double high = 0.95;
    bool is_measured =
        true; ///< false: no published drag of such a shape is known here, low and high are wide
};
inline constexpr EndEffect end_effect{};

/// The end effect of a whole body, by three numbers of its shape: slenderness λ = π/4·length²/(area from
/// above), which is length over width of an ellipse; fullness, that area over length times the largest width;
/// flatness, area from the side over area from above, which is height over width.
///
///   thick (height at least 0.6 of width)   from 0.37 for a ball (drag of spheres, Clift, Grace and Weber
///   1978)
///                                          or 0.68 for a cylinder as long as thick (0.55 fixed,
///                                          Wieselsberger; 0.86 falling, Isaacs and Thodos) at λ = 1, in
///                                          between by fullness, to the slender value: from λ = 5 on, in
///                                          steps of 1 − 1/λ
///   thin                                   0.53 + 0.0105 λ: plates across the flow of 1 to 20 widths (White,
///                                          Fluid Mechanics, table of drag of three-dimensional bodies;
///                                          Hoerner 1965)
///   in between                             by the square of flatness
///
/// Low and high are those of the slender value up to λ = 5 and widen to −22 and +30 % at 3.5, as fixed and
/// falling short bodies differ. A short body that is pointed (fullness below 0.7), or one higher than long,
/// is covered by nothing published: −40 and +60 %.
///
///   strips   not empty
[[nodiscard]] EndEffect end_effect_of(const std::vector<Strip>& strips);

/// Range of a factor on all drag, by the Reynolds number on the mean height.
struct DragFactor {
    double low = 1.0;
    double high = 1.0;
};

/// What drag may be of that of the laws here: 1 for Re from 500 to 50 000, where they hold. Slower, up to
/// (500/Re)^0.4: at Re 100 a ball has 1.8 times, at 10 four times theirs, a long cylinder a fifth more
/// (Clift, Grace and Weber 1978; Wieselsberger). Faster, down to √(50 000/Re), as the wake narrows (a ball's
/// drag falls to a quarter from 2e5 to 4e5).
///
///   reynolds   ≥ 0; below 1 as 1
[[nodiscard]] DragFactor drag_factor_at(double reynolds);

/// Share of its box that a section fills, A/(4ab) → n of the superellipse with the same share. Valid from 0.5
/// (n = 1) to 1; below 0.5 gives 1. A square corner gives 200, beyond which nothing changes. Own fit of
/// A/(4ab) = Γ(1+1/n)²/Γ(1+2/n); n is within 0.2 %, which changes the drag coefficient by under 0.001.
[[nodiscard]] double equivalent_exponent(double filled_share);

/// The part of a strip's drag coefficient, on its width, that does not depend on speed.
///
///   1.1 t/c                     c ≥ t: elliptic section, below the drag crisis (Hoerner 1965, from memory)
///   1.98 − 0.88 (c/t)^1.25      c < t: own interpolation, same value and slope at c = t, 1.6 at c/t = 1/2
///                               (Hoerner, from memory) and 1.98 for a thin plate (the same)
///   + 0.35 (n−2)/(1+0.5 (n−2))  n > 2: squarer than an ellipse, own estimate, ±0.1; nothing for n ≤ 2. Below
///                               c/t = 1/2 in proportion to c/t: a thin plate has no corners to round
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
