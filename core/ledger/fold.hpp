#pragma once

#include "base/mass.hpp"
#include "ledger/line.hpp"

#include <array>
#include <span>
#include <vector>

namespace evenfall::ledger {

/// The sum over some lines: the only way from lines to a mass, a buoyancy or a centre.
struct Sum {
    Mass mass;
    double displaced_m3 = 0.0;
    Vec3 mass_moment_kg_m;
    Vec3 displaced_moment_m4;

    Sum& operator+=(const Line& line);
    Sum& operator+=(const Sum& other);
    /// Mass and displacement each times a factor; the centres stay.
    [[nodiscard]] Sum scaled(double mass_factor, double displaced_factor) const;

    /// Centre of gravity G; the origin where there is no mass.
    [[nodiscard]] Vec3 g_m() const;
    /// Centre of buoyancy B of the whole envelope under water; the origin where nothing is displaced.
    [[nodiscard]] Vec3 b_m() const;
    [[nodiscard]] DisplacedMass displaced(double water_kg_m3) const { return {water_kg_m3 * displaced_m3}; }
    [[nodiscard]] MassInWater in_water(double water_kg_m3) const { return mass - displaced(water_kg_m3); }
};

/// Sums of one ledger by segment and by stage reached (every line of this stage and the stages before it).
struct Fold {
    Sum total;
    std::array<Sum, stage_count> through; ///< through[s]: the piece as it lies on the bench after stage s
    std::vector<Sum> segments;            ///< finished
};
[[nodiscard]] Fold fold(std::span<const Line> lines, std::size_t segments);

/// Standard deviation of the mass, and of the in-water mass, of the lines up to a stage: first order, causes
/// independent, lines of one cause and group in step.
struct Sigma {
    double mass_kg = 0.0;
    double in_water_kg = 0.0;
};
[[nodiscard]] std::array<Sigma, stage_count> sigmas(std::span<const Line> lines, double water_kg_m3);

/// Mass moments of inertia about a point [kg·m²] of all lines up to a stage.
[[nodiscard]] Inertia inertia_about(std::span<const Line> lines, Stage stage, const Vec3& point_m);

} // namespace evenfall::ledger
