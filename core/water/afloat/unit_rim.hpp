#pragma once

// A section of the hull in its unit box, prepared for many cuts by a straight waterline.

#include "body/section.hpp"

#include <array>
#include <cstddef>
#include <vector>

namespace evenfall::afloat {

/// ∫y dz, ½∫y² dz and −½∫z² dy along a part of the rim: by Green's theorem its contribution to a section's
/// area and moments.
struct RimSums {
    double area = 0.0, moment_y = 0.0, moment_z = 0.0;
};

/// One arc of the starboard half rim, a parabola: (y, z) + t·(y1, z1) + t²·(y2, z2), 0 ≤ t ≤ 1.
struct RimArc {
    double y = 0.0, z = 0.0;
    double y1 = 0.0, z1 = 0.0;
    double y2 = 0.0, z2 = 0.0;
    RimSums before;               ///< of all arcs before it, from the belly centre
    std::array<double, 4> area{}; ///< its own sums from 0 to t: polynomials in t without constant term
    std::array<double, 6> moment_y{}, moment_z{};

    [[nodiscard]] RimSums until(double t) const;
};

/// Where a V relief ends a section on both sides: only |Y| ≤ y is wood.
struct RimLimit {
    double y = 0.0;
    double z_low = 0.0, z_high = 0.0;      ///< the vertical edge at ±y
    std::size_t arc_low = 0, arc_high = 0; ///< arcs in which the rim meets that edge
    double t_low = 0.0, t_high = 1.0;
    double area = 0.0, moment_z = 0.0; ///< of what remains
};

/// The wet part of a unit section under the line p·Y + q·Z = c, and the moments of its waterline.
struct UnitCut {
    double area = 0.0, moment_y = 0.0, moment_z = 0.0;
    double chord[3]{}; ///< ∫ρᵏ dρ, k = 0, 1, 2, along the waterline inside the section; ρ = ruler_y·Y +
                       ///< ruler_z·Z
    bool crossed = false;
};

/// The line of a cut, and the coordinate ρ along it (rising towards starboard on an upright section).
struct UnitLine {
    double p = 0.0, q = 0.0, c = 0.0;
    double ruler_y = 0.0, ruler_z = 0.0;
};

/// A unit section as a chain of parabolic arcs that share the rim's tangents at their ends, scaled slightly
/// so that its area is the family's closed form. Polygon sections keep their corners and are exact.
///
/// Error of the area and moments under any line, of the whole: 3e-5 for exponents 1.5 to 4, 4e-4 from 1.2 to
/// 12 (unit_rim_test.cpp). A curved family must have a break of its rim at its widest point.
class UnitRim {
public:
    UnitRim(const shape::SectionFamily& family, double fullness);

    [[nodiscard]] double fullness() const { return fullness_; }
    [[nodiscard]] double area() const { return 2.0 * arcs_.back().before.area; }
    [[nodiscard]] double moment_z() const { return 2.0 * arcs_.back().before.moment_z; }
    [[nodiscard]] double back_z() const { return arcs_.back().z; }
    [[nodiscard]] double widest_y() const { return arcs_[widest_].y; }

    /// The limit |Y| ≤ y, 0 ≤ y < widest_y().
    [[nodiscard]] RimLimit limit(double y) const;

    /// Greatest p·Y + q·Z, p ≥ 0, over the section (within the limit).
    [[nodiscard]] double reach(double p, double q, const RimLimit* limit) const;

    /// The part under the line.
    [[nodiscard]] UnitCut cut(const UnitLine& line, const RimLimit* limit) const;

private:
    [[nodiscard]] double reach_of_arcs(std::size_t from, std::size_t to, double p, double q) const;

    std::vector<RimArc> arcs_; ///< the last one is the back centre alone
    std::size_t widest_ = 0;
    bool convex_ = false; ///< strictly convex, by its vertices
    double fullness_ = 0.0;
};

} // namespace evenfall::afloat
