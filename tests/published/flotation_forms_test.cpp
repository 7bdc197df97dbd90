// Floating bodies whose stability has a closed form. The formulas are the standard results of naval
// architecture (any textbook: BM = I/V, wall-sided formula, metacentre of a square log); worked numbers name
// their book.

#include "unit/water/afloat/forms.hpp"

#include "water/afloat/state.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <numbers>

using namespace evenfall;
using namespace evenfall::afloat;
using namespace evenfall::support;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr Vec3 straight_up{0.0, 0.0, 1.0};

/// Heel-stability of a level bar: GM over its side or breadth.
double upright_gm_m(const BareHull& bare, double specific_gravity) {
    const auto rest = upright_rest(uniform(bare, specific_gravity));
    REQUIRE(rest.has_value());
    return rest->gm_transverse_m;
}

/// GM of a body that stands on its tail, at the draft of its weight.
double on_end_gm_m(const BareHull& bare, double specific_gravity) {
    const Afloat a = uniform(bare, specific_gravity);
    const Vec3 up{-1.0, 0.0, 0.0};
    const double depth = bare.hull.depth_for(up, a.wanted_m3(), 0.0);
    const FloatState s = state_at(a, up, depth);
    return std::min(s.stiff_along, s.stiff_across) / a.wanted_m3();
}

} // namespace

TEST_CASE("a box of breadth 2 and depth 1 at half its depth has BM 0.6667 and GM 0.41667 (BM = B²/12T)") {
    const BareHull box = bare_hull(box_lines(0.200, 0.040, 0.020));
    const auto rest = upright_rest(uniform(box, 0.5));
    REQUIRE(rest.has_value());
    CHECK_THAT(rest->deepest_m, WithinAbs(0.010, 1e-10));
    CHECK_THAT(rest->gm_transverse_m, WithinRel(0.020 * (0.5 / 2.0 + 4.0 / 6.0 - 0.5), 1e-9));
    CHECK_THAT(rest->gm_transverse_m / 0.020, WithinAbs(0.41667, 5e-6));
    const double long_bm = 0.200 * 0.200 / (12.0 * 0.010);
    CHECK_THAT(rest->gm_longitudinal_m, WithinRel(0.005 + long_bm - 0.010, 1e-9));
    CHECK_THAT(upright_gm_m(bare_hull(box_lines(0.2, 0.02, 0.02)), 0.5) / 0.02, WithinAbs(-0.08333, 5e-6));
}

TEST_CASE("a box stays upright if and only if (B/D)² > 6s(1 − s)") {
    for (const double s : {0.2, 0.5, 0.7}) {
        const double neutral = std::sqrt(6.0 * s * (1.0 - s));
        CHECK(upright_gm_m(bare_hull(box_lines(0.3, 0.02 * neutral * 1.001, 0.02)), s) > 0.0);
        CHECK(upright_gm_m(bare_hull(box_lines(0.3, 0.02 * neutral * 0.999, 0.02)), s) < 0.0);
    }
}

TEST_CASE("a box rights itself by the wall-sided formula GZ = sin φ (GM + ½ BM tan² φ) until its deck edge "
          "goes under") {
    // B = 2, D = 1, s = ½: GZ(5, 10, 20°) = 0.036537, 0.074153, 0.157611.
    const BareHull flat = bare_hull(box_lines(0.200, 0.040, 0.020));
    const Afloat a = uniform(flat, 0.5);
    const double gz[][2] = {{5.0, 0.036537}, {10.0, 0.074153}, {20.0, 0.157611}};
    for (const auto& [heel_deg, arm] : gz) {
        for (const TrimMode trim : {TrimMode::free, TrimMode::fixed}) {
            CHECK_THAT(righting_arm(a, trim, heel_deg * degree, 0.0).arm_m / 0.020, WithinAbs(arm, 1e-6));
        }
    }
    // 60 × 40 mm, draft 20 mm, G 2 mm under the middle. BM = 60²/(12·20) = 15 mm, GM = 10 + 15 − 18 mm.
    const BareHull deep = bare_hull(box_lines(0.300, 0.060, 0.040));
    const Afloat b = floating(deep, 0.5, {0.150, 0.0, -0.002});
    for (const double heel_deg : {1.0, 5.0, 15.0, 25.0}) {
        const double t = std::tan(heel_deg * degree);
        const double arm = std::sin(heel_deg * degree) * (0.007 + 0.5 * 0.015 * t * t);
        CHECK_THAT(righting_arm(b, TrimMode::free, heel_deg * degree, 0.0).arm_m, WithinAbs(arm, 1e-9));
    }
}

TEST_CASE("a square log is neutral face up at specific gravities ½ ± √3/6") {
    const BareHull log = bare_hull(box_lines(0.300, 0.020, 0.020));
    const double neutral = std::sqrt(3.0) / 6.0;
    for (const double side : {-1.0, 1.0}) {
        const double s = 0.5 + side * neutral;
        CHECK_THAT(upright_gm_m(log, s) / 0.020, WithinAbs(0.0, 1e-8));
        CHECK(upright_gm_m(log, s - side * 0.001) < 0.0);
        CHECK(upright_gm_m(log, s + side * 0.001) > 0.0);
    }
}

TEST_CASE("a square log floats corner down between specific gravities 9/32 and 23/32") {
    const BareHull log = bare_hull(corner_down_lines(0.300, 0.020));
    CHECK_THAT(upright_gm_m(log, 0.5) / 0.020, WithinAbs(0.23570, 5e-6));
    CHECK_THAT(upright_gm_m(log, 0.25) / 0.020, WithinAbs(-0.04044, 5e-6));
    for (const double s : {9.0 / 32.0, 23.0 / 32.0})
        CHECK_THAT(upright_gm_m(log, s) / 0.020, WithinAbs(0.0, 1e-8));
    CHECK(upright_gm_m(log, 0.2820) > 0.0);
    CHECK(upright_gm_m(log, 0.2805) < 0.0);
}

TEST_CASE("between 0.2113 and 9/32 a square log rests neither face up nor corner down") {
    const BareHull log = bare_hull(box_lines(0.300, 0.020, 0.020));
    const auto found = rests(uniform(log, 0.25));
    REQUIRE_FALSE(found.empty());
    for (const Rest& rest : found) {
        const double heel = std::fmod(std::abs(rest.heel_rad), 0.5 * std::numbers::pi);
        CHECK(heel > 5.0 * degree);
        CHECK(std::abs(heel - 45.0 * degree) > 5.0 * degree);
        CHECK(rest.least_gm_m > 0.0);
    }
    // In the range of the corner it is found there, though the search starts from the faces.
    for (const Rest& rest : rests(uniform(log, 0.5))) {
        CHECK_THAT(std::fmod(std::abs(rest.heel_rad), 0.5 * std::numbers::pi),
                   WithinAbs(45.0 * degree, 1e-6));
    }
}

TEST_CASE("a round log has no preferred way up: GM = 0 at every draught") {
    const BareHull log = bare_hull(elliptic_bar_lines(0.300, 0.010, 0.010));
    for (const double s : {0.2, 0.5, 0.8})
        CHECK_THAT(upright_gm_m(log, s) / 0.010, WithinAbs(0.0, 2e-4));
    const auto found = rests(uniform(log, 0.5));
    REQUIRE(found.size() == 1);
    CHECK(found[0].is_neutral);
    // With G off its axis GZ = OG sin φ.
    const Afloat weighted = floating(log, 0.5, {0.150, 0.0, -0.002});
    for (const double heel_deg : {10.0, 60.0, 120.0}) {
        CHECK_THAT(righting_arm(weighted, TrimMode::free, heel_deg * degree, 0.0).arm_m,
                   WithinAbs(0.002 * std::sin(heel_deg * degree), 1e-6));
    }
}

TEST_CASE("a cylinder on end is neutral at D/H = √(8s(1 − s)), a square prism at a/h = √(6s(1 − s))") {
    for (const double s : {0.1, 0.3, 0.5, 0.8}) {
        const double round = std::sqrt(8.0 * s * (1.0 - s));
        const double square = std::sqrt(6.0 * s * (1.0 - s));
        for (const double aside : {0.99, 1.01}) {
            const double r = 0.5 * 0.05 * round * aside;
            const double a = 0.05 * square * aside;
            CHECK((on_end_gm_m(bare_hull(elliptic_bar_lines(0.05, r, r)), s) > 0.0) == (aside > 1.0));
            CHECK((on_end_gm_m(bare_hull(box_lines(0.05, a, a)), s) > 0.0) == (aside > 1.0));
        }
        // BM = D²/(16T) and GM = T/2 + BM − H/2 in full.
        const double d = 0.05 * 1.2;
        const double gm = 0.5 * s * 0.05 + d * d / (16.0 * s * 0.05) - 0.025;
        CHECK_THAT(on_end_gm_m(bare_hull(elliptic_bar_lines(0.05, 0.5 * d, 0.5 * d)), s),
                   WithinAbs(gm, 5e-6));
    }
}

TEST_CASE("a half sunk ellipsoid has B 3c/8 under the waterline, BM 3b²/8c across and 3a²/8c along") {
    const BareHull egg = bare_hull(std::make_shared<EllipsoidForm>(0.075, 0.012, 0.022));
    const Immersion half = egg.hull.immersed(straight_up, 0.0);
    CHECK_THAT(half.volume_m3, WithinRel(0.5 * egg.hull.volume_m3(), 1e-9));
    CHECK_THAT(half.b_m().z, WithinRel(-3.0 * 0.022 / 8.0, 2e-4));
    CHECK_THAT(half.own_across_m4() / half.volume_m3, WithinRel(3.0 * 0.012 * 0.012 / (8.0 * 0.022), 5e-4));
    CHECK_THAT(half.own_along_m4() / half.volume_m3, WithinRel(3.0 * 0.075 * 0.075 / (8.0 * 0.022), 5e-4));
    // 75/12/22 mm at s = ½: GM −5.795 across and +87.63 mm along: it rolls flat.
    const auto rest = upright_rest(uniform(egg, 0.5));
    REQUIRE(rest.has_value());
    CHECK_THAT(rest->gm_transverse_m * 1e3, WithinAbs(-5.795, 0.003));
    CHECK_THAT(rest->gm_longitudinal_m * 1e3, WithinAbs(87.63, 0.05));
    const auto found = rests(uniform(egg, 0.5));
    REQUIRE(found.size() == 1);
    CHECK(found[0].posture == Posture::on_its_side);
    CHECK_THAT(found[0].gm_transverse_m,
               WithinRel(3.0 * (0.022 * 0.022 - 0.012 * 0.012) / (8.0 * 0.012), 1e-3));
}

TEST_CASE("an ellipsoid cut by any plane through its centre is halved, B on the conjugate diameter (affine "
          "image of a sphere)") {
    const double a = 0.075;
    const double b = 0.012;
    const double c = 0.022;
    const BareHull egg = bare_hull(std::make_shared<EllipsoidForm>(a, b, c));
    for (const Attitude at :
         {Attitude{0.2, 0.5}, Attitude{-0.7, 2.0}, Attitude{1.2, -0.3}, Attitude{1.55, 0.1}}) {
        const Vec3 up = up_of(at);
        const Immersion half = egg.hull.immersed(up, up.x * a);
        // Stretching the sphere's half: r_B = −3/8 · D²·up/|D·up| with D = diag(a, b, c).
        const double size = std::sqrt(a * a * up.x * up.x + b * b * up.y * up.y + c * c * up.z * up.z);
        const Vec3 expected = -3.0 / 8.0 / size * Vec3{a * a * up.x, b * b * up.y, c * c * up.z};
        CHECK_THAT(half.volume_m3, WithinRel(0.5 * egg.hull.volume_m3(), 5e-4));
        CHECK_THAT(length(half.b_m() - Vec3{a, 0.0, 0.0} - expected),
                   WithinAbs(0.0, 5e-4 * length(expected)));
        // Waterplane: the cut of the sphere stretched by D; its area is π·abc/|D·up|.
        CHECK_THAT(half.area_m2, WithinRel(std::numbers::pi * a * b * c / size, 2e-3));
    }
}

TEST_CASE("a Wigley hull (L/B 10, B/T 1.6) has block coefficient 4/9, KB 5T/8, BM 0.137143 B across and 1.2 "
          "L along") {
    const double l = 0.160;
    const double b = 0.016;
    const double t = 0.010;
    const BareHull hull = bare_hull(std::make_shared<Wigley>(l, b, t));
    const Immersion i = hull.hull.immersed(straight_up, 0.0);
    // Flotation is good to 1e-4 of the volume, and so of the breadth, which counts threefold across.
    constexpr double good = 1e-4;
    CHECK_THAT(i.volume_m3, WithinRel(4.0 / 9.0 * l * b * t, good));
    CHECK_THAT(i.b_m().z + t, WithinRel(5.0 / 8.0 * t, good));
    CHECK_THAT(i.area_m2, WithinRel(2.0 / 3.0 * l * b, good));
    CHECK_THAT(i.own_across_m4(), WithinRel(16.0 / 420.0 * l * b * b * b, 3.0 * good));
    CHECK_THAT(i.own_across_m4() / i.volume_m3 / b, WithinRel(0.137143, 3.0 * good));
    CHECK_THAT(i.own_along_m4(), WithinRel(b * l * l * l / 30.0, good));
    CHECK_THAT(i.own_along_m4() / i.volume_m3 / l, WithinRel(1.2, good));
}

TEST_CASE("logs of worked exercises float at their draughts (stability course notes and textbook exercises, "
          "as read)") {
    struct Log {
        double length, breadth, height, relative_density, water, draught;
    };
    // 8×2×2 m of 25.6 t draws 1.6 m in fresh water; 5×1.6×1 m of 6 t draws 0.73 m in sea water; 3×0.75×0.75 m
    // of relative density 0.8 draws 0.585 m in 1.025; breadth 3, height 2, 0.7 in 1.01 draws 1.386 m. Rounded
    // as printed.
    const Log logs[] = {{8.0, 2.0, 2.0, 0.80, 1.0, 1.6},
                        {5.0, 1.6, 1.0, 0.75, 1.025, 0.73},
                        {3.0, 0.75, 0.75, 0.80, 1.025, 0.585},
                        {6.0, 3.0, 2.0, 0.70, 1.01, 1.386}};
    for (const Log& log : logs) {
        const BareHull bare = bare_hull(box_lines(log.length, log.breadth, log.height));
        const Afloat a{&bare.hull, log.relative_density * 1000.0 * bare.hull.volume_m3(),
                       bare.hull.centroid_m(), log.water * 1000.0};
        const auto rest = upright_rest(a);
        REQUIRE(rest.has_value());
        CHECK_THAT(rest->draft_fore_m, WithinAbs(log.draught, log.draught == 0.73 ? 0.005 : 0.0005));
        CHECK_THAT(rest->draft_aft_m, WithinAbs(rest->draft_fore_m, 1e-9));
    }
    // The third one's BG: 0.082 m (printed 0.083).
    const BareHull third = bare_hull(box_lines(3.0, 0.75, 0.75));
    const double depth = third.hull.depth_for(straight_up, 0.8 / 1.025 * third.hull.volume_m3(), 0.0);
    CHECK_THAT(-third.hull.immersed(straight_up, depth).b_m().z, WithinAbs(0.082, 0.0006));
}

TEST_CASE("wholly under water GM is BG and the righting arm BG sin φ") {
    const BareHull egg = bare_hull(std::make_shared<EllipsoidForm>(0.075, 0.012, 0.022));
    const Afloat a = floating(egg, 1.02, {0.075, 0.0, -0.003});
    CHECK(a.sinks());
    const UnderWater u = under_water(a);
    CHECK_THAT(u.bg_m, WithinAbs(0.003, 1e-15));
    CHECK_THAT(u.arm_m(30.0 * degree), WithinAbs(0.0015, 1e-12));
    CHECK_THAT(u.righting_nm_per_deg, WithinRel(a.mass_kg * 9.80665 * 0.003 * degree, 1e-12));
    const FloatState s = state_at(a, straight_up, 0.1);
    CHECK_THAT(s.stiff_across / egg.hull.volume_m3(), WithinRel(1.02 * 0.003, 1e-9));
}
