#pragma once

#include "body/lines.hpp"
#include "body/superellipse.hpp"

#include <array>
#include <cmath>
#include <span>

namespace evenfall::support {

/// A straight bar of constant superelliptic section.
class BarLines final : public shape::Lines {
public:
    BarLines(double length_m, double half_width_m, double half_height_m, double exponent)
        : ends_{0.0, length_m}, station_{half_width_m, half_height_m, 0.0, exponent, 0.0, 0.0, 0.0, 0.0},
          family_(exponent, exponent) {}

    [[nodiscard]] shape::Station at(double) const override { return station_; }
    [[nodiscard]] std::span<const double> breakpoints_m() const override { return ends_; }
    [[nodiscard]] const shape::SectionFamily& family() const override { return family_; }

private:
    std::array<double, 2> ends_;
    shape::Station station_;
    shape::Superellipse family_;
};

/// An ellipsoid from nose to tail.
class EllipsoidLines final : public shape::Lines {
public:
    EllipsoidLines(double length_m, double half_width_m, double half_height_m)
        : ends_{0.0, length_m}, half_width_m_(half_width_m), half_height_m_(half_height_m) {}

    [[nodiscard]] shape::Station at(double x_m) const override {
        const double s = 2.0 * x_m / ends_[1] - 1.0;
        const double round = std::sqrt(1.0 - s * s);
        const double slope = -s / round * 2.0 / ends_[1];
        return {half_width_m_ * round, half_height_m_ * round, 0.0, 2.0,
                half_width_m_ * slope, half_height_m_ * slope, 0.0, 0.0};
    }
    [[nodiscard]] std::span<const double> breakpoints_m() const override { return ends_; }
    [[nodiscard]] const shape::SectionFamily& family() const override { return family_; }

private:
    std::array<double, 2> ends_;
    double half_width_m_;
    double half_height_m_;
    shape::Superellipse family_{2.0, 2.0};
};

} // namespace evenfall::support
