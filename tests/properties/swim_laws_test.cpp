// Laws of the towed chain's equations: energy, symmetry, scale, small motions, time step.

#include "support/plain_swim.hpp"
#include "support/swim_chains.hpp"
#include "support/swim_linear.hpp"
#include "water/swim/run.hpp"

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

using namespace evenfall;
using Catch::Approx;

namespace {

using Vector = Eigen::VectorXd;

std::vector<swim::Chain> bodies() {
    return {testing::chain_of(testing::body_a140()), testing::chain_of(testing::body_b170()),
            testing::chain_of(testing::body_c230())};
}

/// The same with joints as wide as there is an answer for.
std::vector<swim::Chain> open_bodies() {
    std::vector<swim::Chain> chains = bodies();
    for (swim::Chain& chain : chains) {
        for (swim::Joint& joint : chain.joints)
            joint.stop_rad = {swim::most_swing_rad, swim::most_swing_rad};
    }
    return chains;
}

/// Two and six segments, cut out of the same bodies.
std::vector<swim::Chain> all_counts() {
    std::vector<swim::Chain> chains = bodies();
    testing::SwimBody two = testing::body_a140();
    two.cuts_m = {0.07};
    testing::SwimBody six = testing::body_c230();
    six.cuts_m = {0.05, 0.085, 0.12, 0.155, 0.19};
    chains.push_back(testing::chain_of(two));
    chains.push_back(testing::chain_of(six));
    return chains;
}

/// From −1 to 1, another for each k.
double spread(int k) {
    return std::remainder(0.754877666 * k, 1.0) * 2.0;
}

struct Place {
    Vector q, rate;
    [[nodiscard]] swim::State state() const {
        swim::State s{};
        for (int k = 0; k < q.size(); ++k) {
            s[static_cast<std::size_t>(k)] = q(k);
            s[static_cast<std::size_t>(q.size() + k)] = rate(k);
        }
        return s;
    }
};

/// Joints up to past their stops, all turning.
Place random_place(const swim::Chain& chain, int number) {
    const auto n = static_cast<int>(chain.segments.size());
    const double reach = 1.1 * swim::widest_swing_rad(chain);
    Place p{Vector::Zero(n + 1), Vector::Zero(n + 1)};
    for (int i = 0; i <= n; ++i) {
        p.q(i) = i == 0 ? 0.02 * spread(17 * number)
                        : (i == 1 ? 0.0 : p.q(i - 1)) + reach * spread(number + 7 * i);
        p.rate(i) = (i == 0 ? 0.3 : 6.0) * spread(3 * number + 11 * i);
    }
    return p;
}

swim::Closures some_closures(int number) {
    return swim::closures_of(number, false);
}

} // namespace

TEST_CASE("swim: rates are those of the equations written plainly", "[swim]") {
    for (const swim::Chain& chain : all_counts()) {
        for (int k = 1; k <= 20; ++k) {
            const swim::Closures closures = some_closures(k);
            const swim::Motion motion(chain, closures, {0.4 + 0.03 * k, 1e-4, 5.0});
            const Place p = random_place(chain, k);
            const Vector plain = testing::PlainSwim(chain, closures, motion).accelerations(p.q, p.rate);
            const swim::State rates = motion.rates(p.state());
            for (int i = 0; i < plain.size(); ++i) {
                CHECK(rates[static_cast<std::size_t>(i)] == p.rate(i));
                CHECK(std::abs(rates[static_cast<std::size_t>(plain.size() + i)] - plain(i)) <
                      1e-9 * plain.norm());
            }
        }
    }
}

TEST_CASE("swim: energy changes by the power of tow, drag, wake, joints and line", "[swim]") {
    std::vector<swim::Chain> chains = bodies();
    for (const swim::Chain& open : open_bodies())
        chains.push_back(open);
    for (const swim::Chain& chain : chains) {
        for (int k = 1; k <= 20; ++k) {
            const swim::Closures closures = some_closures(k);
            const swim::Motion motion(chain, closures, {});
            const Place p = random_place(chain, k);
            const auto power = testing::PlainSwim(chain, closures, motion).power(p.q, p.rate);
            const double scale = std::abs(power.power_w) + std::abs(power.energy_rate_w);
            CHECK(std::abs(power.energy_rate_w - power.power_w) < 1e-7 * scale);
            CHECK(power.shed_w == Approx(-power.shed_energy_w).epsilon(1e-12));
            CHECK(power.shed_energy_w > 0.0);
        }
    }
}

TEST_CASE("swim: a start in the mirror swims in the mirror", "[swim]") {
    for (const swim::Chain& chain : bodies()) {
        const swim::Motion motion(chain, {}, {});
        swim::State one = swim::start_state(chain, swim::Start::in_turn), other = one;
        for (double& x : other)
            x = -x;
        for (int k = 0; k < 2000; ++k) {
            motion.advance(one, motion.step_s());
            motion.advance(other, motion.step_s());
        }
        for (std::size_t k = 0; k < one.size(); ++k)
            CHECK(std::abs(one[k] + other[k]) <= 1e-12);
    }
}

TEST_CASE("swim: small motions are the differences of the full equations", "[swim]") {
    for (swim::Chain chain : all_counts()) {
        for (swim::Joint& joint : chain.joints)
            joint.pin_radius_m = 0.0;
        const swim::Motion motion(chain, {}, {0.5, 0.0, 8.0});
        const auto small = testing::small_motions(chain, motion.matrices(), {}, 0.5, 8.0);
        const auto size = static_cast<std::size_t>(small.mass.rows());
        const Eigen::MatrixXd by_place = -small.mass.ldlt().solve(small.stiffness);
        const Eigen::MatrixXd by_rate = -small.mass.ldlt().solve(small.damping);
        constexpr double h = 1e-5;
        for (std::size_t k = 0; k < 2 * size; ++k) {
            swim::State up{}, down{};
            up[k] = h;
            down[k] = -h;
            const swim::State a = motion.rates(up), b = motion.rates(down);
            const auto column = static_cast<Eigen::Index>(k % size);
            const Eigen::MatrixXd& expected = k < size ? by_place : by_rate;
            for (std::size_t r = 0; r < size; ++r) {
                const double slope = (a[size + r] - b[size + r]) / (2.0 * h);
                // Drag across goes with |w|w: that much is left of it.
                CHECK(std::abs(slope - expected(static_cast<Eigen::Index>(r), column)) <
                      1e-4 * expected.col(column).norm());
            }
        }
    }
}

TEST_CASE("swim: without friction of water and joints twice the speed is twice as fast the same way",
          "[swim]") {
    for (swim::Chain chain : bodies()) {
        for (swim::Segment& s : chain.segments) {
            for (swim::Slice& slice : s.slices)
                slice.skin = 0.0;
        }
        const swim::Motion slow(chain, {}, {0.5, 0.0, 8.0}), fast(chain, {}, {1.0, 0.0, 8.0});
        CHECK(slow.step_s() == Approx(2.0 * fast.step_s()).epsilon(1e-12));
        swim::State a = swim::start_state(chain, swim::Start::in_turn), b = a;
        for (int k = 0; k < 600; ++k) {
            slow.advance(a, slow.step_s());
            fast.advance(b, fast.step_s());
        }
        for (std::size_t k = 0; k <= chain.segments.size(); ++k)
            CHECK(std::abs(a[k] - b[k]) < 1e-9);
        const auto at_slow = testing::small_motions(chain, slow.matrices(), {}, 0.5, 8.0);
        const auto at_fast = testing::small_motions(chain, slow.matrices(), {}, 1.0, 8.0);
        CHECK((at_fast.damping - 2.0 * at_slow.damping).norm() < 1e-12 * at_fast.damping.norm());
        CHECK((at_fast.stiffness - 4.0 * at_slow.stiffness).norm() < 1e-12 * at_fast.stiffness.norm());
    }
}

namespace {

/// The last half of 40 lengths, with time steps as the core takes them or 1/`halvings` of that.
swim::Cycle cycle_by(const swim::Chain& chain, int halvings) {
    const swim::Motion motion(chain, {}, {});
    swim::State state = swim::start_state(chain, swim::Start::in_turn);
    const double every = chain.length_m / 20.0;
    const int steps = static_cast<int>(std::ceil(every / motion.step_s())) * halvings;
    std::vector<swim::Sample> samples;
    for (int k = 0; k < 800; ++k) {
        for (int s = 0; s < steps; ++s)
            motion.advance(state, every / steps);
        swim::Sample sample;
        sample.y_m = state[0];
        std::copy_n(state.begin() + 1, chain.segments.size(), sample.heading_rad.begin());
        if (k >= 400) samples.push_back(sample);
    }
    return swim::cycle_of(chain, samples, every);
}

} // namespace

TEST_CASE("swim: half the time step moves beats by less than half a hundredth", "[swim]") {
    for (const swim::Chain& chain : bodies())
        CHECK(cycle_by(chain, 2).period_s == Approx(cycle_by(chain, 1).period_s).epsilon(0.005));
}

TEST_CASE("swim: joints as wide as there is an answer for stay near their stops and beat alike at half the "
          "time step",
          "[swim]") {
    int swimming = 0;
    for (const swim::Chain& chain : open_bodies()) {
        const swim::Cycle usual = cycle_by(chain, 1), half = cycle_by(chain, 2);
        CHECK(usual.way == half.way);
        swimming += usual.way == swim::Way::swims ? 1 : 0;
        if (usual.way == swim::Way::swims) CHECK(half.period_s == Approx(usual.period_s).epsilon(0.005));
        for (std::size_t i = 0; i + 1 < chain.segments.size(); ++i)
            CHECK(usual.joint_rad[i] < swim::most_swing_rad + 0.02);
    }
    CHECK(swimming >= 2); // the middle one leans
}

TEST_CASE("swim: twice the slices move beats by less than 2 %", "[swim]") {
    for (testing::SwimBody body : {testing::body_a140(), testing::body_b170(), testing::body_c230()}) {
        const auto beat = [&] {
            const swim::Chain chain = testing::chain_of(body);
            const swim::Motion motion(chain, {}, {});
            swim::Run run(chain, motion, swim::Start::in_turn);
            while (!run.done())
                run.work(10000);
            return run.cycle().period_s;
        };
        const double usual = beat();
        body.slices *= 2;
        CHECK(beat() == Approx(usual).epsilon(0.02));
    }
}
