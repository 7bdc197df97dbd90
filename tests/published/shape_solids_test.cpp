// Solids of the handbook, worked through the same integrals as a drawn lure.

#include "body/body.hpp"
#include "support/round_bodies.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <memory>
#include <numbers>

using namespace evenfall;
using namespace evenfall::shape;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using std::numbers::pi;

namespace {

Segment whole(std::shared_ptr<const Lines> lines) {
    const auto body = cut(std::move(lines), {});
    REQUIRE(body.ok());
    return body->segments.front();
}

/// ∬H dA of a convex body is the integral of its support function over all directions (Minkowski 1903).
/// Half-axes a along x, b, c; midpoints in cosθ and φ.
double ellipsoid_curvature(double a, double b, double c) {
    const int n = 400;
    double sum = 0.0;
    for (int i = 0; i < n; ++i) {
        const double mu = -1.0 + 2.0 * (i + 0.5) / n;
        for (int k = 0; k < n; ++k) {
            const double phi = 2.0 * pi * (k + 0.5) / n;
            const double r2 = 1.0 - mu * mu;
            sum += std::sqrt(a * a * mu * mu +
                             r2 * (std::pow(b * std::cos(phi), 2) + std::pow(c * std::sin(phi), 2)));
        }
    }
    return sum * 4.0 * pi / (n * n);
}

/// Wigley's parabolic hull: y = B/2·(1 − (2x/L)²)·(1 − (z/T)²), keel at z = −T, flat deck at z = 0.
class WigleySection final : public SectionFamily {
public:
    // With s = −z/T = (1 − Z)/2: Y = 1 − s². Integrals over s by hand.
    [[nodiscard]] UnitMoments moments(double) const override {
        return {8.0 / 3.0, 2.0 / 3.0, 64.0 / 105.0, 0.8};
    }
    [[nodiscard]] RimPoint rim(double, double tau) const override {
        if (tau < 0.0) return {1.0 - tau * tau, 1.0 + 2.0 * tau, -2.0 * tau, 2.0, 0.0, 0.0};
        return {1.0 - tau, 1.0, -1.0, 0.0, 0.0, 0.0};
    }
    [[nodiscard]] std::span<const double> rim_breaks() const override { return breaks_; }
    [[nodiscard]] double upper_z(double, double) const override { return 1.0; }
    [[nodiscard]] double lower_z(double, double y) const override { return 1.0 - 2.0 * std::sqrt(1.0 - y); }
    [[nodiscard]] double half_width(double, double z) const override {
        return 1.0 - 0.25 * (1.0 - z) * (1.0 - z);
    }

private:
    std::array<double, 1> breaks_{0.0};
};

class WigleyHull final : public Lines {
public:
    WigleyHull(double length_m, double beam_m, double draught_m) : beam_(beam_m), draught_(draught_m) {
        for (int k = 0; k <= 8; ++k)
            breakpoints_.push_back(length_m * k / 8);
    }
    [[nodiscard]] Station at(double x_m) const override {
        const double u = 2.0 * x_m / breakpoints_.back() - 1.0;
        return {0.5 * beam_ * (1.0 - u * u),
                0.5 * draught_,
                -0.5 * draught_,
                0.0,
                -2.0 * beam_ * u / breakpoints_.back(),
                0.0,
                0.0,
                0.0};
    }
    [[nodiscard]] std::span<const double> breakpoints_m() const override { return breakpoints_; }
    [[nodiscard]] const SectionFamily& family() const override { return section_; }

private:
    double beam_;
    double draught_;
    std::vector<double> breakpoints_;
    WigleySection section_;
};

} // namespace

TEST_CASE("ellipsoid 75, 22, 12 mm: volume 82 938.046 mm³ and skin 13 090.11 mm² (closed form and quadrature "
          "by SciPy 1.10.1)",
          "[shape]") {
    const Segment s = whole(std::make_shared<support::Ellipsoid>(0.150, 0.012, 0.022, 12, 0.003));
    CHECK_THAT(s.volume_m3, WithinRel(4.0 / 3.0 * pi * 0.075 * 0.022 * 0.012, 1e-9));
    CHECK_THAT(s.volume_m3, WithinRel(82938.046e-9, 1e-6));
    CHECK_THAT(s.centroid_m.x, WithinRel(0.075, 1e-9));
    CHECK_THAT(s.centroid_m.z, WithinRel(0.003, 1e-9));
    CHECK_THAT(s.skin_m2, WithinRel(13090.11e-6, 1e-4));
    CHECK_THAT(s.skin_centroid_m.x, WithinRel(0.075, 1e-9));
    // Solid ellipsoid: I_xx = m(b² + c²)/5, cyclic (any mechanics handbook). 38.981 g at 0.47 g/cm³ gives
    // 4896.0 g·mm².
    const double v5 = s.volume_m3 / 5.0;
    CHECK_THAT(s.inertia_m5.xx, WithinRel(v5 * (0.022 * 0.022 + 0.012 * 0.012), 1e-6));
    CHECK_THAT(s.inertia_m5.yy, WithinRel(v5 * (0.075 * 0.075 + 0.022 * 0.022), 1e-6));
    CHECK_THAT(s.inertia_m5.zz, WithinRel(v5 * (0.075 * 0.075 + 0.012 * 0.012), 1e-6));
    CHECK_THAT(s.inertia_m5.xz, WithinAbs(0.0, 1e-6 * s.inertia_m5.yy));
    CHECK_THAT(470.0 * s.inertia_m5.xx, WithinRel(4896.0e-9, 1e-5));
    CHECK_THAT(s.curvature_m, WithinRel(ellipsoid_curvature(0.075, 0.022, 0.012), 2e-3));
}

TEST_CASE("prolate spheroid: S = 2πb²(1 + a/(be)·asin e), and ∬H dA in closed form (Minkowski 1903)",
          "[shape]") {
    const double a = 0.070;
    const double b = 0.0125;
    const double e = std::sqrt(1.0 - b * b / (a * a));
    const Segment s = whole(std::make_shared<support::Ellipsoid>(2.0 * a, b, b, 16));
    CHECK_THAT(s.volume_m3, WithinRel(4.0 / 3.0 * pi * a * b * b, 1e-9));
    CHECK_THAT(s.skin_m2, WithinRel(2.0 * pi * b * b * (1.0 + a / (b * e) * std::asin(e)), 1e-4));
    const double c = a * e;
    const double curvature = 2.0 * pi * (a + b * b / (2.0 * c) * std::log((a + c) / (a - c)));
    CHECK_THAT(ellipsoid_curvature(a, b, b), WithinRel(curvature, 1e-5));
    CHECK_THAT(s.curvature_m, WithinRel(curvature, 2e-3));
}

TEST_CASE("sphere: S = 4πr², ∬H dA = 4πr", "[shape]") {
    const Segment s = whole(std::make_shared<support::Ellipsoid>(0.040, 0.020, 0.020, 16));
    CHECK_THAT(s.volume_m3, WithinRel(4.0 / 3.0 * pi * 8e-6, 1e-9));
    CHECK_THAT(s.skin_m2, WithinRel(4.0 * pi * 4e-4, 1e-4));
    CHECK_THAT(s.curvature_m, WithinRel(4.0 * pi * 0.020, 5e-3)); // the bluntest nose there is
}

TEST_CASE("round cylinder: end discs are skin, ∬H dA = πL + π²r (Steiner 1840, by hand)", "[shape]") {
    const double l = 0.1;
    const double r = 0.01;
    const Segment s = whole(std::make_shared<support::Cylinder>(l, r, r));
    CHECK_THAT(s.volume_m3, WithinRel(pi * r * r * l, 1e-12));
    CHECK_THAT(s.skin_m2, WithinRel(2.0 * pi * r * l + 2.0 * pi * r * r, 1e-7));
    CHECK_THAT(s.curvature_m, WithinRel(pi * l + pi * pi * r, 1e-7));
    // Thin cylinder of radius r, length l: transverse m(3r² + l²)/12.
    CHECK_THAT(s.inertia_m5.yy, WithinRel(s.volume_m3 * (3.0 * r * r + l * l) / 12.0, 1e-12));
    CHECK_THAT(s.inertia_m5.xx, WithinRel(s.volume_m3 * r * r / 2.0, 1e-12));
    // Cut across, each half has its own two edges.
    const auto body = cut(std::make_shared<support::Cylinder>(l, r, r), {{0.04, 0.002, 0.0, 0.0}});
    REQUIRE(body.ok());
    CHECK_THAT(body->segments[0].curvature_m, WithinRel(pi * 0.039 + pi * pi * r, 1e-7));
}

TEST_CASE("a cylinder with a V end has the ∬H dA of its edges (Steiner 1840, by a box wedge)", "[shape]") {
    // A long thin V: rim edges of exterior angle acos(sin α cos φ) and a ridge of exterior angle 2α.
    // For a box of half width a, half height b the sum is by hand: ½·[side edges 2b each at 90°−α, back and
    // belly edges a/cos α each at 90°, ridge 2b at 2α]; the lengthwise edges at 90°.
    document::Shape shape;
    const double a = 0.008;
    const double b = 0.015;
    const double l = 0.1;
    shape.back = {{0.0, b}, {l, b}};
    shape.belly = {{0.0, -b}, {l, -b}};
    shape.half_width = {{0.0, a}, {l, a}};
    shape.section = {document::SectionKind::chamfered, {}, {{0.0, 0.0}}, {}};
    const auto lines = drawn_lines(shape);
    REQUIRE(lines.ok());
    const double alpha = 0.4;
    const auto body = cut(*lines, {{0.05, 0.002, alpha, 0.0}});
    REQUIRE(body.ok());
    const double side_length = 0.049 - a * std::tan(alpha);
    const double nose_edges = 0.25 * pi * (4.0 * a + 4.0 * b);
    const double lengthwise = 0.25 * pi * 4.0 * side_length;
    const double v_end = 0.5 * (2.0 * 2.0 * b * (0.5 * pi - alpha) + 4.0 * a / std::cos(alpha) * 0.5 * pi +
                                2.0 * b * 2.0 * alpha);
    CHECK_THAT(body->segments[0].curvature_m,
               WithinRel(nose_edges + lengthwise + v_end, 5e-3)); // a corner is met between two rim points
}

TEST_CASE("elliptic paraboloid: volume half its cylinder, centroid at two thirds", "[shape]") {
    const Segment s = whole(std::make_shared<support::Paraboloid>(0.06, 0.01, 0.015, 4));
    CHECK_THAT(s.volume_m3, WithinRel(0.5 * pi * 0.01 * 0.015 * 0.06, 1e-9));
    CHECK_THAT(s.centroid_m.x, WithinRel(0.04, 1e-9));
    // Round one, skin without its end disc: πr/(6h²)·((r² + 4h²)^1.5 − r³).
    const Segment round = whole(std::make_shared<support::Paraboloid>(0.06, 0.01, 0.01, 8));
    const double skin =
        pi * 0.01 / (6.0 * 0.06 * 0.06) * (std::pow(0.01 * 0.01 + 4.0 * 0.06 * 0.06, 1.5) - 1e-6);
    CHECK_THAT(round.skin_m2 - pi * 1e-4, WithinRel(skin, 1e-4));
}

TEST_CASE("Wigley hull, L/B 10, B/T 1.6: Cb 4/9, KB 5T/8, wetted S/L² 0.148791 (Wigley 1942 form; area by "
          "SciPy 1.10.1)",
          "[shape]") {
    const double l = 0.2;
    const double beam = 0.02;
    const double draught = 0.0125;
    const Segment s = whole(std::make_shared<WigleyHull>(l, beam, draught));
    CHECK_THAT(s.volume_m3, WithinRel(4.0 / 9.0 * l * beam * draught, 1e-10));
    CHECK_THAT(s.centroid_m.x, WithinRel(0.5 * l, 1e-10));
    CHECK_THAT(s.centroid_m.z, WithinRel(-3.0 / 8.0 * draught, 1e-10));
    const double deck = 2.0 / 3.0 * l * beam;
    CHECK_THAT((s.skin_m2 - deck) / (l * l), WithinRel(0.148791, 1e-4));
}
