#pragma once

#include "base/mass.hpp"
#include "ledger/line.hpp"

#include <array>
#include <optional>
#include <span>
#include <vector>

namespace evenfall::ledger {

/// The sum over some lines: the only way from lines to mass, buoyancy or centres.
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
    /// Centre of buoyancy B when fully submerged; the origin where nothing is displaced.
    [[nodiscard]] Vec3 b_m() const;
    [[nodiscard]] DisplacedMass displaced(double water_kg_m3) const { return {water_kg_m3 * displaced_m3}; }
    /// Weight in water: mass less displaced water, what a scale shows when the piece hangs in water.
    [[nodiscard]] MassInWater in_water(double water_kg_m3) const { return mass - displaced(water_kg_m3); }
};

/// The sum over the lines that `keep` takes.
template <class Keep>
[[nodiscard]] Sum sum_if(std::span<const Line> lines, const Keep& keep) {
    Sum sum;
    for (const Line& line : lines) {
        if (keep(line)) sum += line;
    }
    return sum;
}

/// All lines of a kind; of one item of it, where one is named.
[[nodiscard]] inline Sum sum_of(std::span<const Line> lines, Kind kind, std::optional<int> item = {}) {
    return sum_if(lines,
                  [&](const Line& line) { return line.kind == kind && (!item || line.item == *item); });
}

/// Sums of one ledger by segment and by stage (all lines of a stage and the stages before it).
struct StageSums {
    Sum total;
    std::array<Sum, stage_count> through; ///< through[s]: the piece after stage s
    std::vector<Sum> segments;            ///< finished lure, by segment
};
[[nodiscard]] StageSums stage_sums(std::span<const Line> lines, std::size_t segments);

/// Standard deviations of mass and of weight in water, of the lines up to a stage: first order, independent
/// causes, lines of the same cause and group fully correlated.
struct SumSigma {
    Mass mass;
    MassInWater in_water;
};
[[nodiscard]] std::array<SumSigma, stage_count> sigmas(std::span<const Line> lines, double water_kg_m3);

/// Mass moments of inertia about a point [kg·m²] of all lines up to a stage.
[[nodiscard]] Inertia inertia_about(std::span<const Line> lines, Stage stage, const Vec3& point_m);

} // namespace evenfall::ledger
