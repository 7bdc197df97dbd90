#pragma once

// Bodies with closed forms, afloat.

#include "base/quadrature.hpp"
#include "body/polygon.hpp"
#include "body/superellipse.hpp"
#include "ledger/fold.hpp"
#include "support/drawn_shapes.hpp"
#include "water/afloat/righting.hpp"

#include <array>
#include <cmath>
#include <memory>
#include <utility>
#include <vector>

namespace evenfall::support {

/// A straight bar of one section of a given family, from nose to tail.
template <class Family>
class Bar final : public shape::Lines {
public:
    template <class... FamilyArguments>
    Bar(double length_m, double half_width_m, double half_height_m, double parameter,
        FamilyArguments&&... arguments)
        : ends_{0.0, length_m}, station_{half_width_m, half_height_m, 0.0, parameter, 0.0, 0.0, 0.0, 0.0},
          family_(std::forward<FamilyArguments>(arguments)...) {}

    [[nodiscard]] shape::Station at(double) const override { return station_; }
    [[nodiscard]] std::span<const double> breakpoints_m() const override { return ends_; }
    [[nodiscard]] const shape::SectionFamily& family() const override { return family_; }

private:
    std::array<double, 2> ends_;
    shape::Station station_;
    Family family_;
};

inline std::shared_ptr<const shape::Lines> box_lines(double length_m, double breadth_m, double height_m) {
    return std::make_shared<Bar<shape::Chamfered>>(length_m, 0.5 * breadth_m, 0.5 * height_m, 0.0);
}

/// A square log turned 45°: a diamond of the given side.
inline std::shared_ptr<const shape::Lines> corner_down_lines(double length_m, double side_m) {
    const double half = side_m / std::sqrt(2.0);
    return std::make_shared<Bar<shape::Chamfered>>(length_m, half, half, 1.0);
}

inline std::shared_ptr<const shape::Lines> elliptic_bar_lines(double length_m, double half_width_m,
                                                              double half_height_m) {
    return std::make_shared<Bar<shape::Superellipse>>(length_m, half_width_m, half_height_m, 2.0, 2.0, 2.0);
}

/// Semi-axes a along, b athwart, c upright.
class EllipsoidForm final : public shape::Lines {
public:
    EllipsoidForm(double a_m, double b_m, double c_m) : ends_{0.0, 2.0 * a_m}, a_(a_m), b_(b_m), c_(c_m) {}

    [[nodiscard]] shape::Station at(double x_m) const override {
        const double s = x_m / a_ - 1.0;
        const double round = std::sqrt(std::max(0.0, 1.0 - s * s));
        const double slope = round > 0.0 ? -s / round / a_ : 0.0;
        return {b_ * round, c_ * round, 0.0, 2.0, b_ * slope, c_ * slope, 0.0, 0.0};
    }
    [[nodiscard]] std::span<const double> breakpoints_m() const override { return ends_; }
    [[nodiscard]] const shape::SectionFamily& family() const override { return family_; }
    [[nodiscard]] bool blunt_nose() const override { return true; }
    [[nodiscard]] bool blunt_tail() const override { return true; }

private:
    std::array<double, 2> ends_;
    double a_, b_, c_;
    shape::Superellipse family_{2.0, 2.0};
};

/// Section of a Wigley hull under water, half width 1 − (z/T)², with upright sides for half a draught above
/// it. In the unit box z/T runs from −1 to ½.
class WigleySection final : public shape::SectionFamily {
public:
    [[nodiscard]] shape::UnitMoments moments(double) const override {
        shape::UnitMoments m;
        const auto add = [&m](double from, double to, auto half_width) {
            for (std::size_t k = 0; k < 5; ++k) {
                const double s = from + (to - from) * gauss_rule<5>.node[k];
                const double w = 2.0 * (to - from) * gauss_rule<5>.weight[k] / 0.75;
                const double y = half_width(s);
                m.area += w * y;
                m.z += w * y * box(s);
                m.zz += w * y * box(s) * box(s);
                m.yy += w * y * y * y / 3.0;
            }
        };
        add(-1.0, 0.0, [](double s) { return 1.0 - s * s; });
        add(0.0, 0.5, [](double) { return 1.0; });
        return m;
    }
    [[nodiscard]] shape::RimPoint rim(double, double tau) const override {
        if (tau <= -third) {
            const double s = 1.5 * (tau + third);
            return {1.0 - s * s, box(s), -3.0 * s, 1.5 / 0.75, 0.0, 0.0};
        }
        if (tau <= third) return {1.0, box(0.75 * (tau + third)), 0.0, 1.0, 0.0, 0.0};
        return {1.5 * (1.0 - tau), 1.0, -1.5, 0.0, 0.0, 0.0};
    }
    [[nodiscard]] std::span<const double> rim_breaks() const override { return breaks_; }
    [[nodiscard]] double upper_z(double, double) const override { return 1.0; }
    [[nodiscard]] double lower_z(double, double y) const override { return box(-std::sqrt(1.0 - y)); }
    [[nodiscard]] double half_width(double, double z) const override {
        const double s = 0.75 * z - 0.25;
        return s >= 0.0 ? 1.0 : 1.0 - s * s;
    }

private:
    static constexpr double third = 1.0 / 3.0;
    static double box(double s) { return (s + 0.25) / 0.75; }
    std::array<double, 2> breaks_{-third, third};
};

/// Half breadth (B/2)(1 − (2x/L)²)(1 − (z/T)²), waterline at z = 0.
class Wigley final : public shape::Lines {
public:
    Wigley(double length_m, double breadth_m, double draught_m)
        : ends_{0.0, length_m}, breadth_(breadth_m), draught_(draught_m) {}

    [[nodiscard]] shape::Station at(double x_m) const override {
        const double s = 2.0 * x_m / ends_[1] - 1.0;
        return {0.5 * breadth_ * (1.0 - s * s),
                0.75 * draught_,
                -0.25 * draught_,
                0.0,
                -2.0 * breadth_ * s / ends_[1],
                0.0,
                0.0,
                0.0};
    }
    [[nodiscard]] std::span<const double> breakpoints_m() const override { return ends_; }
    [[nodiscard]] const shape::SectionFamily& family() const override { return family_; }

private:
    std::array<double, 2> ends_;
    double breadth_, draught_;
    WigleySection family_;
};

/// A bare body in one piece with its ledger of one line, and its hull.
struct BareHull {
    shape::Body body;
    ledger::Ledger ledger;
    document::Document document;
    afloat::FloatingHull hull;
};

inline ledger::Ledger wood_lines(const shape::Body& body) {
    ledger::Ledger lines;
    for (std::size_t s = 0; s < body.segments.size(); ++s) {
        ledger::Line line;
        line.segment = static_cast<int>(s);
        line.displaced_m3 = body.segments[s].volume_m3;
        line.at_m = body.segments[s].centroid_m;
        lines.push_back(line);
    }
    return lines;
}

inline BareHull bare_hull(std::shared_ptr<const shape::Lines> lines,
                          const std::vector<document::Joint>& joints = {}) {
    shape::Body body = shape::cut(std::move(lines), joints).value();
    ledger::Ledger ledger = wood_lines(body);
    document::Document document;
    afloat::FloatingHull hull(body, ledger, document);
    return {std::move(body), std::move(ledger), std::move(document), std::move(hull)};
}

/// Afloat in fresh water of 1000 kg/m³ at a share of the density of water, with G where it is said.
inline afloat::Afloat floating(const BareHull& bare, double specific_gravity, const Vec3& g_m) {
    return {&bare.hull, specific_gravity * 1000.0 * bare.hull.volume_m3(), g_m, 1000.0};
}

/// The same, of one density all through.
inline afloat::Afloat uniform(const BareHull& bare, double specific_gravity) {
    return floating(bare, specific_gravity, bare.hull.centroid_m());
}

} // namespace evenfall::support
