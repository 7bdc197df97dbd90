#include "body/curve.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using shape::Curve;

namespace {

struct PchipRow {
    int set;
    double x;
    double value;
    double slope;
};
constexpr PchipRow pchip[] = {
#include "reference/pchip_table.inc"
};

// The same lists stand in tests/reference/make_pchip_table.py.
const std::vector<document::CurvePoints> sets{
    {{0.0, 0.0}, {1.0, 2.0}, {2.5, 2.5}, {3.0, 2.5}, {5.0, 1.0}},
    {{0.0, 1.0}, {0.1, -1.0}, {2.0, -1.5}, {2.2, 4.0}},
    {{0.0, 0.0}, {1.0, 1.0}, {2.0, 0.9}},
    {{0.0, 0.0}, {1.0, 0.1}, {2.0, 5.0}, {3.0, 5.1}},
    {{0.0, 0.0}, {3.0, 0.5}, {4.0, -8.0}},
};

} // namespace

TEST_CASE("a curve has the values and slopes of SciPy's PchipInterpolator (frozen table)", "[shape]") {
    // Both sides work in doubles from numbers of order ten: rounding alone is left.
    for (const PchipRow& row : pchip) {
        const Curve curve(sets[static_cast<std::size_t>(row.set)]);
        const shape::CurveValue here = curve.at(row.x);
        INFO("set " << row.set << " x " << row.x);
        CHECK_THAT(here.value, WithinAbs(row.value, 1e-13));
        CHECK_THAT(here.slope, WithinAbs(row.slope, 1e-12));
    }
}

TEST_CASE("a curve of one point is a constant, of two a straight line", "[shape]") {
    const Curve one({{0.3, 2.6}});
    for (const double x : {-1.0, 0.0, 0.3, 7.0}) {
        CHECK(one.at(x).value == 2.6);
        CHECK(one.at(x).slope == 0.0);
    }
    const Curve two({{0.0, 1.0}, {2.0, 5.0}});
    CHECK_THAT(two.at(0.5).value, WithinAbs(2.0, 1e-15));
    CHECK_THAT(two.at(0.5).slope, WithinAbs(2.0, 1e-15));
}

TEST_CASE("a curve keeps its end value off its ends", "[shape]") {
    const Curve curve({{1.0, 3.0}, {2.0, 4.0}, {3.0, 4.5}});
    CHECK(curve.at(0.0).value == 3.0);
    CHECK(curve.at(0.0).slope == 0.0);
    CHECK(curve.at(9.0).value == 4.5);
}

TEST_CASE("a curve passes through its points and stays between neighbours", "[shape]") {
    for (const document::CurvePoints& points : sets) {
        const Curve curve(points);
        for (std::size_t k = 0; k + 1 < points.size(); ++k) {
            const double low = std::min(points[k].value, points[k + 1].value);
            const double high = std::max(points[k].value, points[k + 1].value);
            CHECK_THAT(curve.at(points[k].x_m).value, WithinAbs(points[k].value, 1e-14));
            for (int i = 0; i <= 50; ++i) {
                const double x = points[k].x_m + (points[k + 1].x_m - points[k].x_m) * i / 50.0;
                CHECK(curve.at(x).value >= low - 1e-12);
                CHECK(curve.at(x).value <= high + 1e-12);
            }
        }
    }
}

TEST_CASE("a piece told from another origin is the same curve", "[shape]") {
    const Curve curve(sets[1]);
    const shape::Cubic piece = curve.piece_at(1.0, 0.7);
    for (const double x : {0.15, 0.9, 1.9}) {
        CHECK_THAT(shape::evaluated(piece, x - 0.7).value, WithinAbs(curve.at(x).value, 1e-13));
        CHECK_THAT(shape::evaluated(piece, x - 0.7).slope, WithinAbs(curve.at(x).slope, 1e-13));
    }
}
