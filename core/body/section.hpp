#pragma once

#include <cstddef>
#include <span>

namespace evenfall::shape {

/// Integrals of a section in its unit box (a = b = 1, |Y| ≤ 1, |Z| ≤ 1). The real values scale with powers of
/// a and b.
struct UnitMoments {
    double area = 0.0; ///< ∬dA     × a·b
    double z = 0.0;    ///< ∬Z dA   × a·b²
    double yy = 0.0;   ///< ∬Y² dA  × a³·b
    double zz = 0.0;   ///< ∬Z² dA  × a·b³
};

/// A point on the rim of a unit section, starboard half, and its derivatives. Not initialised, so that tables
/// of it can be filled in place.
struct RimPoint {
    double y, z;
    double y_tau, z_tau;             ///< ∂/∂τ
    double y_parameter, z_parameter; ///< ∂/∂parameter at this τ
};

/// A family of sections, symmetric about the middle plane, in the unit box; one parameter ("parameter"). The
/// starboard half widens from belly centre to its widest (Y = 1) and narrows to back centre, once each.
class SectionFamily {
public:
    virtual ~SectionFamily() = default;

    [[nodiscard]] virtual UnitMoments moments(double parameter) const = 0;

    /// Rim point at τ in [−1, 1], from belly centre (0, −1) to back centre (0, 1) along the starboard side.
    [[nodiscard]] virtual RimPoint rim(double parameter, double tau) const = 0;

    /// Many rim points at once; a family may compute them faster together. `points` is as long as `tau`.
    virtual void rims(double parameter, std::span<const double> tau, std::span<RimPoint> points) const {
        for (std::size_t k = 0; k < tau.size(); ++k)
            points[k] = rim(parameter, tau[k]);
    }

    /// Values of τ in (−1, 1), ascending, between which the rim is smooth for every parameter (ends left
    /// out).
    [[nodiscard]] virtual std::span<const double> rim_breaks() const = 0;

    /// True where the rim is straight between its breaks: its integrals need fewer points.
    [[nodiscard]] virtual bool is_polygon() const { return false; }

    /// Height of the back (upper) and belly (lower) at Y in [0, 1]: Z values, upper ≥ lower.
    [[nodiscard]] virtual double upper_z(double parameter, double y) const = 0;
    [[nodiscard]] virtual double lower_z(double parameter, double y) const = 0;

    /// Half width of the section at Z in [−1, 1]; result in [0, 1].
    [[nodiscard]] virtual double half_width(double parameter, double z) const = 0;
};

} // namespace evenfall::shape
