#pragma once

#include "body/lines.hpp"

#include <array>

namespace evenfall::shape {

/// Rim points of one unit section at Gauss points between the rim's breaks, with their weights in τ. Computed
/// again only when the parameter changes: once for a body of constant parameter.
class RimTable {
public:
    explicit RimTable(const SectionFamily& family);

    /// Computes the points for this parameter.
    void set_parameter(double parameter);

    [[nodiscard]] std::size_t size() const { return size_; }
    [[nodiscard]] const RimPoint& point(std::size_t k) const { return point_[k]; }
    [[nodiscard]] double weight(std::size_t k) const { return weight_[k]; }
    static constexpr std::size_t most_points = 128;

private:
    const SectionFamily& family_;
    std::size_t size_ = 0;
    double parameter_ = 0.0;
    bool filled_ = false;
    std::array<double, most_points> tau_;
    std::array<double, most_points> weight_;
    std::array<RimPoint, most_points> point_;
};

/// A point of the skin, starboard side, and its derivatives along the body and around it.
struct SkinPoint {
    double y, z;
    double y_x, z_x;
    double y_tau, z_tau;
};

inline SkinPoint skin_point(const Station& s, const RimPoint& r) {
    return {s.half_width_m * r.y,
            s.centre_z_m + s.half_height_m * r.z,
            s.half_width_slope * r.y + s.half_width_m * r.y_parameter * s.parameter_slope,
            s.centre_slope + s.half_height_slope * r.z + s.half_height_m * r.z_parameter * s.parameter_slope,
            s.half_width_m * r.y_tau,
            s.half_height_m * r.z_tau};
}

/// Follows the direction of a section's rim from belly centre to back centre and returns each turn. The
/// outward normal turns by π in total; corners of a polygon count like any other turn.
class RimTurn {
public:
    /// Angle from the previous direction (first: straight to starboard) to (y, z), a unit vector.
    double to(double y, double z);

private:
    double y_ = 1.0;
    double z_ = 0.0;
};

/// h·atan(h): extra curvature of a skin with slope h along the body, compared with a cylinder
/// (segment_sums.hpp).
[[nodiscard]] double lean_term(double h);

} // namespace evenfall::shape
