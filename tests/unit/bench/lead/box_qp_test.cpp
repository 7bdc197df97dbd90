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
        for (const bool most : {false, true}) {
            const auto far = extreme(from_nothing, target[0], most);
            const auto far_moved = extreme(columns, there[0], most);
            for (std::size_t i = 0; i < far.size(); ++i)
                CHECK_THAT(far_moved[i] - lowers[i], WithinAbs(far[i], 1e-9));
        }
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

TEST_CASE("the extreme moments at a given weight are the best and the worst of every "
          "corner-and-one-part-full filling (exhaustive)") {
    std::mt19937_64 rng(99);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    for (int trial = 0; trial < 50; ++trial) {
        // Thin stock in a wide hole takes away from the weight: more wood comes out than lead goes in.
        auto columns = random_columns(rng, 6);
        if (trial % 2 == 1) columns[static_cast<std::size_t>(trial) % 6].row[0] *= -0.5;
        double least_weight = 0.0;
        double most_weight = 0.0;
        for (const LeadVariable& c : columns)
            (c.row[0] > 0.0 ? most_weight : least_weight) += c.row[0] * c.upper;
        const double target = least_weight + (most_weight - least_weight) * unit(rng);
        double best = -1e9;
        double worst = 1e9;
        for (unsigned mask = 0; mask < 64u; ++mask) {
            for (std::size_t part = 0; part < 6; ++part) {
                std::vector<double> h(6, 0.0);
                for (std::size_t i = 0; i < 6; ++i)
                    h[i] = i != part && ((mask >> i) & 1u) ? columns[i].upper : 0.0;
                h[part] = (target - sum(columns, h)[0]) / columns[part].row[0];
                if (h[part] < 0.0 || h[part] > columns[part].upper) continue;
                best = std::max(best, sum(columns, h)[1]);
                worst = std::min(worst, sum(columns, h)[1]);
            }
        }
        for (const bool most : {true, false}) {
            const auto h = extreme(columns, target, most);
            CHECK_THAT(sum(columns, h)[0], WithinAbs(target, 1e-12));
            CHECK_THAT(sum(columns, h)[1], WithinAbs(most ? best : worst, 1e-9));
        }
    }
}
