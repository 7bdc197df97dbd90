// Regression values of a prototype of the swimming chain, of three bodies; not published truth.

#include "support/swim_chains.hpp"
#include "support/swim_linear.hpp"
#include "water/swim/run.hpp"

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

using namespace evenfall;
using Catch::Approx;

namespace {

struct Body {
    const char* name;
    testing::SwimBody body;
    double mass_g;
    std::array<double, 5> added; ///< 00, 01, 02 (W, turning, next W), 11, 22
    std::array<double, 2> shed;  ///< 00, last
    double drag_n;
    std::vector<std::complex<double>> roots; ///< × length/speed
    std::vector<double> path;                ///< y and headings a length on
    double beats_per_m, tail_mm, nose_mm, head_deg;
    std::vector<double> joints_deg, lag_deg;
};

using namespace std::complex_literals;

std::vector<Body> bodies() {
    return {{"A140",
             testing::body_a140(),
             35.300000,
             {.0219286649, 5.76142866e-4, .00232888594, 1.81207248e-5, .0196870928},
             {.0121122138, 1.58516615e-4},
             .037198778,
             {2.695212 + 1.602407i, 2.092144, -0.017875, -0.874366, -4.065956 + 1.179826i, -6.301682},
             {-.014173052, .293423572, -.090975498, .142210612},
             2.04,
             55.4,
             32.8,
             32.6,
             {22.3, 22.2},
             {42, 36}},
            {"B170",
             testing::body_b170(),
             60.620879,
             {.0246343805, 5.96892897e-4, .00369676613, 1.74440584e-5, .0265818759},
             {5.31995890e-4, .00228808368},
             .047534951,
             {4.549966 + 2.301441i, 4.191696, -0.025585, -0.507236, -2.811814, -5.373394 + 1.889761i,
              -7.207760 + 1.515697i},
             {.010761002, -.203088483, .111574440, -.201879754, -.000840513},
             1.16,
             93.7,
             81.2,
             43.9,
             {18.3, 18.3, 18.1},
             {25, 26, 27}},
            {"C230",
             testing::body_c230(),
             144.689469,
             {.0452046758, .00130938722, .00736397977, 4.56197253e-5, .0542706400},
             {1.89756490e-4, .00367588458},
             .072360478,
             {5.846389 + 2.944273i, 4.706192 + 1.055293i, -0.035279, -0.460984, -2.844407},
             {-.012236971, .185253332, -.076691613, .185623353, -.073532869, -.003350723},
             1.12,
             79.5,
             48.8,
             24.8,
             {15.2, 15.3, 15.4, 15.1},
             {30, 28, 28, 29}}};
}

} // namespace

TEST_CASE("swim prototype: masses, water and drag of three bodies", "[swim]") {
    for (const Body& b : bodies()) {
        INFO(b.name);
        const swim::Chain chain = testing::chain_of(b.body);
        const swim::Motion motion(chain, {}, {});
        const std::size_t n = chain.segments.size();
        double mass = 0.0;
        for (const swim::Segment& s : chain.segments)
            mass += s.mass_kg;
        CHECK(1e3 * mass == Approx(b.mass_g).epsilon(2e-6)); // the prototype's A140 is 1.2e-6 heavier
        const swim::Matrix& m = motion.matrices().added;
        CHECK(m[0][0] == Approx(b.added[0]).epsilon(1e-6));
        CHECK(m[0][n] == Approx(b.added[1]).epsilon(1e-6));
        CHECK(m[0][1] == Approx(b.added[2]).epsilon(1e-6));
        CHECK(m[n][n] == Approx(b.added[3]).epsilon(1e-6));
        CHECK(m[1][1] == Approx(b.added[4]).epsilon(1e-6));
        double first = 0.0, last = 0.0;
        for (const swim::Matrix& shed : motion.matrices().shed) {
            first += shed[0][0];
            last += shed[2 * n - 1][2 * n - 1];
        }
        // At a joint the prototype took the height at the cut, here it is the mean of both slices.
        CHECK(first == Approx(b.shed[0]).epsilon(2e-6));
        CHECK(last == Approx(b.shed[1]).epsilon(1e-6));
        CHECK(motion.drag_n() == Approx(b.drag_n).epsilon(5e-6));
    }
}

TEST_CASE("swim prototype: growth of small motions of three bodies", "[swim]") {
    for (const Body& b : bodies()) {
        INFO(b.name);
        const swim::Chain chain = testing::chain_of(b.body);
        std::vector<std::complex<double>> roots;
        for (const auto& root :
             testing::small_motions(chain, swim::matrices_of(chain, {}), {}, 0.5, 8.0).roots()) {
            if (root.imag() >= 0.0) roots.push_back(root * chain.length_m / 0.5);
        }
        // The prototype's own differences of its full equations were good to 1e-5.
        for (std::size_t k = 0; k < b.roots.size(); ++k)
            CHECK(std::abs(roots[k] - b.roots[k]) < 5e-5);
    }
}

TEST_CASE("swim prototype: path of three bodies over their first length", "[swim]") {
    for (const Body& b : bodies()) {
        INFO(b.name);
        const swim::Chain chain = testing::chain_of(b.body);
        const swim::Motion motion(chain, {}, {});
        swim::State state = swim::start_state(chain, swim::Start::tail_turn);
        for (int k = 0; k < 499; ++k)
            motion.advance(state, chain.length_m / (500.0 * 0.5));
        for (std::size_t k = 0; k < b.path.size(); ++k)
            CHECK(std::abs(state[k] - b.path[k]) < 1e-6);
    }
}

namespace {

/// The last half of 80 lengths, from joints bent in turn.
swim::Cycle settled(const swim::Chain& chain) {
    constexpr int samples_a_length = 40, lengths = 80;
    const swim::Motion motion(chain, {}, {});
    const double every_s = chain.length_m / (samples_a_length * motion.speed_m_s());
    const int steps = static_cast<int>(std::ceil(every_s / motion.step_s()));
    swim::State state = swim::start_state(chain, swim::Start::in_turn);
    std::vector<swim::Sample> samples;
    for (int k = 0; k < lengths * samples_a_length; ++k) {
        for (int s = 0; s < steps; ++s)
            motion.advance(state, every_s / steps);
        if (2 * k < lengths * samples_a_length) continue;
        swim::Sample sample;
        sample.y_m = state[0];
        std::copy_n(state.begin() + 1, chain.segments.size(), sample.heading_rad.begin());
        samples.push_back(sample);
    }
    return swim::cycle_of(chain, samples, every_s);
}

} // namespace

TEST_CASE("swim prototype: beats, swings and lags of three bodies", "[swim]") {
    constexpr double degree = std::numbers::pi / 180.0;
    for (const Body& b : bodies()) {
        INFO(b.name);
        const swim::Cycle c = settled(testing::chain_of(b.body));
        REQUIRE(c.way == swim::Way::swims);
        CHECK(1.0 / (0.5 * c.period_s) == Approx(b.beats_per_m).epsilon(0.03));
        CHECK(c.head_rad == Approx(b.head_deg * degree).epsilon(0.03));
        CHECK(1e3 * c.tail_m == Approx(b.tail_mm).epsilon(0.08));
        CHECK(1e3 * c.nose_m == Approx(b.nose_mm).epsilon(0.08));
        for (std::size_t i = 0; i < b.joints_deg.size(); ++i) {
            CHECK(c.joint_rad[i] == Approx(b.joints_deg[i] * degree).epsilon(0.03));
            CHECK(c.at_stop[i]);
            CHECK(std::abs(c.lag_rad[i + 1] - b.lag_deg[i] * degree) < 3.0 * degree);
        }
    }
}

TEST_CASE("swim: a run that stops early has the beats of one of 80 lengths to 1 %, its swings to 15 %",
          "[swim]") {
    for (const Body& b : bodies()) {
        INFO(b.name);
        const swim::Chain chain = testing::chain_of(b.body);
        const swim::Motion motion(chain, {}, {});
        swim::Run run(chain, motion, swim::Start::in_turn);
        while (!run.done())
            run.work(10000);
        const swim::Cycle longer = settled(chain);
        CHECK(run.cycle().period_s == Approx(longer.period_s).epsilon(0.01));
        CHECK(run.cycle().tail_m == Approx(longer.tail_m).epsilon(0.15));
    }
}
