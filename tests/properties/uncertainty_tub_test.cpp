// The short law of a fall from rest, against the full equations of motion.

#include "bench/uncertainty/uncertainty.hpp"
#include "support/invented_lures.hpp"
#include "water/fall/descent.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using namespace evenfall;
using Catch::Matchers::WithinRel;

TEST_CASE("Time from rest by the short law is that of the full motion within 4 %, over 0.3 to 2 m and at "
          "three speeds") {
    for (const char* name : {"millrace-170", "estuary-150"}) {
        const document::Document document = invented::preset_named(name);
        const bench::Model model = bench::Model::of(document).value();
        const materials::WaterProperties water = model.water().tub;
        const Eigen::VectorXd u = Eigen::VectorXd::Zero(model.count());
        const ledger::Sum sum = model.sum(Stage::rigged, -1, u);
        bench::FallModel falls = model.fall_model(Stage::rigged, water);
        const fall::FallingLure descent(model.evaluation().body, model.evaluation().ledger, document, water);
        for (const double kg : {0.002, 0.004, 0.009}) {
            ledger::Sum there = sum;
            const double extra = kg - sum.in_water(water.density_kg_m3).kg;
            there.mass.kg += extra;
            there.mass_moment_kg_m += extra * sum.g_m();
            const auto speed = falls.speed_m_s(there, 1.0);
            REQUIRE(speed);
            for (const double depth : {0.3, 0.5, 1.0, 2.0}) {
                fall::TrackRequest request;
                request.depth_m = depth;
                request.time_limit_s = 120.0;
                const auto track = descent.with_in_water(kg).track(request);
                REQUIRE((track.ok() && track->reached_s));
                INFO(name << ", " << 1e3 * kg << " g, " << depth << " m");
                CHECK_THAT(time_from_rest_s(depth, *speed, falls.acceleration_length_m(there, kg, *speed)),
                           WithinRel(*track->reached_s, 0.04));
            }
        }
    }
}

TEST_CASE("Weight from a fall's time and time from a fall's weight are each other's inverse") {
    const document::Document document = invented::preset_named("millrace-170");
    const bench::Model model = bench::Model::of(document).value();
    const Eigen::VectorXd u = Eigen::VectorXd::Zero(model.count());
    const ledger::Sum sum = model.sum(Stage::rigged, -1, u);
    bench::FallModel falls = model.fall_model(Stage::rigged, model.water().tub);
    for (const double time : {2.0, 3.5, 8.0}) {
        const auto kg = falls.in_water_for_time(sum, 1.1, 0.5, time);
        REQUIRE(kg);
        ledger::Sum there = sum;
        const double extra = *kg - sum.in_water(model.water().tub.density_kg_m3).kg;
        there.mass.kg += extra;
        there.mass_moment_kg_m += extra * sum.g_m();
        const auto speed = falls.speed_m_s(there, 1.1);
        REQUIRE(speed);
        CHECK_THAT(time_from_rest_s(0.5, *speed, falls.acceleration_length_m(there, *kg, *speed)),
                   WithinRel(time, 1e-6));
    }
}
