#pragma once

#include "body/lines.hpp"
#include "body/superellipse.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace evenfall::support {

/// Lines of bodies with closed forms: half width and half height along x by formula, elliptic sections.
class RoundLines : public shape::Lines {
public:
    [[nodiscard]] std::span<const double> breakpoints_m() const override { return breakpoints_; }
    [[nodiscard]] const shape::SectionFamily& family() const override { return ellipse_; }

protected:
    RoundLines(double length_m, int intervals) {
        for (int k = 0; k <= intervals; ++k)
            breakpoints_.push_back(length_m * k / intervals);
    }

private:
    std::vector<double> breakpoints_;
    shape::Superellipse ellipse_{2.0, 2.0};
};

/// Half-axes: length/2, half_width, half_height, centre at mid length and z = centre_z.
class Ellipsoid final : public RoundLines {
public:
    Ellipsoid(double length_m, double half_width_m, double half_height_m, int intervals,
              double centre_z_m = 0.0)
        : RoundLines(length_m, intervals), half_length_(0.5 * length_m), half_width_(half_width_m),
          half_height_(half_height_m), centre_z_(centre_z_m) {}

    [[nodiscard]] shape::Station at(double x_m) const override {
        const double u = std::clamp(x_m / half_length_ - 1.0, -1.0, 1.0);
        const double r = std::sqrt(1.0 - u * u);
        const double slope = -u / r / half_length_;
        return {half_width_ * r,     half_height_ * r,     centre_z_, 2.0,
                half_width_ * slope, half_height_ * slope, 0.0,       0.0};
    }
    [[nodiscard]] bool blunt_nose() const override { return true; }
    [[nodiscard]] bool blunt_tail() const override { return true; }

private:
    double half_length_;
    double half_width_;
    double half_height_;
    double centre_z_;
};

/// Elliptic cylinder of constant section.
class Cylinder final : public RoundLines {
public:
    Cylinder(double length_m, double half_width_m, double half_height_m)
        : RoundLines(length_m, 1), half_width_(half_width_m), half_height_(half_height_m) {}

    [[nodiscard]] shape::Station at(double) const override {
        return {half_width_, half_height_, 0.0, 2.0, 0.0, 0.0, 0.0, 0.0};
    }

private:
    double half_width_;
    double half_height_;
};

/// Nose at x = 0, half width and height growing as √x to a flat end.
class Paraboloid final : public RoundLines {
public:
    Paraboloid(double length_m, double half_width_m, double half_height_m, int intervals)
        : RoundLines(length_m, intervals), half_width_(half_width_m), half_height_(half_height_m) {}

    [[nodiscard]] shape::Station at(double x_m) const override {
        const double r = std::sqrt(std::max(0.0, x_m) / length_m());
        const double slope = 0.5 / (r * length_m());
        return {half_width_ * r,     half_height_ * r,     0.0, 2.0,
                half_width_ * slope, half_height_ * slope, 0.0, 0.0};
    }
    [[nodiscard]] bool blunt_nose() const override { return true; }

private:
    double half_width_;
    double half_height_;
};

} // namespace evenfall::support
