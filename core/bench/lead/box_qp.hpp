#pragma once

#include <array>
#include <optional>
#include <span>
#include <vector>

namespace evenfall::lead {

/// One variable of the programme: lower ≤ h ≤ upper, cost ½·bend·h² + slope·h with bend > 0, and its two
/// columns.
struct LeadVariable {
    double upper = 0.0;
    double bend = 1.0;
    double slope = 0.0;
    std::array<double, 2> row{}; ///< change of each of the two sums per unit of h
    double lower = 0.0;
};

/// The unique h that minimises the cost with Σ row·h = target in both rows, or nothing where the box cannot
/// reach it. Two equalities and a separable, strictly convex cost leave a concave dual in two multipliers
/// (Bertsekas, Nonlinear Programming, duality for separable problems; from memory): one is met exactly, the
/// other is a root. Any number of columns. Rows should be scaled to like size.
[[nodiscard]] std::optional<std::vector<double>> minimise(std::span<const LeadVariable> columns,
                                                          const std::array<double, 2>& target);

/// How far the target lies outside what the columns reach (the zonotope Σ row·h), by the directions normal to
/// its sides and along them: 0 on its edge, negative within. Beyond a corner it is less than the distance.
[[nodiscard]] double outside_by(std::span<const LeadVariable> columns, const std::array<double, 2>& target);

/// True where the target is within reach (the zonotope Σ row·h), to within `slack` of its edge.
[[nodiscard]] bool reaches(std::span<const LeadVariable> columns, const std::array<double, 2>& target,
                           double slack);

/// What minimise() gives; where the box cannot reach the target, the h that comes nearest to it: least
/// squares of what is missing of the two sums, to some 1e-8 of the target.
[[nodiscard]] std::vector<double> nearest(std::span<const LeadVariable> columns,
                                          const std::array<double, 2>& target);

} // namespace evenfall::lead
