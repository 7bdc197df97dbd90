#include "water/fall/stability.hpp"

#include "support/falling_bodies.hpp"
#include "water/fall/descent.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <cmath>

using namespace evenfall;
using namespace evenfall::fall;
using Catch::Matchers::WithinAbs;

namespace {

std::vector<DragItem> hooks() {
    return {{{0.040, 0.0, -0.028}, 80e-6, 150e-6, 220e-6}, {{0.150, 0.0, -0.004}, 60e-6, 120e-6, 200e-6}};
}

/// The same rates from the full equations of motion, by central differences.
DisturbanceRates by_differences(const Motion& motion, const SteadyFall& fall) {
    const double speed = std::hypot(fall.along_m_s, fall.across_m_s);
    const std::array<double, 4> step{1e-5 * speed, 1e-5 * speed, 1e-4 * speed, 1e-5};
    DisturbanceRates rates{};
    for (std::size_t k = 0; k < 4; ++k) {
        const auto shifted = [&](double by) {
            MotionState s{fall.along_m_s, fall.across_m_s, 0.0, fall.pitch_rad};
            double* const parts[] = {&s.along_m_s, &s.across_m_s, &s.pitching_rad_s, &s.pitch_rad};
            *parts[k] += by;
            return motion.rates(s);
        };
        const auto plus = shifted(step[k]);
        const auto minus = shifted(-step[k]);
        for (std::size_t i = 0; i < 3; ++i)
            rates[i][k] = (plus[i] - minus[i]) / (2.0 * step[k]);
    }
    rates[3][2] = 1.0;
    return rates;
}

} // namespace

TEST_CASE("rates of small disturbances in closed form are those of the full equations", "[fall]") {
    for (const double kg : {0.002, -0.0015, 0.0002, 0.02}) {
        for (const auto& items : {std::vector<DragItem>{}, hooks()}) {
            for (const double forward_m : {-0.01, 0.0, 0.002}) {
                for (const double munk : {1.0, 0.7}) {
                    ModelFactors factors;
                    factors.munk = munk;
                    factors.ends = 0.5;
                    factors.parts = -0.5;
                    factors.along = 1.3;
                    factors.drag = 1.1;
                    const HydroBody body =
                        hull(*support::prototype_body(), support::prototype_skin_m2, 0.002);
                    const MassProperties weights =
                        support::prototype_weights(kg, forward_m, 0.004, support::fresh_20);
                    const FallingLure lure(body, weights, items, support::fresh_20, factors);
                    const Motion motion = lure.motion();
                    for (const SteadyFall& fall : lure.steady().falls) {
                        const DisturbanceRates closed =
                            disturbance_rates(body, weights, items, support::fresh_20, factors, motion.sums(),
                                              {fall.along_m_s, fall.across_m_s, 0.0, fall.pitch_rad});
                        const DisturbanceRates slow = by_differences(motion, fall);
                        INFO(kg << " kg, G " << forward_m << " m forward, Munk " << munk << ", at "
                                << fall.pitch_rad);
                        for (std::size_t i = 0; i < 4; ++i) {
                            double size = 0.0;
                            for (const double rate : slow[i])
                                size = std::max(size, std::abs(rate));
                            for (std::size_t k = 0; k < 4; ++k)
                                CHECK_THAT(closed[i][k], WithinAbs(slow[i][k], 1e-6 * size));
                        }
                    }
                }
            }
        }
    }
}

TEST_CASE("what the polynomial says of decay, the eigenvalues say", "[fall]") {
    int stable = 0;
    int unstable = 0;
    for (const double below_m : {0.0002, 0.001, 0.004}) {
        for (const double forward_m : {-0.02, -0.004, 0.0, 0.004, 0.02}) {
            const FallingLure lure(hull(*support::prototype_body(), support::prototype_skin_m2, 0.002),
                                   support::prototype_weights(0.002, forward_m, below_m, support::fresh_20),
                                   hooks(), support::fresh_20);
            for (const SteadyFall& fall : lure.steady().falls) {
                CHECK(fall.stable == (fall.modes_1_s.front().real() < 0.0));
                ++(fall.stable ? stable : unstable);
            }
        }
    }
    CHECK(stable > 0);
    CHECK(unstable > 0);
}
