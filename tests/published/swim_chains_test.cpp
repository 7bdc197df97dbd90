// Chains in flow against published and closed values. A body whose added mass is shed at a cut tail obeys the
// linear equations of a pipe that carries as much water, so pipes serve as cases. Two rods are asked of the
// core's own matrices, slice by slice; longer chains, which it does not have room for, of the same equations
// (support/swim_linear.hpp), which the core's are held to in properties/swim_laws_test.cpp.

#include "support/swim_linear.hpp"
#include "water/fall/added_mass.hpp"

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

using namespace evenfall;
using Catch::Approx;
using Eigen::MatrixXd;
using Eigen::VectorXd;

namespace {

/// Rods with water along them: by their matrices in closed form, with a tail factor.
struct Rods {
    std::vector<double> lengths_m;
    double water_kg_m, wood_kg_m;
    double tail_factor = 0.0;  ///< share of the water's momentum given back at the last edge
    double gravity_m_s2 = 0.0; ///< along the stream: they hang

    [[nodiscard]] int count() const { return static_cast<int>(lengths_m.size()); }
    [[nodiscard]] MatrixXd added() const {
        const int n = count();
        MatrixXd a = MatrixXd::Zero(2 * n, 2 * n);
        for (int i = 0; i < n; ++i) {
            const double l = lengths_m[static_cast<std::size_t>(i)];
            a(i, i) = water_kg_m * l;
            a(i, n + i) = a(n + i, i) = water_kg_m * l * l / 2.0;
            a(n + i, n + i) = water_kg_m * std::pow(l, 3) / 3.0;
        }
        return a;
    }
    [[nodiscard]] MatrixXd shed() const {
        VectorXd row = VectorXd::Zero(2 * count());
        row(count() - 1) = 1.0;
        row(2 * count() - 1) = lengths_m.back();
        return (1.0 - tail_factor) * water_kg_m * row * row.transpose();
    }
    /// Held at the fore hinge, with a spring at each hinge, the first twice or once as stiff as the others.
    [[nodiscard]] testing::SmallMotions motions(double u, double spring, double first) const {
        const int n = count();
        testing::SmallMotions m = testing::water_motions(lengths_m, added(), shed(), u);
        const auto places = testing::hinge_places(lengths_m);
        for (int i = 0; i < n; ++i) {
            const double l = lengths_m[static_cast<std::size_t>(i)];
            const VectorXd &a = places[static_cast<std::size_t>(i)], e = VectorXd::Unit(n + 1, i + 1);
            m.mass +=
                wood_kg_m * (l * a * a.transpose() + l * l / 2.0 * (a * e.transpose() + e * a.transpose()) +
                             std::pow(l, 3) / 3.0 * e * e.transpose());
            const VectorXd turn = i == 0 ? VectorXd(e) : VectorXd(e - VectorXd::Unit(n + 1, i));
            m.stiffness += (i == 0 ? first : 1.0) * spring * turn * turn.transpose();
            // Its weight is lifted where any rod above it turns, and by half of its own length.
            const double weight_n = gravity_m_s2 * (water_kg_m + wood_kg_m) * l;
            for (int j = 0; j < i; ++j)
                m.stiffness(j + 1, j + 1) += weight_n * lengths_m[static_cast<std::size_t>(j)];
            m.stiffness(i + 1, i + 1) += weight_n * l / 2.0;
        }
        return m.held();
    }
};

Rods equal_rods(int count, double length_m, double water_kg_m, double wood_kg_m, double tail_factor = 0.0) {
    return {std::vector<double>(static_cast<std::size_t>(count), length_m), water_kg_m, wood_kg_m,
            tail_factor};
}

bool is_unstable(const testing::SmallMotions& m) {
    return m.roots().front().real() > 1e-7;
}

bool flutters(const testing::SmallMotions& m) {
    const auto root = m.roots().front();
    return root.real() > 1e-7 && std::abs(root.imag()) > 1e-6 * std::abs(root);
}

/// The least speed that is unstable, looked for upwards and then between.
template <class Motions>
double critical(const Motions& at, double from, double step) {
    double u = from;
    while (!is_unstable(at(u)))
        u += step;
    double low = u - step, high = u;
    for (int k = 0; k < 40; ++k)
        (is_unstable(at(0.5 * (low + high))) ? high : low) = 0.5 * (low + high);
    return high;
}

/// A cantilevered pipe of length 1, EI 1, (water + pipe) 1 a metre, by rods; β the water's share of it.
double pipe_flutter(int count, double beta) {
    const Rods rods = equal_rods(count, 1.0 / count, beta, 1.0 - beta);
    // u = U·L·√(M/EI)
    return critical([&](double u) { return rods.motions(u / std::sqrt(beta), count, 2.0); }, 1.0, 0.05);
}

} // namespace

TEST_CASE(
    "two equal rods and springs with water along them flutter at U·sqrt(Ml/k) = 2.123 (Païdoussis 1998, "
    "Fluid-Structure Interactions 1, p. 185, after Sugiyama and Noda 1981; its β read as 0.5)",
    "[swim]") {
    const Rods rods = equal_rods(2, 1.0, 0.5, 0.5);
    const double u =
        critical([&](double x) { return rods.motions(x / std::sqrt(0.5), 1.0, 1.0); }, 0.1, 0.05);
    CHECK(u == Approx(2.123).epsilon(5e-4));
}

namespace {

/// Two hinges, L = 1, the upper rod half of it and the lower one half as long as that (e = ½: a quarter of L
/// above the first hinge is counted with them); water and pipe 1 a metre, β the water's share.
Rods hanging_rods(double beta, double gravity_m_s2) {
    return {{0.5, 0.25}, beta, 1.0 - beta, 0.0, gravity_m_s2};
}

} // namespace

TEST_CASE("two hanging rods without springs diverge at the Froude number 1/sqrt(2 beta) (Païdoussis 1998, p. "
          "189, after Païdoussis and Deksnis 1970)",
          "[swim]") {
    for (const double beta : {0.2, 0.5}) {
        const auto at = [&](double u) { return hanging_rods(beta, 1.0).motions(u, 0.0, 0.0); };
        const double u = critical(at, 0.02, 0.02);
        CHECK(u == Approx(1.0 / std::sqrt(2.0 * beta)).epsilon(1e-5));
        CHECK(!flutters(at(u)));
    }
}

TEST_CASE(
    "two hanging rods with e = 1/2 and γ = 100 first flutter with β below 0.195 and first diverge above "
    "(Païdoussis 1998, p. 188)",
    "[swim]") {
    constexpr double gamma = 100.0, spring = 2.0; // EI = 1: N·EI/L
    const auto first_flutters = [](double beta) {
        const auto at = [&](double u) {
            return hanging_rods(beta, gamma).motions(u / std::sqrt(beta), spring, 1.0);
        };
        return flutters(at(critical(at, 0.5, 0.05)));
    };
    CHECK(first_flutters(0.193));
    CHECK(!first_flutters(0.197));
}

TEST_CASE("the core's matrices, slice by slice, are those of rods in closed form", "[swim]") {
    constexpr int slices = 400;
    swim::Chain chain;
    chain.water_kg_m3 = 1000.0;
    chain.length_m = 2.0;
    chain.segments.resize(2);
    chain.joints.resize(1);
    for (swim::Segment& s : chain.segments) {
        s.length_m = 1.0;
        for (int k = 0; k < slices; ++k)
            s.slices.push_back({(k + 0.5) / slices, 1.0 / slices, 0.1, 0.5, 0.0, 0.0});
    }
    for (const double factor : {0.0, 0.3}) {
        swim::Closures closures;
        closures.added = 1.0;
        closures.edge = factor;
        const swim::Matrices m = swim::matrices_of(chain, closures, {1.0, 0.27});
        const Rods rods = equal_rods(2, 1.0, 0.5, 0.5, factor);
        CHECK((testing::dense(m.added, 2) - rods.added()).norm() < 1e-5);
        CHECK(testing::dense(m.shed[0], 2).norm() == 0.0);
        CHECK((testing::dense(m.shed[1], 2) - rods.shed()).norm() < 1e-12);
    }
}

TEST_CASE(
    "a cantilever by 20 rods and springs has a beam's frequencies to 1 %, by 10 to 2 % (Païdoussis 1998, p. "
    "188, which does not say how many; here the lowest two)",
    "[swim]") {
    constexpr std::array beam{3.5160, 22.0345}; // squares of the roots of 1 + cos·cosh = 0
    const auto worst = [&](int count) {
        const Rods rods = equal_rods(count, 1.0 / count, 0.0, 1.0);
        const testing::SmallMotions m = rods.motions(0.0, count, 2.0);
        const Eigen::GeneralizedSelfAdjointEigenSolver<MatrixXd> solver(m.stiffness, m.mass);
        double off = 0.0;
        for (std::size_t k = 0; k < beam.size(); ++k)
            off =
                std::max(off, std::abs(std::sqrt(solver.eigenvalues()(static_cast<int>(k))) / beam[k] - 1.0));
        return off;
    };
    CHECK(worst(20) < 0.010);
    CHECK(worst(10) < 0.020);
}

TEST_CASE("a cantilevered pipe flutters at u = 5.6 with β 0.2 (Gregory and Païdoussis 1966, in Païdoussis "
          "1998, pp. "
          "112 to 114)",
          "[swim]") {
    CHECK(pipe_flutter(30, 0.2) == Approx(5.6).margin(0.05));
}

TEST_CASE("a cantilevered pipe flutters at u = 9.3 with β 0.5 (from memory)", "[swim]") {
    CHECK(pipe_flutter(30, 0.5) == Approx(9.3).margin(0.05));
}

TEST_CASE("a cantilevered pipe flutters at u = 7.0 beside its first jump, β 0.295 (Païdoussis 1998, p. 112; "
          "where it rises by 0.05 for each 0.001 of β, so that β is held)",
          "[swim]") {
    CHECK(pipe_flutter(30, 0.295 - 0.010) < 7.0);
    CHECK(pipe_flutter(30, 0.295) > 7.0);
    CHECK(pipe_flutter(30, 0.295) < 7.5);
    CHECK(pipe_flutter(30, 0.300) > 8.0); // the jump
}

TEST_CASE("a cantilevered pipe's flutter jumps from about 11 to 12.8 near β 0.69 (Païdoussis 1998, p. 114)",
          "[swim]") {
    CHECK(pipe_flutter(30, 0.69) == Approx(11.0).epsilon(0.02));
    CHECK(pipe_flutter(30, 0.70) == Approx(12.8).epsilon(0.02));
}

TEST_CASE("a cantilevered cylinder in flow along it diverges where cos u = −(1 − f)/f (own solution of the "
          "equation of "
          "Païdoussis 1966, from memory)",
          "[swim]") {
    constexpr int count = 60;
    for (const double f : {1.0, 0.9, 0.8, 0.7}) {
        const Rods rods = equal_rods(count, 1.0 / count, 1.0, 0.0, f);
        // Divergence: where the stiffness is singular.
        const auto sign = [&](double u) { return rods.motions(u, count, 2.0).stiffness.determinant() > 0.0; };
        double low = 1.0, high = 2.5;
        REQUIRE(sign(low));
        REQUIRE(!sign(high));
        for (int k = 0; k < 40; ++k)
            (sign(0.5 * (low + high)) ? low : high) = 0.5 * (low + high);
        CHECK(low == Approx(std::acos(-(1.0 - f) / f)).epsilon(2e-4));
    }
}

TEST_CASE(
    "an ellipsoid at an angle is turned by Munk's moment (Lamb, Hydrodynamics, Art. 114, from memory: the "
    "difference of its added masses; of assembly alone)",
    "[swim]") {
    // 170 by 20 wide by 32 high: 1.4384 of ρVuw.
    const auto shares = fall::ellipsoid_shares(0.085, 0.016, 0.010); // heave of the turned one: to the side
    CHECK(shares.heave - shares.surge == Approx(1.4384).epsilon(5e-5));
    constexpr double displaced_kg = 1.0;
    constexpr int slices = 200;
    swim::Chain chain;
    chain.water_kg_m3 = 1000.0;
    chain.length_m = 0.17;
    chain.segments.resize(2);
    chain.joints.resize(1);
    chain.segments[1].length_m = 1e-3; // next to nothing behind it
    chain.segments[1].mass_kg = 1e-9;
    chain.segments[1].inertia_kg_m2 = 1e-12;
    chain.segments[1].slices.push_back({0.0, 1e-6, 0.01, 1e-9, 0.0, 0.0});
    swim::Segment& s = chain.segments[0];
    s.length_m = 0.17;
    s.surge_kg = shares.surge * displaced_kg;
    for (int k = 0; k < slices; ++k) {
        const double x = (k + 0.5) / slices;
        s.slices.push_back({0.17 * x, 0.17 / slices, 0.032,
                            6.0 * x * (1.0 - x) * shares.heave * displaced_kg / 0.17, 0.0, 0.0});
    }
    swim::Closures all_given_back;
    all_given_back.recover = 1.0;
    all_given_back.edge = 1.0;
    all_given_back.added = 1.0;
    const swim::Matrices m = swim::matrices_of(chain, all_given_back, {1.0, 0.27});
    CHECK(m.added[0][0] == Approx(shares.heave * displaced_kg).epsilon(1e-4));
    CHECK(m.shed[0][0][0] == 0.0);
    // At a small angle to the stream the moment is that times speed squared.
    const auto small = testing::small_motions(chain, m, all_given_back, 0.5, 8.0);
    CHECK(-small.stiffness(1, 1) / (0.5 * 0.5) == Approx(1.4384).epsilon(1e-4));
}
