// Terminal speeds and drag laws of spheres and cylinders. Values "from memory" are recalled and were not read
// again.

#include "base/trade.hpp"
#include "support/falling_bodies.hpp"
#include "water/fall/bluff.hpp"
#include "water/fall/descent.hpp"

#include <boost/math/tools/toms748_solve.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <numbers>

using namespace evenfall;
using namespace evenfall::fall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr double g = units::standard_gravity_m_s2;

/// Terminal speed of a ball by the sphere's law.
double ball_m_s(double diameter_m, double density_kg_m3, const materials::WaterProperties& water) {
    const double weight =
        g * (density_kg_m3 - water.density_kg_m3) * std::numbers::pi / 6.0 * std::pow(diameter_m, 3);
    const double disc = std::numbers::pi / 4.0 * diameter_m * diameter_m;
    const auto surplus = [&](double v) {
        const double re = water.density_kg_m3 * v * diameter_m / water.viscosity_pa_s;
        return 0.5 * water.density_kg_m3 * sphere_drag_coefficient(re) * disc * v * v - weight;
    };
    std::uintmax_t tries = 100;
    const auto [low, high] = boost::math::tools::toms748_solve(
        surplus, 1e-6, 20.0, boost::math::tools::eps_tolerance<double>(40), tries);
    return 0.5 * (low + high);
}

struct Drag {
    double reynolds, low, high;
};

} // namespace

TEST_CASE("balls of steel, lead and plastic sink in water of 20 °C at the tabulated speeds within 2 % (law "
          "of Brown and Lawler 2003 against other fits to the same experiments)",
          "[fall]") {
    // Diameter, density, speed by that law worked out apart, speed by another library's default fit. Fits
    // differ by 1 %.
    struct Ball {
        double mm, kg_m3, own_m_s, other_m_s;
    };
    for (const Ball& b : {Ball{3.0, 7850.0, 0.823, 0.817}, Ball{10.0, 7850.0, 1.453, 1.451},
                          Ball{12.7, 11340.0, 1.966, 1.967}, Ball{5.0, 1380.0, 0.237, 0.235},
                          Ball{10.0, 1010.0, 0.0527, 0.0531}}) {
        INFO(b.mm << " mm, " << b.kg_m3 << " kg/m³");
        const double v = ball_m_s(b.mm / 1000.0, b.kg_m3, {998.207, 1.0016e-3});
        CHECK_THAT(v, WithinRel(b.own_m_s, 0.002));
        CHECK_THAT(v, WithinRel(b.other_m_s, 0.02));
    }
    CHECK_THAT(ball_m_s(0.020, 1300.0, {1000.0, 1.0e-3}), WithinRel(0.441, 0.02));
}

TEST_CASE("a ball of 10 mm and 1100 kg/m³ sinks at 0.1797 m/s, Re 1791, Cd 0.413 (regression values of a "
          "prototype, not published truth)",
          "[fall]") {
    const materials::WaterProperties water{998.204, 1.0017e-3};
    const double v = ball_m_s(0.010, 1100.0, water);
    CHECK_THAT(v, WithinAbs(0.1797, 1e-4));
    CHECK_THAT(998.204 * v * 0.010 / 1.0017e-3, WithinAbs(1791.0, 2.0));
    CHECK_THAT(sphere_drag_coefficient(1791.0), WithinAbs(0.413, 1e-3));
}

TEST_CASE("the sphere's drag lies within 8 % of three other fits from Re 0.1 to 1e5 (Clift and Gauvin 1970; "
          "Clift, Grace and Weber 1978; Haider and Levenspiel 1989)",
          "[fall]") {
    struct Row {
        double re, gauvin, weber, haider;
    };
    for (const Row& r :
         {Row{0.1, 247.7, 244.3, 249.8}, Row{1.0, 27.65, 27.16, 28.33}, Row{10.0, 4.135, 4.258, 4.319},
          Row{100.0, 1.070, 1.087, 1.095}, Row{1e3, 0.4639, 0.4711, 0.4535}, Row{1e4, 0.4103, 0.4052, 0.4204},
          Row{1e5, 0.4675, 0.5018, 0.4715}}) {
        INFO("Re " << r.re);
        for (const double other : {r.gauvin, r.weber, r.haider})
            CHECK_THAT(sphere_drag_coefficient(r.re), WithinRel(other, 0.08));
    }
}

TEST_CASE("a round wire's drag lies in the band of the data from Re 1 to 1e5 (Wieselsberger and Tritton, "
          "from memory; law of Sucker and Brauer 1975)",
          "[fall]") {
    // The band is read off a curve: 2 % beside it is no disagreement.
    for (const Drag& d : {Drag{1.0, 10.0, 12.0}, Drag{10.0, 2.7, 3.0}, Drag{100.0, 1.3, 1.5},
                          Drag{1e3, 0.95, 1.05}, Drag{1e4, 1.05, 1.2}, Drag{1e5, 1.1, 1.25}}) {
        INFO("Re " << d.reynolds);
        CHECK(wire_drag_coefficient(d.reynolds) > 0.98 * d.low);
        CHECK(wire_drag_coefficient(d.reynolds) < 1.02 * d.high);
    }
}

TEST_CASE("long cylinders fall broadside, level and stable, at a speed whose band holds the measured one "
          "(Isaacs and Thodos 1967, from memory)",
          "[fall]") {
    // Cd = 0.99 (ρp/ρf)^0.12 (L/D)^−0.08 on D·L, for Re 200 to 60 000. Near Re 10 000, where our sections are
    // right.
    for (const double slenderness : {6.0, 8.0, 10.0, 20.0}) {
        const double d = 0.040;
        const double density = 1100.0;
        INFO("length/diameter " << slenderness);
        const SteadyFalls falls = support::round_bar(slenderness * d, d, density).steady();
        REQUIRE(falls.main);
        const SteadyFall& f = falls.falls[*falls.main];
        CHECK_THAT(f.pitch_rad, WithinAbs(0.0, 1e-9));
        const double cd = 0.99 * std::pow(density / 998.207, 0.12) * std::pow(slenderness, -0.08);
        const double measured =
            std::sqrt(g * (density - 998.207) * std::numbers::pi / 4.0 * d / (0.5 * 998.207 * cd));
        CHECK(f.vertical_band_m_s.low < measured);
        CHECK(f.vertical_band_m_s.high > measured);
        // Free cylinders oscillate; the correlation itself scatters by some 5 %, and so may differ from ours
        // by a tenth.
        CHECK_THAT(f.vertical_m_s, WithinRel(measured, 0.10));
    }
}
