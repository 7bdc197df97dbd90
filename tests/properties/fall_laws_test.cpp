// Laws that the equations of the fall must keep whatever the body.

#include "support/falling_bodies.hpp"
#include "water/fall/descent.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>

using namespace evenfall;
using namespace evenfall::fall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

std::vector<DragItem> hooks() {
    return {{{0.040, 0.0, -0.028}, 80e-6, 150e-6, 220e-6}, {{0.150, 0.0, -0.004}, 60e-6, 120e-6, 200e-6}};
}

FallingLure lure(double in_water_kg, double forward_m, double below_m, bool with_hooks,
                 const ModelFactors& closure = {}) {
    const auto& w = support::fresh_20;
    return {hull(*support::prototype_body(), support::prototype_skin_m2, 0.0),
            support::prototype_weights(in_water_kg, forward_m, below_m, w),
            with_hooks ? hooks() : std::vector<DragItem>{}, w, closure};
}

double energy_left_over(const FallingLure& d, const TrackRequest& request) {
    const auto track = d.track(request);
    REQUIRE(track.ok());
    const Motion motion = d.motion();
    const TrackPoint& from = track->points.front();
    double worst = 0.0;
    for (const TrackPoint& p : track->points) {
        const double work =
            motion.work_j(p.depth_m, p.state.pitch_rad) - motion.work_j(from.depth_m, from.state.pitch_rad);
        worst = std::max(worst, std::abs(work - p.lost_j - motion.kinetic_j(p.state)));
    }
    const TrackPoint& to = track->points.back();
    return worst / std::abs(motion.work_j(to.depth_m, to.state.pitch_rad) -
                            motion.work_j(from.depth_m, from.state.pitch_rad));
}

} // namespace

TEST_CASE("work of weight less what drag takes is the energy of motion, the water's included, within a "
          "millionth all the way down",
          "[fall]") {
    // The solver's tolerance of 1e-7 a step is the only error; its absolute part of 1e-9 J counts against
    // some 1e-2 J.
    for (const bool with_hooks : {false, true}) {
        for (const double in_water : {0.002, 0.0005, -0.0015, 0.009}) {
            for (const double start : {-1.2, 0.0, 0.3, 1.4}) {
                INFO(in_water << " kg, from " << start << " rad");
                TrackRequest r;
                r.start_pitch_rad = start;
                r.depth_m = 1.0;
                CHECK(energy_left_over(lure(in_water, 0.001, 0.004, with_hooks), r) < 1e-6);
            }
        }
    }
    ModelFactors wake;
    wake.munk = 0.7;
    TrackRequest r;
    r.start_pitch_rad = 0.3;
    CHECK(energy_left_over(lure(0.002, 0.001, 0.004, true, wake), r) < 1e-6);
}

TEST_CASE("drag only ever takes energy", "[fall]") {
    const Motion motion = lure(0.002, 0.001, 0.004, true).motion();
    for (double u = -0.4; u <= 0.4; u += 0.1) {
        for (double w = -0.4; w <= 0.4; w += 0.1) {
            for (double q = -6.0; q <= 6.0; q += 1.0)
                CHECK(motion.rates_and_loss({u, w, q, 0.2}).lost_w >= 0.0);
        }
    }
}

TEST_CASE("in ideal fluid a neutral body tumbles for ever with its energy and its momentum in space "
          "unchanged (Kirchhoff)",
          "[fall]") {
    ModelFactors ideal;
    ideal.along = 0.0;
    MassProperties w = support::prototype_weights(0.0, 0.0, 0.0, support::fresh_20);
    w.g_m = w.b_m;
    HydroBody without_drag = hull(*support::prototype_body(), support::prototype_skin_m2, 0.0);
    without_drag.ends.usual = 0.0;
    const FallingLure d(without_drag, w, {}, support::fresh_20, ideal);
    const Motion motion = d.motion();
    // Momenta are the slopes of the energy, which is a quadratic form: central differences of it are exact.
    const auto momentum_in_space = [&](const std::array<double, 6>& v) {
        const auto t = [&](double du, double dw) {
            return motion.kinetic_j({v[0] + du, v[1] + dw, v[2], v[3]});
        };
        const double px = 0.5 * (t(1.0, 0.0) - t(-1.0, 0.0));
        const double pz = 0.5 * (t(0.0, 1.0) - t(0.0, -1.0));
        return std::array{px * std::cos(v[3]) + pz * std::sin(v[3]),
                          -px * std::sin(v[3]) + pz * std::cos(v[3])};
    };
    std::array<double, 6> v{0.3, 0.05, 4.0, 0.4, 0.0, 0.0};
    const auto before = momentum_in_space(v);
    const double energy = motion.kinetic_j({v[0], v[1], v[2], v[3]});
    for (int i = 0; i < 4000; ++i)
        v = support::rk4_step(motion, v, 1e-3);
    const auto after = momentum_in_space(v);
    CHECK(std::abs(v[3] - 0.4) > 1.0); // it has turned
    CHECK_THAT(motion.kinetic_j({v[0], v[1], v[2], v[3]}), WithinRel(energy, 1e-9));
    CHECK_THAT(after[0], WithinAbs(before[0], 1e-9 * std::abs(before[0]) + 1e-11));
    CHECK_THAT(after[1], WithinAbs(before[1], 1e-9 * std::abs(before[0]) + 1e-11));
}

TEST_CASE("a fixed-step fourth-order method on these equations converges with order four once the body moves",
          "[fall]") {
    // From rest the root in the friction is not smooth; in motion it is. Errors against the finest steps.
    const Motion motion = lure(0.002, 0.0005, 0.004, false).motion();
    const auto end = [&](int steps) {
        std::array<double, 6> v{0.05, 0.15, 0.0, 0.15, 0.0, 0.0};
        for (int i = 0; i < steps; ++i)
            v = support::rk4_step(motion, v, 0.8 / steps);
        return v;
    };
    const auto best = end(6400);
    const auto error = [&](int steps) {
        const auto v = end(steps);
        double sum = 0.0;
        for (std::size_t i = 0; i < 6; ++i)
            sum += std::abs(v[i] - best[i]);
        return sum;
    };
    for (const int steps : {50, 100, 200}) {
        const double order = std::log2(error(steps) / error(2 * steps));
        INFO(steps << " steps");
        CHECK_THAT(order, WithinAbs(4.0, 0.35));
    }
}

TEST_CASE("the way down settles as the solver's tolerance is drawn in, tenfold or more for each hundredfold, "
          "to a micrometre at the usual one",
          "[fall]") {
    const FallingLure d = lure(0.002, 0.0005, 0.004, true);
    const auto end = [&](double tolerance) {
        TrackRequest r;
        r.start_pitch_rad = 0.3;
        r.depth_m = 100.0;
        r.time_limit_s = 4.0;
        r.tolerance = tolerance;
        return d.track(r)->points.back();
    };
    const TrackPoint best = end(1e-12);
    const auto error = [&](double tolerance) {
        const TrackPoint p = end(tolerance);
        return std::hypot(p.depth_m - best.depth_m, p.forward_m - best.forward_m);
    };
    // In proportion would be a hundredfold; steps come whole, and the start from rest is rough (a root of the
    // speed).
    CHECK(error(1e-3) < 1e-3);
    CHECK(error(1e-5) < 0.1 * error(1e-3));
    CHECK(error(1e-7) < 0.1 * error(1e-5));
    CHECK(error(1e-7) < 1e-6);
    // A method of its own kind, with steps of its own, ends at the same place.
    const Motion motion = d.motion();
    std::array<double, 6> v{0.0, 0.0, 0.0, 0.3, 0.0, 0.0};
    for (int i = 0; i < 8000; ++i)
        v = support::rk4_step(motion, v, 5e-4);
    CHECK_THAT(best.depth_m, WithinAbs(v[4], 1e-6));
    CHECK_THAT(best.forward_m, WithinAbs(v[5], 1e-6));
    CHECK_THAT(best.state.pitch_rad, WithinAbs(v[3], 1e-5));
}
