#include "bench/lead/box_qp.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <random>

using namespace evenfall::lead;
using Catch::Matchers::WithinAbs;

namespace {

using Pair = std::array<double, 2>;

std::vector<LeadVariable> random_columns(std::mt19937_64& rng, std::size_t n) {
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    std::vector<LeadVariable> columns(n);
    for (LeadVariable& c : columns) {
        c.upper = 0.2 + unit(rng);
        c.bend = 0.1 + unit(rng);
        c.slope = unit(rng);
        c.row = {0.2 + unit(rng), 2.0 * unit(rng) - 1.0};
    }
    return columns;
}

Pair sum(const std::vector<LeadVariable>& columns, const std::vector<double>& h) {
    Pair s{};
    for (std::size_t i = 0; i < h.size(); ++i) {
        s[0] += columns[i].row[0] * h[i];
        s[1] += columns[i].row[1] * h[i];
    }
    return s;
}

double cost(const std::vector<LeadVariable>& columns, const std::vector<double>& h) {
    double f = 0.0;
    for (std::size_t i = 0; i < h.size(); ++i)
        f += 0.5 * columns[i].bend * h[i] * h[i] + columns[i].slope * h[i];
    return f;
}

} // namespace

TEST_CASE("the programme meets both sums inside the box for any number of columns") {
    std::mt19937_64 rng(20261101);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    for (int trial = 0; trial < 400; ++trial) {
        const auto columns = random_columns(rng, 2 + static_cast<std::size_t>(trial % 39));
        std::vector<double> inside;
        for (const LeadVariable& c : columns)
            inside.push_back(c.upper * unit(rng));
        const Pair target = sum(columns, inside);
        const auto h = minimise(columns, target);
        REQUIRE(h.has_value());
        const Pair reached = sum(columns, *h);
        CHECK_THAT(reached[0], WithinAbs(target[0], 1e-9));
        CHECK_THAT(reached[1], WithinAbs(target[1], 1e-9));
        for (std::size_t i = 0; i < h->size(); ++i) {
            CHECK((*h)[i] >= 0.0);
            CHECK((*h)[i] <= columns[i].upper);
        }
        CHECK(cost(columns, *h) <= cost(columns, inside) + 1e-9);
    }
}

TEST_CASE("no feasible neighbour is cheaper: the programme's answer against steps along the constraint's "
          "null space") {
    int neighbours = 0;
    std::mt19937_64 rng(7);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    for (int trial = 0; trial < 100; ++trial) {
        const auto columns = random_columns(rng, 5);
        std::vector<double> inside;
        for (const LeadVariable& c : columns)
            inside.push_back(c.upper * unit(rng));
        const auto h = minimise(columns, sum(columns, inside));
        REQUIRE(h.has_value());
        for (std::size_t i = 0; i < 5; ++i) {
            for (std::size_t j = i + 1; j < 5; ++j) {
                for (std::size_t k = j + 1; k < 5; ++k) {
                    // The direction that moves three columns and neither sum.
                    const Pair a = columns[i].row;
                    const Pair b = columns[j].row;
                    const Pair c = columns[k].row;
                    const double di = b[0] * c[1] - b[1] * c[0];
                    const double dj = c[0] * a[1] - c[1] * a[0];
                    const double dk = a[0] * b[1] - a[1] * b[0];
                    for (const double step : {1e-4, -1e-4}) {
                        auto moved = *h;
                        moved[i] += step * di;
                        moved[j] += step * dj;
                        moved[k] += step * dk;
                        const std::array<std::size_t, 3> touched{i, j, k};
                        const bool in_box = std::all_of(touched.begin(), touched.end(), [&](std::size_t at) {
                            return moved[at] >= 0.0 && moved[at] <= columns[at].upper;
                        });
                        if (!in_box) continue;
                        CHECK(cost(columns, moved) >= cost(columns, *h) - 1e-12);
                        ++neighbours;
                    }
                }
            }
        }
    }
    CHECK(neighbours > 100);
}

TEST_CASE("lower bounds shift the programme: the answer is that of the box moved to start from nothing") {
    std::mt19937_64 rng(2027);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    for (int trial = 0; trial < 200; ++trial) {
        const auto from_nothing = random_columns(rng, 2 + static_cast<std::size_t>(trial % 9));
        std::vector<double> inside;
        for (const LeadVariable& c : from_nothing)
            inside.push_back(c.upper * unit(rng));
        const Pair target = sum(from_nothing, inside);
        // h = g + lower costs ½·bend·g² + slope·g and a constant.
        auto columns = from_nothing;
        std::vector<double> lowers;
        for (LeadVariable& c : columns) {
            c.lower = 2.0 * unit(rng) - 1.5;
            c.upper += c.lower;
            c.slope -= c.bend * c.lower;
            lowers.push_back(c.lower);
        }
        const Pair moved = sum(columns, lowers);
        const Pair there{target[0] + moved[0], target[1] + moved[1]};
        const auto g = minimise(from_nothing, target);
        const auto h = minimise(columns, there);
        REQUIRE(g.has_value());
        REQUIRE(h.has_value());
        CHECK(reaches(columns, there, 1e-9));
        const auto far = nearest(from_nothing, {target[0] + 9.0, target[1] - 20.0});
        const auto far_moved = nearest(columns, {there[0] + 9.0, there[1] - 20.0});
        for (std::size_t i = 0; i < far.size(); ++i)
            CHECK_THAT(far_moved[i] - lowers[i], WithinAbs(far[i], 1e-5));
        for (std::size_t i = 0; i < h->size(); ++i)
            CHECK_THAT((*h)[i] - lowers[i], WithinAbs((*g)[i], 1e-6));
    }
}

TEST_CASE("a target beyond the box is refused, one on its corner is taken") {
    const std::vector<LeadVariable> columns{{1.0, 1.0, 0.0, {1.0, -1.0}}, {2.0, 1.0, 0.0, {1.0, 0.5}}};
    CHECK_FALSE(minimise(columns, {3.1, 0.0}).has_value());
    CHECK_FALSE(minimise(columns, {1.0, 0.6}).has_value());
    const auto corner = minimise(columns, {3.0, 0.0});
    REQUIRE(corner.has_value());
    CHECK_THAT((*corner)[0], WithinAbs(1.0, 1e-6));
    CHECK_THAT((*corner)[1], WithinAbs(2.0, 1e-6));
    CHECK_FALSE(minimise({}, {1.0, 0.0}).has_value());
    CHECK(minimise({}, {0.0, 0.0}).has_value());
}

TEST_CASE("parallel columns are no trouble: holes one above the other in x") {
    const std::vector<LeadVariable> columns{{1.0, 1.0, 0.0, {1.0, 0.5}}, {1.0, 2.0, 0.0, {1.0, 0.5}}};
    const auto h = minimise(columns, {1.2, 0.6});
    REQUIRE(h.has_value());
    CHECK_THAT((*h)[0] + (*h)[1], WithinAbs(1.2, 1e-9));
    CHECK_THAT((*h)[0], WithinAbs(0.8, 1e-6));
    CHECK_FALSE(minimise(columns, {1.2, 0.7}).has_value());
}

TEST_CASE("columns that move the second sum by nothing leave the first one met, or are refused, whatever "
          "rounding the second asks for") {
    for (const double asked : {0.0, 1e-13, -1e-13}) {
        const std::vector<LeadVariable> columns{{1.0, 1.0, 0.5, {2.0, 1e-18}}};
        if (const auto h = minimise(columns, {1.0, asked})) CHECK_THAT((*h)[0], WithinAbs(0.5, 1e-9));
    }
}

TEST_CASE("beyond the box the nearest is nearer than every point of a grid, and within it meets both sums") {
    std::mt19937_64 rng(99);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    for (int trial = 0; trial < 60; ++trial) {
        // Thin stock in a wide hole takes away from the weight: more wood comes out than lead goes in.
        auto columns = random_columns(rng, 3);
        if (trial % 2 == 1) columns[static_cast<std::size_t>(trial) % 3].row[0] *= -0.5;
        for (LeadVariable& c : columns)
            c.lower = trial % 4 == 0 ? 0.1 : 0.0;
        const Pair target{3.0 * unit(rng) - 0.5, 3.0 * unit(rng) - 1.5};
        const auto off = [&](const std::vector<double>& h) {
            const Pair s = sum(columns, h);
            return std::hypot(s[0] - target[0], s[1] - target[1]);
        };
        const auto h = nearest(columns, target);
        for (std::size_t i = 0; i < 3; ++i)
            CHECK((h[i] >= columns[i].lower && h[i] <= columns[i].upper));
        constexpr int steps = 40;
        for (int k = 0; k < steps * steps * steps; ++k) {
            const std::array<int, 3> at{k % steps, k / steps % steps, k / steps / steps};
            std::vector<double> grid;
            for (std::size_t i = 0; i < 3; ++i)
                grid.push_back(columns[i].lower +
                               (columns[i].upper - columns[i].lower) * at[i] / (steps - 1.0));
            if (off(grid) < off(h) - 1e-6) FAIL(off(grid) << " is nearer than " << off(h));
        }
        if (reaches(columns, target, 0.0)) CHECK(off(h) < 1e-6);
    }
}

TEST_CASE("the nearest needs no column, and none that moves anything") {
    CHECK(nearest({}, {1.0, 2.0}).empty());
    const std::vector<LeadVariable> idle{{1.0, 1.0, 0.5, {0.0, 0.0}}};
    CHECK_THAT(nearest(idle, {1.0, 2.0})[0], WithinAbs(0.0, 1e-9));
}
