#include "water/fall/motion.hpp"

#include "base/trade.hpp"
#include "support/falling_bodies.hpp"
#include "water/fall/descent.hpp"
#include "water/fall/level_fall.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>

using namespace evenfall;
using namespace evenfall::fall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using units::rad_from_deg;

namespace {

FallingLure lure(double in_water_kg, std::vector<DragItem> items) {
    return {hull(*support::prototype_body(), support::prototype_skin_m2, 0.002),
            support::prototype_weights(in_water_kg, 0.002, 0.004, support::fresh_20), std::move(items),
            support::fresh_20};
}

std::vector<DragItem> hooks() {
    return {{{0.040, 0.0, -0.028}, 80e-6, 150e-6, 220e-6}, {{0.150, 0.0, -0.004}, 60e-6, 120e-6, 200e-6}};
}

} // namespace

TEST_CASE("held at any pitch, the steady speeds leave no force over", "[fall]") {
    for (const double kg : {0.002, -0.0015, 1e-5, 0.05}) {
        for (const auto& items : {std::vector<DragItem>{}, hooks()}) {
            const Motion motion = lure(kg, items).motion();
            const SteadySums& s = motion.sums();
            for (double deg = -90.0; deg <= 90.0; deg += 0.5) {
                const double pitch = rad_from_deg(deg);
                const auto [u, w] = s.speeds(pitch);
                const Load drag = motion.drag({u, w, 0.0, pitch});
                INFO(kg << " kg at " << deg << "°");
                CHECK_THAT(drag.along_n - s.weight_n * std::sin(pitch),
                           WithinAbs(0.0, 1e-11 * std::abs(s.weight_n)));
                CHECK_THAT(drag.across_n + s.weight_n * std::cos(pitch),
                           WithinAbs(0.0, 1e-11 * std::abs(s.weight_n)));
            }
        }
    }
}

TEST_CASE("where the summed moment of a steady fall vanishes, the full equations stand still", "[fall]") {
    for (const double kg : {0.002, -0.0015, 0.02}) {
        const FallingLure d = lure(kg, hooks());
        const Motion motion = d.motion();
        const SteadyFalls all = d.steady();
        REQUIRE_FALSE(all.falls.empty());
        for (const SteadyFall& f : all.falls) {
            for (const double rate : motion.rates({f.along_m_s, f.across_m_s, 0.0, f.pitch_rad}))
                CHECK_THAT(rate, WithinAbs(0.0, 1e-7));
        }
    }
}

TEST_CASE("held level, the body falls as the level fall has it", "[fall]") {
    const FallingLure d = lure(0.002, {});
    const auto level = LevelFall(*support::prototype_body()).speed_m_s(0.002, support::fresh_20);
    REQUIRE(level);
    CHECK_THAT(d.motion().sums().speeds(0.0).across_m_s, WithinRel(*level, 1e-12));
    CHECK(d.motion().sums().speeds(0.0).along_m_s == 0.0);
}

TEST_CASE("a floating body held under rises as the same body sinks that is as much too heavy", "[fall]") {
    const SteadySums sinks = lure(0.002, hooks()).motion().sums();
    const SteadySums rises = lure(-0.002, hooks()).motion().sums();
    for (const double pitch : {-1.0, -0.2, 0.0, 0.7}) {
        CHECK_THAT(rises.speeds(pitch).across_m_s, WithinRel(-sinks.speeds(pitch).across_m_s, 1e-10));
        CHECK_THAT(rises.speeds(pitch).along_m_s,
                   WithinAbs(-sinks.speeds(pitch).along_m_s, 1e-10 * std::abs(sinks.speeds(1.0).along_m_s)));
    }
}

TEST_CASE("a part before the nose slows the fall and lifts the nose of a level lure; on a lure that glides "
          "it takes the glide",
          "[fall]") {
    const DragItem part{{-0.005, 0.0, 0.0}, 80e-6, 150e-6, 220e-6};
    const MassProperties level = support::prototype_weights(0.002, 0.0, 0.004, support::fresh_20);
    const HydroBody body = hull(*support::prototype_body(), support::prototype_skin_m2, 0.0);
    const auto without = FallingLure(body, level, {}, support::fresh_20).main_fall();
    const auto with = FallingLure(body, level, {part}, support::fresh_20).main_fall();
    REQUIRE((without && with));
    CHECK(with->vertical_m_s < without->vertical_m_s);
    CHECK(with->pitch_rad > without->pitch_rad);
    // Gliding, the part's drag along the body weighs more: less way forward, so less of the moment that
    // flattens the fall.
    CHECK(lure(0.002, {part}).main_fall()->forward_m_s < lure(0.002, {}).main_fall()->forward_m_s);
}

TEST_CASE("turning on the spot is resisted", "[fall]") {
    const Motion motion = lure(0.002, hooks()).motion();
    CHECK(motion.drag({0.0, 0.0, 3.0, 0.0}).moment_n_m < 0.0);
    CHECK(motion.drag({0.0, 0.0, -3.0, 0.0}).moment_n_m > 0.0);
}
