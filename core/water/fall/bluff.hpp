#pragma once

// Drag of sphere and wire, which model hooks, rings and eyes.

namespace evenfall::fall {

/// Drag coefficient of a smooth sphere, on its frontal area.
///
///   reynolds   ρ v d/μ, above 0 and below 2e5
///   source     Brown and Lawler 2003, J. Environ. Eng. 129(3), 222–231 (from memory); other fits are within
///              8 %
[[nodiscard]] double sphere_drag_coefficient(double reynolds);

/// Drag coefficient of an infinitely long round wire across the flow, on diameter times length.
///
///   reynolds   ρ v d/μ, 1e-4 to 2e5
///   source     Sucker and Brauer 1975 (from memory)
[[nodiscard]] double wire_drag_coefficient(double reynolds);

} // namespace evenfall::fall
