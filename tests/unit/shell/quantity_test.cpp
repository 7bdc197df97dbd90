#include "widgets/quantity.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <cmath>

using namespace evenfall::shell::widgets;
using Catch::Matchers::WithinRel;

TEST_CASE("every unit of every quantity comes back to the same amount", "[shell][quantity]") {
    for (int q = 0; q <= static_cast<int>(Quantity::number); ++q) {
        for (const Unit unit : units_of(static_cast<Quantity>(q))) {
            CAPTURE(q, static_cast<int>(unit));
            // Two conversions, each a few roundings; Fahrenheit adds and takes away 32.
            CHECK_THAT(from_unit(to_unit(0.137, unit), unit), WithinRel(0.137, 1e-13));
        }
    }
}

TEST_CASE("numbers are written with a true minus sign, which zero has not", "[shell][quantity]") {
    CHECK(number_text(-0.0031, Unit::mm) == "−3.1");
    CHECK(number_text(-0.00001, Unit::mm) == "0.0");
    CHECK(value_text(-0.05235987755982988, Unit::degree) == "−3.0°");
    CHECK(value_text(0.0158, Unit::mm) == "15.8\u00a0mm");
    CHECK(value_text(0.034925, Unit::inch_fraction) == "1 3/8\u00a0in");
    CHECK(value_text(0.3048 / 1.9, Unit::s_per_ft) == "1.90\u00a0s/ft");
    CHECK(value_text(0.0001, Unit::micrometre) == "100\u00a0µm");
    CHECK(value_text(0.0000254, Unit::mil) == "1.0\u00a0mil");
    CHECK(evenfall::shell::widgets::number_text(2.5, Unit::one, 1) == "2.5");
}

TEST_CASE("what does not fall has no time per length", "[shell][quantity]") {
    CHECK(std::isinf(to_unit(0.0, Unit::s_per_ft)));
    CHECK(std::isinf(to_unit(-0.1, Unit::s_per_m)));
    CHECK(number_text(0.0, Unit::s_per_ft) == "–");
}

TEST_CASE("a fall whose doubt reaches standing still is told so, and never as a time without end",
          "[shell][quantity]") {
    for (const Unit unit : units_of(Quantity::fall)) {
        CHECK(fall_end_text(0.0009, unit) == "at rest");
        CHECK(fall_end_text(0.0, unit) == "at rest");
        CHECK(fall_end_text(-0.02, unit) == "at rest");
        CHECK(fall_end_text(0.16, unit) == number_text(0.16, unit));
    }
}

TEST_CASE("each quantity has a unit of its own kind, whatever is set", "[shell][quantity]") {
    for (const auto& set : {evenfall::units::metric, evenfall::units::inches}) {
        const Units units(set);
        for (int q = 0; q <= static_cast<int>(Quantity::time); ++q) {
            const auto fitting = units_of(static_cast<Quantity>(q));
            const Unit unit = units.of(static_cast<Quantity>(q));
            CHECK(std::find(fitting.begin(), fitting.end(), unit) != fitting.end());
        }
    }
    CHECK(Units(evenfall::units::inches).of(Quantity::length) == Unit::inch_fraction);
    CHECK(Units(evenfall::units::inches).of(Quantity::thickness) == Unit::mil);
    CHECK(Units(evenfall::units::inches).of(Quantity::depth) == Unit::foot);
    CHECK(Units(evenfall::units::inches).of(Quantity::mass) == Unit::gram);
}
