#include "water/swim/swim.hpp"

#include "support/swim_chains.hpp"
#include "water/swim/run.hpp"

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include <numeric>

using namespace evenfall;
using Catch::Approx;

TEST_CASE("an answer is the same in whatever bits it is worked out", "[swim]") {
    const swim::Chain chain = testing::chain_of(testing::body_b170());
    swim::SwimRun one(chain, {}, 3), other(chain, {}, 3);
    CHECK(one.answer().of == 0);
    one.work(10000000);
    int draws = 0;
    while (!other.done()) {
        other.work(37);
        CHECK(other.draws_done() >= draws);
        draws = other.draws_done();
    }
    const swim::SwimAnswer a = one.answer(), b = other.answer();
    CHECK(a.of == 3);
    CHECK(a.swims == b.swims);
    for (std::size_t k = 0; k < 3; ++k) {
        CHECK(a.draws[k].beats_per_m == b.draws[k].beats_per_m);
        CHECK(a.draws[k].tail_swing_m == b.draws[k].tail_swing_m);
    }
    CHECK(a.beats_per_m->mid == b.beats_per_m->mid);
}

TEST_CASE("work takes no more time steps than it is given", "[swim]") {
    const swim::Chain chain = testing::chain_of(testing::body_a140());
    const swim::Motion motion(chain, {}, {});
    swim::Run run(chain, motion, swim::Start::in_turn);
    for (int k = 1; k < 60; ++k)
        CHECK(run.work(k) <= k);
    int steps = 0;
    while (!run.done())
        steps += run.work(1000);
    CHECK(steps < 45.0 * chain.length_m / 0.5 / motion.step_s());
}

TEST_CASE("a lure with a fin swims from all starts, all joints to their stops, its wave going aft",
          "[swim]") {
    const swim::SwimAnswer a = swim::swim(testing::chain_of(testing::body_b170()), {}, 4);
    CHECK(a.way == swim::Way::swims);
    CHECK(a.swims == 4);
    REQUIRE(a.beats_per_m.has_value());
    CHECK(a.beats_per_m->low < a.beats_per_m->mid);
    CHECK(a.beats_per_m->mid < a.beats_per_m->high);
    CHECK(a.joints.size() == 3);
    CHECK(a.lag_rad.size() == 3);
    for (const swim::JointSwing& j : a.joints)
        CHECK(j.at_stop);
    for (const double lag : a.lag_rad)
        CHECK(lag > 0.0);
}

TEST_CASE("a wave is one beat that closes, of the chain as it lies", "[swim]") {
    const swim::Chain chain = testing::chain_of(testing::body_c230());
    const swim::SwimAnswer a = swim::swim(chain, {}, 1);
    REQUIRE(a.wave.has_value());
    CHECK(a.wave->x_m.size() == chain.segments.size());
    CHECK(a.wave->x_m[0] == chain.tie_x_m);
    CHECK(a.wave->x_m[1] == Approx(chain.tie_x_m + chain.segments[0].length_m));
    CHECK(a.wave->beats_per_m == Approx(a.draws[0].beats_per_m));
    const auto& poses = a.wave->poses;
    double most = 0.0;
    for (std::size_t k = 0; k < poses.size(); ++k) {
        const auto& next = poses[(k + 1) % poses.size()];
        most = std::max(most, std::abs(next.heading_rad[0] - poses[k].heading_rad[0]));
    }
    const double swing = std::accumulate(poses.begin(), poses.end(), 0.0, [](double m, const auto& p) {
        return std::max(m, std::abs(p.heading_rad[0]));
    });
    // No step of 36 is a jump: a sine's greatest is 2π/36 of its height.
    CHECK(most < 2.0 * 2.0 * std::numbers::pi / 36.0 * swing);
}

TEST_CASE("joints that bind hold a lure straight or bent, without a beat", "[swim]") {
    const swim::SwimAnswer a = swim::swim(testing::chain_of(testing::body_a140()), {0.5, 0.02, 8.0}, 2);
    CHECK(a.swims == 0);
    CHECK(!a.beats_per_m.has_value());
    CHECK((a.way == swim::Way::leans || a.way == swim::Way::straight));
    REQUIRE(a.wave.has_value());
    CHECK(a.wave->poses.size() == 1);
}

TEST_CASE("two segments glide and have no beat", "[swim]") {
    testing::SwimBody body = testing::body_a140();
    body.cuts_m = {0.07};
    const swim::SwimAnswer a = swim::swim(testing::chain_of(body), {}, 3);
    if (a.swims * 2 >= a.of) {
        CHECK(a.way == swim::Way::glides);
        CHECK(!a.beats_per_m.has_value());
    } else {
        CHECK(a.way != swim::Way::swims);
    }
    CHECK(a.joints.size() == 1);
}

TEST_CASE("the length of the line moves beats by a hundredth", "[swim]") {
    const swim::Chain chain = testing::chain_of(testing::body_b170());
    const auto beats = [&](double line_m) {
        return swim::swim(chain, {0.5, 1e-5, line_m}, 1).draws[0].beats_per_m;
    };
    CHECK(beats(2.0) == Approx(beats(8.0)).epsilon(0.015));
    CHECK(beats(25.0) == Approx(beats(8.0)).epsilon(0.015));
}
