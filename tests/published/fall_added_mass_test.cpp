// Added mass of bodies in ideal fluid against printed tables.

#include "water/fall/added_mass.hpp"

#include "support/bars.hpp"
#include "water/fall/hull.hpp"
#include "water/fall/motion.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <numbers>

using namespace evenfall;
using namespace evenfall::fall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

/// c/a; k1 as printed; k1, k2, k' from his formulas, to four places.
struct Row {
    double slenderness, printed_surge, surge, heave, pitch;
};
constexpr Row lamb[] = {
    {1.50, 0.305, 0.3037, 0.6221, 0.0951}, {2.00, 0.209, 0.2100, 0.7042, 0.2394},
    {2.51, 0.156, 0.1554, 0.7629, 0.3674}, {2.99, 0.122, 0.1225, 0.8032, 0.4639},
    {3.99, 0.082, 0.0818, 0.8593, 0.6068}, {4.99, 0.059, 0.0593, 0.8940, 0.6991},
    {6.01, 0.045, 0.0451, 0.9173, 0.7628}, {8.01, 0.029, 0.0292, 0.9448, 0.8397},
    {9.97, 0.021, 0.0208, 0.9601, 0.8830},
};

/// k' is over the moment of inertia of the displaced water, (a² + c²)/5.
double pitch_coefficient(const EllipsoidShares& s, double half_length, double half_width) {
    return s.pitch_m2 / ((half_length * half_length + half_width * half_width) / 5.0);
}

} // namespace

TEST_CASE("spheroids carry water along, across and in pitch as tabulated (Lamb, ARC R&M 623, 1918; k1 as "
          "printed, k2 and k' from his formulas)",
          "[fall]") {
    for (const Row& row : lamb) {
        INFO("length/width " << row.slenderness);
        const EllipsoidShares s = ellipsoid_shares(row.slenderness, 1.0, 1.0);
        // The printed slenderness is rounded to 0.01 and the printed k1 to 0.001.
        CHECK_THAT(s.surge, WithinAbs(row.printed_surge, 0.002));
        CHECK_THAT(s.surge, WithinAbs(row.surge, 6e-5));
        CHECK_THAT(s.heave, WithinAbs(row.heave, 6e-5));
        CHECK_THAT(pitch_coefficient(s, row.slenderness, 1.0), WithinAbs(row.pitch, 6e-5));
    }
}

TEST_CASE("a sphere carries half its water, and none when it turns (Lamb, Hydrodynamics, Art. 92)",
          "[fall]") {
    const EllipsoidShares s = ellipsoid_shares(1.0, 1.0, 1.0);
    CHECK_THAT(s.surge, WithinAbs(0.5, 1e-14));
    CHECK_THAT(s.heave, WithinAbs(0.5, 1e-14));
    CHECK(s.pitch_m2 == 0.0);
}

TEST_CASE("a very long ellipsoid moves across like an elliptic cylinder, π times half width squared (Newman "
          "1977, Table 4.3, from memory)",
          "[fall]") {
    for (const double width_per_height : {0.3, 0.57, 1.0, 2.0}) {
        CHECK_THAT(ellipsoid_shares(1e4, width_per_height, 1.0).heave, WithinRel(width_per_height, 1e-5));
    }
}

TEST_CASE(
    "sections: 1 for every ellipse, and a square's 1.51 within 6 % (Newman 1977, Table 4.3, from memory)",
    "[fall]") {
    for (const double width_per_height : {0.2, 0.57, 1.0, 3.0}) {
        CHECK_THAT(section_added_mass(width_per_height, std::numbers::pi / 4.0), WithinAbs(1.0, 1e-12));
    }
    // 1.51 is over the square of the half side: ρ·4.754a² against ρπa².
    CHECK_THAT(section_added_mass(1.0, 1.0), WithinRel(1.51, 0.06));
}

TEST_CASE("the strips of a spheroid, lessened for its ends, carry what Lamb's spheroid carries, within 0.1 % "
          "across and 0.3 % in pitch (Lamb, ARC R&M 623, 1918)",
          "[fall]") {
    // What is left is the slicing: 48 strips, midpoint rule, in pitch weighted towards the ends.
    for (const Row& row : lamb) {
        INFO("length/width " << row.slenderness);
        const double half_width = 0.01;
        const double half_length = row.slenderness * half_width;
        const HydroBody h =
            hull(support::EllipsoidLines(2.0 * half_length, half_width, half_width), 0.01, 0.0);
        const double volume = 4.0 / 3.0 * std::numbers::pi * half_length * half_width * half_width;
        CHECK_THAT(h.surge_m3 / volume, WithinAbs(row.surge, 2e-3 * row.surge + 5e-5));
        CHECK_THAT(h.heave_m3 / volume, WithinRel(row.heave, 1e-3));
        CHECK_THAT(h.heave_x_m4 / h.heave_m3, WithinRel(half_length, 1e-9));
        const double own = h.heave_xx_m5 - h.heave_m3 * half_length * half_length;
        CHECK_THAT(own / volume / (half_length * half_length + half_width * half_width) * 5.0,
                   WithinRel(row.pitch, 3e-3));
    }
}

TEST_CASE("without correction the strips of a spheroid carry its whole water: a tenth to a fifth too much at "
          "slendernesses of 3 to 6 (Lamb, ARC R&M 623, 1918)",
          "[fall]") {
    CHECK_THAT(1.0 / ellipsoid_shares(2.99, 1.0, 1.0).heave, WithinAbs(1.245, 0.001));
    CHECK_THAT(1.0 / ellipsoid_shares(6.01, 1.0, 1.0).heave, WithinAbs(1.090, 0.001));
}

TEST_CASE("a spheroid four times as long as thick that moves aslant is turned broadside by ½ρU²V·0.7782·sin "
          "2α (Munk; Lamb's k2 − k1)",
          "[fall]") {
    const double half_width = 0.012;
    const double half_length = 0.048;
    const double rho = 998.2;
    const double volume = 4.0 / 3.0 * std::numbers::pi * half_length * half_width * half_width;
    MassProperties w;
    w.displaced_m3 = volume;
    w.mass_kg = rho * volume;
    w.b_m = w.g_m = {half_length, 0.0, 0.0};
    w.pitch_inertia_kg_m2 = w.mass_kg * (half_length * half_length + half_width * half_width) / 5.0;
    ModelFactors ideal;
    ideal.along = 0.0;
    HydroBody h = hull(support::EllipsoidLines(2.0 * half_length, half_width, half_width), 0.01, 0.0);
    h.ends.usual = 0.0;
    const Motion motion(h, w, {}, {rho, 1e-3}, ideal);
    const double turned =
        w.pitch_inertia_kg_m2 + rho * (h.heave_xx_m5 - h.heave_m3 * half_length * half_length);
    for (const double alpha : {-1.2, -0.4, 0.1, 0.5, std::numbers::pi / 4.0, 1.4}) {
        const double speed = 0.3;
        const auto rates = motion.rates({speed * std::cos(alpha), speed * std::sin(alpha), 0.0, 0.0});
        const double munk = 0.5 * rho * speed * speed * volume * 0.7782 * std::sin(2.0 * alpha);
        // Slicing, 1e-3, and the four places of the coefficient.
        CHECK_THAT(rates[2] * turned, WithinRel(munk, 1.5e-3));
    }
}
