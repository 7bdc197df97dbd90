#pragma once

// A section of the hull in its unit box as a polygon, ready to be cut by a straight waterline many times
// over.

#include "body/section.hpp"

#include <cstddef>
#include <vector>

namespace evenfall::afloat {

struct UnitPoint {
    double y = 0.0, z = 0.0;
};

/// ∫y dz, ½∫y² dz and −½∫z² dy along a part of the rim: by Green's theorem its contribution to a section's
/// area and moments.
struct RimSums {
    double area = 0.0, moment_y = 0.0, moment_z = 0.0;
};

/// A corner of the starboard half rim.
struct RimVertex {
    UnitPoint at;
    RimSums before; ///< along the rim from the belly centre to here
};

/// Where a V relief ends a section on both sides: only |Y| ≤ y is wood.
struct RimLimit {
    double y = 0.0;
    double z_low = 0.0, z_high = 0.0;        ///< the vertical edge at ±y
    std::size_t edge_low = 0, edge_high = 0; ///< edges in which the rim meets it, by their first vertex
    double area = 0.0, moment_z = 0.0;       ///< of what remains
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

/// A unit section as a polygon with the family's own closed-form area. A family of polygons keeps its corners
/// and is exact; a curved rim becomes 112 edges on either side.
///
/// Error of the area and moments under any line: 1e-4 of the whole, a hundredth of what carving is good to;
/// 3e-5 for exponents 1.5 to 4 (tests/unit/water/afloat/unit_rim_test.cpp). A curved family must have a break
/// of its rim where it is widest.
class UnitRim {
public:
    UnitRim(const shape::SectionFamily& family, double parameter);

    [[nodiscard]] double parameter() const { return parameter_; }
    [[nodiscard]] double area() const { return 2.0 * rim_.back().before.area; }
    [[nodiscard]] double moment_z() const { return 2.0 * rim_.back().before.moment_z; }
    [[nodiscard]] double back_z() const { return rim_.back().at.z; }
    [[nodiscard]] double widest_y() const { return rim_[widest_].at.y; }

    /// The limit |Y| ≤ y, 0 ≤ y < widest_y().
    [[nodiscard]] RimLimit limit(double y) const;

    /// Greatest p·Y + q·Z, p ≥ 0, over the section (within the limit).
    [[nodiscard]] double reach(double p, double q, const RimLimit* limit) const;

    /// The part under the line.
    [[nodiscard]] UnitCut cut(const UnitLine& line, const RimLimit* limit) const;

private:
    [[nodiscard]] double greatest(std::size_t from, std::size_t to, double p, double q) const;

    std::vector<RimVertex> rim_; ///< from the belly centre to the back centre
    std::size_t widest_ = 0;
    bool convex_ = false; ///< strictly convex, by its vertices
    double parameter_ = 0.0;
};

} // namespace evenfall::afloat
