#pragma once

#include <array>
#include <optional>
#include <span>
#include <vector>

namespace evenfall::lead {

/// One variable of the quadratic programme: 0 ≤ h ≤ upper, cost ½·bend·h² + slope·h with bend > 0, and its
/// contribution to the two sums.
struct Column {
    double upper = 0.0;
    double bend = 1.0;
    double slope = 0.0;
    std::array<double, 2> row{}; ///< change of each of the two sums per unit of h
};

/// The unique h that minimises the cost with Σ row·h = target in both rows; absent where no h within the
/// limits reaches it. Two equalities and a separable, strictly convex cost give a concave dual in two
/// multipliers (Bertsekas, Nonlinear Programming, duality for separable problems; from memory): one is solved
/// exactly, the other by bisection down to the last bit. Any number of columns. Rows should be scaled to
/// similar size.
[[nodiscard]] std::optional<std::vector<double>> minimise(std::span<const Column> columns,
                                                          const std::array<double, 2>& target);

/// True where the target is within reach (the zonotope Σ row·h), to within `slack` of its edge.
[[nodiscard]] bool reaches(std::span<const Column> columns, const std::array<double, 2>& target,
                           double slack);

/// The h with Σ row[0]·h = target that makes Σ row[1]·h smallest (want_most = false) or greatest; for a
/// target out of reach, the nearest h. Fills in order of row[1]/row[0], the exact solution of the fractional
/// knapsack; a column that reduces the first sum is emptied in that order instead.
[[nodiscard]] std::vector<double> extreme(std::span<const Column> columns, double target, bool want_most);

} // namespace evenfall::lead
