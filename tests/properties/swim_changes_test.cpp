// What a change of design does to the beats, over lures drawn by chance: the three bodies of the prototype
// with other heights, tails, hooks, ties and joints. For time, two draws of the closures each and one of the
// three starts, which most draws take; where the rule of compare.hpp speaks at all.

#include "support/swim_chains.hpp"
#include "water/swim/compare.hpp"
#include "water/swim/run.hpp"

#include <catch2/catch_test_macros.hpp>

using namespace evenfall;

namespace {

constexpr int lures = 50;
constexpr int draws = 2;

/// From low to high, another for each number and kind.
double between(double low, double high, int number, int kind) {
    const double u = 0.618033988749895 * number + 0.381966011250105 * kind * kind + 0.17 * kind;
    return low + (high - low) * (u - std::floor(u));
}

/// Lure `number` with this many segments.
testing::SwimBody lure(int number, int segments) {
    testing::SwimBody b = number % 3 == 0   ? testing::body_a140()
                          : number % 3 == 1 ? testing::body_b170()
                                            : testing::body_c230();
    b.half_height_m *= between(0.85, 1.1, number, 1);
    b.half_width_m *= between(0.9, 1.1, number, 2);
    b.swing_rad = between(10.0, 24.0, number, 3) * std::numbers::pi / 180.0;
    b.tie_m = between(0.0, 0.03, number, 4) * b.length_m;
    for (auto& hook : b.hooks)
        hook.drag_m2 *= between(0.5, 1.5, number, 5);
    for (auto& fin : b.fins)
        fin.height_to_m *= between(0.7, 1.2, number, 6);
    b.cuts_m.clear();
    for (int k = 1; k < segments; ++k)
        b.cuts_m.push_back(b.length_m * (0.30 + 0.55 * (k - 1) / std::max(1, segments - 2)));
    return b;
}

swim::Draws swims(const testing::SwimBody& body) {
    const swim::Chain chain = testing::chain_of(body);
    swim::Draws out;
    for (int k = 0; k < draws; ++k) {
        const swim::Motion motion(chain, swim::closures_of(k, chain.soft_tail), {});
        swim::Run run(chain, motion, swim::Start::in_turn);
        while (!run.done())
            run.work(10000);
        const swim::Cycle& c = run.cycle();
        const bool beats = c.way == swim::Way::swims;
        out.push_back({c.way, beats ? 1.0 / (c.period_s * motion.speed_m_s()) : 0.0, beats ? c.tail_m : 0.0});
    }
    return out;
}

struct Count {
    int more = 0, less = 0;
    void add(swim::Told told) {
        more += told == swim::Told::more ? 1 : 0;
        less += told == swim::Told::less ? 1 : 0;
    }
};

} // namespace

TEST_CASE("swim: more joints, wider joints beat faster, a tie further aft slower, where anything is told",
          "[swim]") {
    Count joints, wider, aft;
    for (int k = 0; k < lures; ++k) {
        INFO("lure " << k);
        const testing::SwimBody body = lure(k, 3);
        const swim::Draws before = swims(body);
        joints.add(swim::compare(before, swims(lure(k, 4))).beats);
        testing::SwimBody open = body, back = body;
        open.swing_rad += 6.0 * std::numbers::pi / 180.0;
        back.tie_m += 0.01;
        wider.add(swim::compare(before, swims(open)).beats);
        aft.add(swim::compare(before, swims(back)).beats);
    }
    CAPTURE(joints.more, joints.less, wider.more, wider.less, aft.more, aft.less);
    CHECK(joints.less == 0);
    CHECK(wider.less == 0);
    CHECK(aft.more == 0);
    // The rule is not mute.
    CHECK(joints.more >= 20);
    CHECK(wider.more >= 10);
    CHECK(aft.less >= 10);
}
