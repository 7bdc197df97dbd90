#include "materials/wire_strength.hpp"

#include "base/trade.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>

using namespace evenfall;
using Catch::Matchers::WithinRel;
using wire::PinAndWire;
using wire::Temper;
using wire::Weakest;

TEST_CASE("each part of a hinge gives way at the load a hand sum says", "[wire]") {
    PinAndWire hold;
    const double line_n = units::n_from_lbf(40.0);
    const auto s = wire::strength(hold, line_n);
    // 2 mm hole, 20 mm deep, 0.43 of 7 MPa: 125.6637 mm² · 3.01 MPa.
    CHECK_THAT(s.pull_out_n, WithinRel(378.24776, 1e-7));
    // 20 MPa on 1.2 × 10 mm.
    CHECK_THAT(s.wood_n, WithinRel(240.0, 1e-9));
    // A pin of 1.2 mm: of the table's 1896 and 1827 MPa at 1.041 and 1.295 mm, 1852.807 MPa. Two sections of
    // 1.130973 mm² at 0.6 of that shear at 2514.5705 N; on a span of 5 mm it bends all through where F·5/4 is
    // 1852.807·1.728/6 = 533.60844 N·mm.
    CHECK_THAT(s.pin_shear_n, WithinRel(2514.5705, 1e-7));
    CHECK_THAT(s.pin_bend_n, WithinRel(426.88675, 1e-7));
    // A strip of 3 × 10 mm on two planes, 3.01 MPa.
    CHECK_THAT(s.wall_n, WithinRel(180.6, 1e-9));
    CHECK(s.weakest == Weakest::wall_before_pin);
    CHECK_THAT(s.safety, WithinRel(180.6 / line_n, 1e-9));
}

TEST_CASE("the weakest link is the least of all, and a hanger has no pin to break", "[wire]") {
    PinAndWire hold;
    hold.has_pin = false;
    hold.glued_m = 60e-3;
    hold.wire_m = 0.6e-3;
    hold.temper = Temper::soft;
    const auto s = wire::strength(hold, 100.0);
    CHECK(s.weakest == Weakest::eye_opens);
    CHECK(s.least_n == std::min(s.eye_n, s.pull_out_n));
    CHECK(s.pin_shear_n == 0.0);
}

TEST_CASE("thicker wire, deeper glue and two eyes never hold less; annealed wire holds less than spring wire",
          "[wire]") {
    PinAndWire hold;
    const auto base = wire::strength(hold, 100.0);
    PinAndWire thick = hold;
    thick.wire_m = 1.2e-3;
    CHECK(wire::strength(thick, 100.0).eye_n > base.eye_n);
    PinAndWire deep = hold;
    deep.glued_m = 30e-3;
    CHECK(wire::strength(deep, 100.0).pull_out_n > base.pull_out_n);
    PinAndWire two = hold;
    two.eyes = 2;
    CHECK(wire::strength(two, 100.0).eye_n > base.eye_n);
    CHECK(wire::strength(two, 100.0).eye_n < 2.0 * base.eye_n);
    PinAndWire soft = hold;
    soft.temper = Temper::soft;
    CHECK(wire::strength(soft, 100.0).eye_n < 0.5 * base.eye_n);
}

TEST_CASE("half way between two sizes of the wire table the strength is half way between theirs", "[wire]") {
    // 0.020, 0.025, 0.032, 0.041 and 0.051 in; least strength in MPa.
    constexpr std::array<std::pair<double, double>, 5> rows{
        {{0.508, 2068}, {0.635, 2006}, {0.813, 1944}, {1.041, 1896}, {1.295, 1827}}};
    for (std::size_t k = 1; k < rows.size(); ++k) {
        const double middle_mm = 0.5 * (rows[k - 1].first + rows[k].first);
        CHECK_THAT(wire::tensile(Temper::spring, 1e-3 * middle_mm).low_pa,
                   WithinRel(0.5e6 * (rows[k - 1].second + rows[k].second), 1e-9));
    }
}

TEST_CASE("tensile figures run without a leap between the table's sizes and stay level beyond them",
          "[wire]") {
    double before = wire::tensile(Temper::spring, 0.3e-3).low_pa;
    for (double d = 0.3e-3; d < 1.6e-3; d += 1e-6) {
        const auto range = wire::tensile(Temper::spring, d);
        CHECK(range.low_pa <= before);
        CHECK(before - range.low_pa < 2e6);
        CHECK(range.high_pa > range.low_pa);
        before = range.low_pa;
    }
}
