#include "body/polygon.hpp"
#include "body/superellipse.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <numbers>

using namespace evenfall;
using namespace evenfall::shape;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

/// Moments by very many thin strips of constant Y: slow, and free of rims and closed forms.
UnitMoments by_strips(const SectionFamily& family, double parameter) {
    UnitMoments m;
    const int strips = 20000;
    for (int k = 0; k < strips; ++k) {
        // y = s²(3 − 2s) makes the strips thin where the rim is steep.
        const double s = (k + 0.5) / strips;
        const double y = s * s * (3.0 - 2.0 * s);
        const double w = 2.0 * 6.0 * s * (1.0 - s) / strips;
        const double up = family.upper_z(parameter, y);
        const double low = family.lower_z(parameter, y);
        m.area += w * (up - low);
        m.z += w * 0.5 * (up * up - low * low);
        m.yy += w * y * y * (up - low);
        m.zz += w * (up * up * up - low * low * low) / 3.0;
    }
    return m;
}

const std::vector<document::OutlinePoint> boat{{0.0, -1.0}, {0.4, -0.9}, {1.0, 0.2},
                                               {1.0, 0.5},  {0.3, 1.0},  {0.0, 1.0}};

void check_family(const SectionFamily& family, double parameter, double tolerance) {
    INFO("parameter " << parameter);
    const UnitMoments closed = family.moments(parameter);
    const UnitMoments strips = by_strips(family, parameter);
    CHECK_THAT(closed.area, WithinAbs(strips.area, tolerance));
    CHECK_THAT(closed.z, WithinAbs(strips.z, tolerance));
    CHECK_THAT(closed.yy, WithinAbs(strips.yy, tolerance));
    CHECK_THAT(closed.zz, WithinAbs(strips.zz, tolerance));

    for (double tau = -0.985; tau < 1.0; tau += 0.03) {
        INFO("tau " << tau);
        const RimPoint p = family.rim(parameter, tau);
        // On the rim by the other calls
        // (where they are not so steep that rounding shows).
        if (p.y < 0.95 && p.z > family.upper_z(parameter, 1.0))
            CHECK_THAT(p.z, WithinAbs(family.upper_z(parameter, p.y), 1e-9));
        if (p.y < 0.95 && p.z < family.lower_z(parameter, 1.0))
            CHECK_THAT(p.z, WithinAbs(family.lower_z(parameter, p.y), 1e-9));
        if (std::abs(p.z) < 0.95) CHECK_THAT(p.y, WithinAbs(family.half_width(parameter, p.z), 1e-9));
        // Derivatives against differences, away from breaks.
        const double h = 1e-5;
        const RimPoint before = family.rim(parameter, tau - h);
        const RimPoint after = family.rim(parameter, tau + h);
        CHECK_THAT(p.y_tau, WithinAbs((after.y - before.y) / (2 * h), 1e-6));
        CHECK_THAT(p.z_tau, WithinAbs((after.z - before.z) / (2 * h), 1e-6));
        const double f = 1e-5;
        const RimPoint less = family.rim(parameter - f, tau);
        const RimPoint more = family.rim(parameter + f, tau);
        CHECK_THAT(p.y_parameter, WithinAbs((more.y - less.y) / (2 * f), 1e-7));
        CHECK_THAT(p.z_parameter, WithinAbs((more.z - less.z) / (2 * f), 1e-7));
    }
}

} // namespace

TEST_CASE("section areas over their boxes are the published superellipse ratios", "[shape]") {
    // A/(4ab) = Γ(1+1/n)²/Γ(1+2/n), the superellipse's area in any handbook of curves; six digits as
    // tabulated.
    const double ratios[][2] = {
        {1.5, 0.684463}, {2.0, 0.785398}, {2.5, 0.845234}, {4.0, 0.927037}, {10.0, 0.985732}};
    for (const auto& [n, ratio] : ratios)
        CHECK_THAT(Superellipse(n, n).moments(n).area / 4.0, WithinAbs(ratio, 5e-7));
}

TEST_CASE("superellipse moments, rims and derivatives agree with thin strips and differences", "[shape]") {
    // Midpoint strips err by their spacing squared and by the rim's |z|ⁿ at the widest point, least for large
    // n.
    for (const double n : {1.3, 2.0, 2.6, 5.0, 11.0})
        check_family(Superellipse(n, n), n, 2e-7);
    const UnitMoments ellipse = Superellipse(2.0, 2.0).moments(2.0);
    CHECK_THAT(ellipse.yy, WithinRel(std::numbers::pi / 4.0, 1e-14));
}

TEST_CASE("moments fitted over a range of exponents are within 1e-9 of the closed form", "[shape]") {
    for (const auto& [low, high] : {std::pair{1.2, 12.0}, std::pair{2.0, 3.0}, std::pair{2.6, 2.6001}}) {
        const Superellipse family(low, high);
        for (int k = 0; k <= 100; ++k) {
            const double n = low + (high - low) * k / 100.0;
            CHECK_THAT(family.moments(n).area, WithinRel(Superellipse::exact_moments(n).area, 1e-9));
            CHECK_THAT(family.moments(n).yy, WithinRel(Superellipse::exact_moments(n).yy, 1e-9));
        }
    }
}

TEST_CASE("rim points asked for together are those asked for one by one", "[shape]") {
    const Superellipse family(2.6, 2.6);
    const std::vector<double> symmetric{-0.9, -0.6, -0.4, -0.1, 0.1, 0.4, 0.6, 0.9};
    const std::vector<double> other{-0.9, -0.3, 0.2, 0.8};
    for (const auto& tau : {symmetric, other}) {
        std::vector<RimPoint> points(tau.size());
        family.rims(2.6, tau, points);
        for (std::size_t k = 0; k < tau.size(); ++k) {
            const RimPoint p = family.rim(2.6, tau[k]);
            CHECK_THAT(points[k].y, WithinAbs(p.y, 1e-14));
            CHECK_THAT(points[k].z, WithinAbs(p.z, 1e-14));
            CHECK_THAT(points[k].y_tau, WithinAbs(p.y_tau, 1e-13));
            CHECK_THAT(points[k].z_parameter, WithinAbs(p.z_parameter, 1e-14));
        }
    }
}

TEST_CASE("a chamfered block loses four corner triangles", "[shape]") {
    const Chamfered family;
    for (const double cut : {0.0, 0.25, 0.6, 1.0}) {
        // Square of side 2 less four triangles of legs c; their Y² moment by hand: ∫ over legs.
        const double k = 1.0 - cut;
        const double corner_yy = cut * cut * (1.0 / 2.0 - cut / 3.0 + cut * cut / 12.0);
        CHECK_THAT(family.moments(cut).area, WithinAbs(4.0 - 2.0 * cut * cut, 1e-14));
        CHECK_THAT(family.moments(cut).yy, WithinAbs(4.0 / 3.0 - 4.0 * corner_yy, 1e-14));
        CHECK_THAT(family.moments(cut).z, WithinAbs(0.0, 1e-15));
        CHECK_THAT(family.upper_z(cut, k), WithinAbs(1.0, 1e-14));
        CHECK_THAT(family.upper_z(cut, 1.0), WithinAbs(k, 1e-14));
        CHECK_THAT(family.half_width(cut, 1.0), WithinAbs(k, 1e-14));
    }
    check_family(family, 0.37, 1e-7);
}

TEST_CASE("a drawn half-section has the moments of its polygon", "[shape]") {
    const FreeOutline family(boat);
    check_family(family, 0.0, 1e-7);
    CHECK_THAT(family.half_width(0.0, 0.3), WithinAbs(1.0, 1e-15));
    CHECK_THAT(family.lower_z(0.0, 0.2), WithinAbs(-0.95, 1e-15));
    CHECK_THAT(family.upper_z(0.0, 0.65), WithinAbs(0.75, 1e-15));
    CHECK(family.rim_breaks().size() == boat.size() - 2);
}
