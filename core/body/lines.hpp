#pragma once

#include "body/section.hpp"

#include <span>

namespace evenfall::shape {

/// One cross-section of the uncut body with its slopes along x.
struct Station {
    double half_width_m = 0.0;  ///< a
    double half_height_m = 0.0; ///< b
    double centre_z_m = 0.0;    ///< height of the middle of the section's box
    double parameter = 0.0;     ///< parameter of the section family
    double half_width_slope = 0.0;
    double half_height_slope = 0.0;
    double centre_slope = 0.0;
    double parameter_slope = 0.0; ///< all slopes per metre of x
};

/// The lines of an uncut body: a section family whose box and parameter vary along x. A document's drawn
/// curves are one implementation (drawn_lines.hpp); tests add bodies with closed forms.
class Lines {
public:
    virtual ~Lines() = default;

    /// The cross-section at x, from nose to tail (beyond them, that of the nearer end). Slopes are infinite
    /// only at the ends.
    [[nodiscard]] virtual Station at(double x_m) const = 0;

    /// Where the lines are not smooth, ascending, both ends included (at least 2 values).
    [[nodiscard]] virtual std::span<const double> breakpoints_m() const = 0;

    [[nodiscard]] virtual const SectionFamily& family() const = 0;

    /// True where the section box grows like √x from its end (a round nose): integrals then use a soft end
    /// there.
    [[nodiscard]] virtual bool blunt_nose() const { return false; }
    [[nodiscard]] virtual bool blunt_tail() const { return false; }

    /// x of the nose and of the tail.
    [[nodiscard]] double nose_m() const { return breakpoints_m().front(); }
    [[nodiscard]] double tail_m() const { return breakpoints_m().back(); }

    [[nodiscard]] double length_m() const { return breakpoints_m().back() - breakpoints_m().front(); }
};

} // namespace evenfall::shape
