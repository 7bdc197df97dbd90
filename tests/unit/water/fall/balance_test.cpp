#include "support/falling_bodies.hpp"
#include "water/fall/balance.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <vector>

using namespace evenfall;
using namespace evenfall::fall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

/// A cube, G a quarter of its side below its middle and this far forward. Water moves along it with more mass
/// than across it here, so that the ideal moment turns it away from level.
FallingLure cube(double forward_m) {
    const double side = 0.12;
    MassProperties w;
    w.displaced_m3 = 0.5 * side * side * side;
    w.mass_kg = support::fresh_20.density_kg_m3 * w.displaced_m3 + 0.02;
    w.b_m = {0.5 * side, 0.0, 0.0};
    w.g_m = {0.5 * side - forward_m, 0.0, -0.25 * side};
    w.pitch_inertia_kg_m2 = w.mass_kg * side * side / 15.0;
    return {
        hull(support::BarLines(side, 0.5 * side, 0.5 * side, 200.0), 0.01, 0.0), w, {}, support::fresh_20};
}

} // namespace

TEST_CASE("a scan tells all roots of a moment, two within a degree among them, and the nearest that fits") {
    const std::vector<double> roots{-1.2, -0.3, 0.0960, 0.1030, 1.1};
    const auto moment = [&](double pitch) {
        double value = 1.0;
        for (const double root : roots)
            value *= pitch - root;
        return value;
    };
    const std::vector<double> found = PitchScan(moment).roots();
    REQUIRE(found.size() == roots.size());
    for (std::size_t i = 0; i < roots.size(); ++i)
        CHECK_THAT(found[i], WithinAbs(roots[i], 1e-9));
    const auto nearest =
        PitchScan(moment).nearest(0.15, [](double root) { return root < 0.1 || root > 1.0; });
    REQUIRE(nearest);
    CHECK_THAT(*nearest, WithinAbs(0.0960, 1e-9));
}

TEST_CASE("a body that falls a little off level is found however little its G is off the middle") {
    const auto right = cube(0.0).main_fall();
    REQUIRE(right);
    CHECK(std::abs(right->pitch_rad) > 1e-4);
    for (const double forward_m : {1e-18, -1e-18, 1e-15, -1e-15, 1e-12, -1e-12, 1e-9, -1e-9}) {
        INFO(forward_m << " m forward");
        const FallingLure off = cube(forward_m);
        const auto fall = off.main_fall();
        REQUIRE(fall);
        CHECK_THAT(std::abs(fall->pitch_rad), WithinRel(std::abs(right->pitch_rad), 0.01));
        CHECK_THAT(fall->vertical_m_s, WithinRel(right->vertical_m_s, 1e-6));
        const SteadyFalls all = off.steady();
        REQUIRE(all.main);
        CHECK_THAT(std::abs(all.falls[*all.main].pitch_rad), WithinRel(std::abs(right->pitch_rad), 0.01));
    }
}
