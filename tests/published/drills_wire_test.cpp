// Drill sizes and wire against published tables.

#include "base/trade.hpp"
#include "materials/bits.hpp"
#include "materials/wire_strength.hpp"
#include "materials/wire_twist.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <numbers>
#include <string>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

/// Diameter in inches of the bit of this name.
double inches(bits::System system, const std::string& name) {
    for (const bits::Bit& bit : bits::all(system)) {
        if (bit.name() == name) return units::inch_from_m(bit.diameter_m);
    }
    return 0.0;
}

} // namespace

TEST_CASE("number and letter drills have their standard sizes (ASME B94.11M, read in a public table)",
          "[bits][published]") {
    using enum bits::System;
    struct Row {
        const char* name;
        double in;
    };
    for (const Row row :
         {Row{"#80", .0135}, Row{"#72", .0250}, Row{"#60", .0400}, Row{"#56", .0465}, Row{"#53", .0595},
          Row{"#43", .0890}, Row{"#30", .1285}, Row{"#21", .1590}, Row{"#7", .2010}, Row{"#1", .2280}})
        CHECK_THAT(inches(number, row.name), WithinAbs(row.in, 1e-9));
    for (const Row row :
         {Row{"letter A", .234}, Row{"letter F", .257}, Row{"letter Q", .332}, Row{"letter Z", .413}})
        CHECK_THAT(inches(letter, row.name), WithinAbs(row.in, 1e-9));
    // Letter E is a quarter inch exactly.
    CHECK_THAT(inches(letter, "letter E"), WithinAbs(inches(fraction, "1/4 in"), 1e-12));
    CHECK(bits::all(number).size() == 80);
    CHECK(bits::all(letter).size() == 26);
}

TEST_CASE("wire by American gauge has the standard's diameters (ASTM B258; standard tables)",
          "[wire][published]") {
    struct Row {
        int number;
        double in;
    };
    for (const Row row : {Row{10, .10190}, Row{16, .05082}, Row{20, .03196}, Row{24, .02010}, Row{30, .01003},
                          Row{36, .00500}})
        CHECK_THAT(units::inch_from_m(wire::awg_m(row.number)), WithinAbs(row.in, 5e-6));
}

TEST_CASE("stainless spring wire breaks at the load its tensile range gives (ASTM A313 type 302, from "
          "a reprint, not re-read)",
          "[wire][published]") {
    struct Row {
        double in;
        double ksi_low, ksi_high;
        double n_low, n_high;
    };
    // Ranges of the table's rows, taken at their thickest wire; loads are range times area.
    for (const Row row :
         {Row{.020, 300, 330, 419, 461}, Row{.025, 291, 320, 635, 699}, Row{.032, 282, 310, 1009, 1109},
          Row{.041, 275, 304, 1615, 1785}, Row{.051, 265, 293, 2408, 2662}}) {
        const double d = units::m_from_inch(row.in);
        const auto range = wire::tensile(wire::Temper::spring, d);
        CHECK_THAT(
            range.low_pa,
            WithinRel(units::n_from_lbf(row.ksi_low * 1000.0) / (units::inch_m * units::inch_m), 1e-3));
        CHECK_THAT(
            range.high_pa,
            WithinRel(units::n_from_lbf(row.ksi_high * 1000.0) / (units::inch_m * units::inch_m), 1e-3));
        const double area = 0.25 * std::numbers::pi * d * d;
        CHECK_THAT(range.low_pa * area, WithinRel(row.n_low, 2e-3));
        CHECK_THAT(range.high_pa * area, WithinRel(row.n_high, 2e-3));
    }
}
