#include "water/afloat/righting.hpp"

#include "unit/water/afloat/forms.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <tuple>

using namespace evenfall;
using namespace evenfall::afloat;
using namespace evenfall::support;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

const BareHull& board() {
    static const BareHull b = bare_hull(box_lines(0.120, 0.040, 0.020));
    return b;
}

} // namespace

TEST_CASE("the righting arm starts at nothing, rises as GM φ, and is nothing again upside down") {
    const Afloat a = floating(board(), 0.5, {0.060, 0.0, -0.002});
    const RightingCurve curve = righting_curve(a, TrimMode::free, 36);
    REQUIRE(curve.points.size() == 37);
    CHECK_THAT(curve.points.front().arm_m, WithinAbs(0.0, 1e-9));
    CHECK_THAT(curve.points.back().arm_m, WithinAbs(0.0, 1e-9));
    CHECK_THAT(curve.points.back().heel_rad, WithinAbs(std::numbers::pi, 1e-15));
    const double small = 1e-4;
    CHECK_THAT(righting_arm(a, TrimMode::free, small, 0.0).arm_m / small,
               WithinRel(upright_rest(a)->gm_transverse_m, 1e-5));
    for (const RightingPoint& p : curve.points)
        CHECK(p.is_trimmed);
}

TEST_CASE("a board that floats on either face loses its righting arm where it must, and not before") {
    const Afloat a = uniform(board(), 0.5);
    const RightingCurve curve = righting_curve(a, TrimMode::free);
    REQUIRE(curve.vanishing_rad.has_value());
    CHECK_THAT(*curve.list_rad, WithinAbs(0.0, 1e-12));
    // Of one density and half sunk it is its own mirror image: it balances on edge.
    CHECK_THAT(*curve.vanishing_rad, WithinAbs(0.5 * std::numbers::pi, 2e-6));
    CHECK(curve.peak_arm_m > 0.0);
    CHECK(curve.peak_heel_rad < 0.5 * std::numbers::pi);
}

TEST_CASE("the greatest arm lies between the points of the curve, where looking closely finds it") {
    const Afloat a = floating(board(), 0.5, {0.060, 0.0, -0.002});
    for (const int steps : {18, 29, 36}) {
        const RightingCurve curve = righting_curve(a, TrimMode::fixed, steps);
        double most = 0.0;
        double at = 0.0;
        const double step = std::numbers::pi / steps;
        for (double heel = curve.peak_heel_rad - step; heel < curve.peak_heel_rad + step;
             heel += 0.002 * step) {
            const double arm = righting_arm(a, TrimMode::fixed, heel, 0.0).arm_m;
            if (arm > most) {
                most = arm;
                at = heel;
            }
        }
        INFO(steps << " steps");
        // A parabola through three points of a curve that bends otherwise misses its top by a share of their
        // distance.
        CHECK_THAT(curve.peak_heel_rad, WithinAbs(at, 0.15 * step));
        CHECK_THAT(curve.peak_arm_m, WithinRel(most, 2e-3));
    }
}

TEST_CASE("a heading lies where the arm, straight between two points of the curve, rises through nothing") {
    RightingCurve curve;
    for (const auto& [heel, arm, pitch] :
         {std::tuple{0.0, 0.0, 0.0}, std::tuple{0.5, -0.001, 0.10}, std::tuple{0.9, 0.003, 0.30},
          std::tuple{std::numbers::pi, 0.0, 0.0}}) {
        RightingPoint p;
        p.heel_rad = heel;
        p.arm_m = arm;
        p.pitch_rad = pitch;
        curve.points.push_back(p);
    }
    // Both ends, where the arm is nothing by symmetry, and a quarter of the way from the second point to the
    // third.
    const auto headings = headings_of(curve);
    REQUIRE(headings.size() == 3);
    CHECK_THAT(headings[1].heel_rad, WithinAbs(0.6, 1e-12));
    CHECK_THAT(headings[1].pitch_rad, WithinAbs(0.15, 1e-12));
}

TEST_CASE("a low enough G rights the lure from any heel") {
    const BareHull egg = bare_hull(std::make_shared<EllipsoidForm>(0.070, 0.010, 0.018));
    const RightingCurve curve = righting_curve(floating(egg, 0.9, {0.070, 0.0, -0.006}), TrimMode::free);
    CHECK(curve.list_rad == 0.0);
    CHECK(*curve.vanishing_rad == std::numbers::pi);
}

TEST_CASE("an unstable lure lists: its curve falls at first, and rises through zero where it comes to rest") {
    const BareHull egg = bare_hull(std::make_shared<EllipsoidForm>(0.070, 0.010, 0.018));
    const Afloat a = floating(egg, 0.7, {0.070, 0.0, -0.002});
    const RightingCurve curve = righting_curve(a, TrimMode::free);
    REQUIRE(curve.list_rad.has_value());
    CHECK(*curve.list_rad > 10.0 * degree);
    const auto found = rests(a, headings_of(curve));
    REQUIRE(found.size() == 1);
    CHECK_THAT(std::abs(found[0].heel_rad), WithinAbs(*curve.list_rad, 1e-3 * degree));
    CHECK_THAT(righting_arm(a, TrimMode::free, *curve.list_rad, 0.0).arm_m, WithinAbs(0.0, 1e-8));
}

TEST_CASE("the area under the righting curve is the work of turning the lure over") {
    const BareHull egg = bare_hull(std::make_shared<EllipsoidForm>(0.070, 0.010, 0.018));
    const Afloat a = floating(egg, 0.8, {0.068, 0.0, -0.005});
    constexpr int steps = 240;
    const RightingCurve curve = righting_curve(a, TrimMode::free, steps);
    const double step = std::numbers::pi / steps;
    const auto energy = [&](const RightingPoint& p) {
        const Vec3 up = up_of({p.pitch_rad, p.heel_rad});
        return energy_j(a, up, a.hull->depth_for(up, a.wanted_m3(), 0.0));
    };
    double work = 0.0; // per weight, Simpson's rule
    for (int k = 0; k + 2 <= steps; k += 2) {
        const auto i = static_cast<std::size_t>(k);
        work += step / 3.0 *
                (curve.points[i].arm_m + 4.0 * curve.points[i + 1].arm_m + curve.points[i + 2].arm_m);
        if ((k + 2) % 40 != 0) continue;
        const double lifted = (energy(curve.points[i + 2]) - energy(curve.points[0])) / (a.mass_kg * 9.80665);
        CHECK_THAT(work, WithinAbs(lifted, 2e-4 * 0.005)); // of the arm G has: 5 mm
    }
}

TEST_CASE("held at its pitch a lure has no less righting arm to show than its energy is higher; level ones "
          "show the same") {
    const Afloat level = floating(board(), 0.5, {0.060, 0.0, -0.002});
    const RightingCurve free = righting_curve(level, TrimMode::free);
    const RightingCurve fixed = righting_curve(level, TrimMode::fixed);
    REQUIRE(free.points.size() == fixed.points.size());
    for (std::size_t k = 0; k < free.points.size(); ++k)
        CHECK_THAT(free.points[k].arm_m, WithinAbs(fixed.points[k].arm_m, 1e-7));

    // Out of level the free lure pitches as it heels: it lies lower in energy at every heel.
    const BareHull egg = bare_hull(std::make_shared<EllipsoidForm>(0.070, 0.010, 0.018));
    const Afloat nose_heavy = floating(egg, 0.8, {0.065, 0.0, -0.005});
    const RightingCurve held = righting_curve(nose_heavy, TrimMode::fixed);
    const RightingCurve loose = righting_curve(nose_heavy, TrimMode::free);
    const auto energy = [&](const RightingPoint& p) {
        const Vec3 up = up_of({p.pitch_rad, p.heel_rad});
        return energy_j(nose_heavy, up, egg.hull.depth_for(up, nose_heavy.wanted_m3(), 0.0));
    };
    for (std::size_t k = 0; k < held.points.size(); ++k) {
        CHECK_THAT(held.points[k].pitch_rad, WithinAbs(held.points[0].pitch_rad, 1e-9));
        CHECK(energy(loose.points[k]) <= energy(held.points[k]) + 1e-9);
    }
}

TEST_CASE("too few steps give no curve") {
    CHECK(righting_curve(uniform(board(), 0.5), TrimMode::free, 3).points.empty());
}

TEST_CASE("a trimmed point's arm is the slope of the energy over heel at its own pitch, and its pitch "
          "balances: none lies beyond nose or tail") {
    const BareHull egg = bare_hull(std::make_shared<EllipsoidForm>(0.070, 0.010, 0.018));
    int trimmed_points = 0;
    int others = 0;
    for (const double x : {0.030, 0.045, 0.055, 0.062, 0.080, 0.100}) {
        for (const double z : {-0.006, -0.001, 0.002}) {
            const Afloat a = floating(egg, 0.7, {x, 0.0, z});
            const RightingCurve curve = righting_curve(a, TrimMode::free);
            const double weight = a.mass_kg * 9.80665;
            const auto lifted = [&](double pitch, double heel) {
                const Vec3 up = up_of({pitch, heel});
                return energy_j(a, up, a.hull->depth_for(up, a.wanted_m3(), dot(up, a.hull->centroid_m()))) /
                       weight;
            };
            for (const RightingPoint& p : curve.points) {
                ++(p.is_trimmed ? trimmed_points : others);
                if (!p.is_trimmed) continue;
                INFO("G at " << x << ", " << z << ", heel " << p.heel_rad << ", pitch " << p.pitch_rad);
                constexpr double h = 1e-3;
                CHECK_THAT((lifted(p.pitch_rad, p.heel_rad + h) - lifted(p.pitch_rad, p.heel_rad - h)) /
                               (2.0 * h),
                           WithinAbs(p.arm_m, 2e-5));
                CHECK_THAT((lifted(p.pitch_rad + h, p.heel_rad) - lifted(p.pitch_rad - h, p.heel_rad)) /
                               (2.0 * h),
                           WithinAbs(0.0, 2e-5));
            }
        }
    }
    CHECK(trimmed_points > 100);
    CHECK(others > 20);
}

TEST_CASE("heels at which no pitch balances make no list, no end and no greatest arm") {
    const BareHull egg = bare_hull(std::make_shared<EllipsoidForm>(0.070, 0.010, 0.018));
    int broken = 0;
    for (const double x : {0.030, 0.045, 0.050, 0.055, 0.060, 0.090}) {
        for (const double z : {-0.006, -0.003, 0.002}) {
            const RightingCurve curve = righting_curve(floating(egg, 0.7, {x, 0.0, z}), TrimMode::free);
            double most = 0.0;
            bool whole = true;
            for (const RightingPoint& p : curve.points) {
                if (p.is_trimmed) most = std::max(most, p.arm_m);
                whole = whole && p.is_trimmed;
            }
            INFO("G at " << x << ", " << z);
            CHECK(curve.peak_arm_m <= 1.1 * most);
            const auto lies_between_trimmed = [&](double heel) {
                for (std::size_t k = 0; k + 1 < curve.points.size(); ++k) {
                    if (heel < curve.points[k].heel_rad - 1e-9 || heel > curve.points[k + 1].heel_rad + 1e-9)
                        continue;
                    if (curve.points[k].is_trimmed && curve.points[k + 1].is_trimmed) return true;
                }
                return false;
            };
            if (curve.list_rad) CHECK(lies_between_trimmed(*curve.list_rad));
            if (curve.vanishing_rad) CHECK(lies_between_trimmed(*curve.vanishing_rad));
            if (!whole) ++broken;
        }
    }
    CHECK(broken > 3);
}

TEST_CASE("a lure whose weight lies off the middle lies down although its GM is positive, and is told how "
          "far off") {
    // A round bar turns about its axis: at rest G lies plumb below it, here at a heel of atan(2/0.5).
    const BareHull bar = bare_hull(elliptic_bar_lines(0.120, 0.012, 0.012));
    const Afloat off = floating(bar, 0.7, {0.060, 0.002, -0.0005});
    const auto found = rests(off);
    REQUIRE(found.size() == 1);
    CHECK(found[0].posture == Posture::on_its_side);
    CHECK_THAT(found[0].heel_rad, WithinAbs(std::atan(4.0), 1e-4));
    const UprightAdvice advice = upright_advice(off);
    REQUIRE(advice.is_known);
    CHECK(advice.gm_m > 0.0);
    CHECK_FALSE(advice.is_stable);
    CHECK_THAT(advice.g_off_m, WithinAbs(0.002, 1e-6));
    CHECK_THAT(upright_advice(floating(bar, 0.7, {0.060, -0.002, -0.0005})).g_off_m, WithinAbs(-0.002, 1e-6));
    // Low enough it only leans.
    const UprightAdvice leans = upright_advice(floating(bar, 0.7, {0.060, 0.002, -0.004}));
    CHECK(leans.is_stable);
    CHECK(leans.heavier_kg == 0.0);
}

TEST_CASE("what stands on its nose is not said to stay upright") {
    const BareHull egg = bare_hull(std::make_shared<EllipsoidForm>(0.070, 0.010, 0.018));
    int standing = 0;
    for (const double x : {0.045, 0.050, 0.055, 0.058, 0.060, 0.062}) {
        const Afloat a = floating(egg, 0.7, {x, 0.0, -0.006});
        const auto found = rests(a);
        REQUIRE_FALSE(found.empty());
        const bool is_upright = std::any_of(found.begin(), found.end(),
                                            [](const Rest& r) { return r.posture == Posture::upright; });
        const UprightAdvice advice = upright_advice(a);
        CHECK((advice.is_known && advice.is_stable) == is_upright);
        if (upright_rest(a) && !is_upright) ++standing;
    }
    CHECK(standing > 0); // among them some that trim without heel, steeply
}
