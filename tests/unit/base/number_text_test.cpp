#include "base/number_text.hpp"
#include "base/read_number.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <limits>
#include <string>

using namespace evenfall;
using namespace evenfall::units;
using Catch::Matchers::WithinRel;

namespace {

constexpr double last_places = 1e-15;

double typed(std::string_view text, Unit usual) {
    const auto number = read_number(text, usual);
    INFO("typed: " << text);
    REQUIRE(number.ok());
    return *number;
}

Problem refused(std::string_view text, Unit usual = Unit::mm) {
    const auto number = read_number(text, usual, "/field");
    INFO("typed: " << text);
    REQUIRE_FALSE(number.ok());
    REQUIRE(number.problems().size() == 1);
    CHECK(number.problems()[0].path == "/field");
    CHECK_FALSE(number.problems()[0].sentence.empty());
    return number.problems()[0];
}

} // namespace

TEST_CASE("a number without a unit is in the field's own unit", "[units]") {
    CHECK(typed("8", Unit::mm) == 0.008);
    CHECK(typed("8.25", Unit::mm) == 0.00825);
    CHECK(typed("8,25", Unit::mm) == 0.00825);
    CHECK(typed("  8.25\t", Unit::mm) == 0.00825);
    CHECK(typed(".5", Unit::gram) == 0.0005);
    CHECK(typed("5.", Unit::gram) == 0.005);
    CHECK(typed("+3", Unit::celsius) == 3.0);
    CHECK(typed("-3", Unit::celsius) == -3.0);
    CHECK(typed("−3", Unit::celsius) == -3.0);
    CHECK(typed("1,000", Unit::one) == 1.0);
    CHECK(typed("007", Unit::one) == 7.0);
}

TEST_CASE("fractions of an inch are read as they are written on a drill index", "[units]") {
    CHECK_THAT(typed("7/64", Unit::inch), WithinRel(0.0254 * 7.0 / 64.0, last_places));
    CHECK_THAT(typed("1 3/8", Unit::inch), WithinRel(0.034925, last_places));
    CHECK_THAT(typed("1-3/8", Unit::inch), WithinRel(0.034925, last_places));
    CHECK_THAT(typed("1 3/8\"", Unit::mm), WithinRel(0.034925, last_places));
    CHECK_THAT(typed("1 - 3 / 8 in", Unit::mm), WithinRel(0.034925, last_places));
    CHECK_THAT(typed("-1 3/8", Unit::inch), WithinRel(-0.034925, last_places));
    CHECK_THAT(typed("1/4 oz", Unit::gram), WithinRel(0.028349523125 / 4.0, last_places));
}

TEST_CASE("a typed unit wins over the field's own", "[units]") {
    CHECK(typed("8.25mm", Unit::inch) == 0.00825);
    CHECK(typed("1 cm", Unit::mm) == 0.01);
    CHECK(typed("2FT", Unit::mm) == 0.6096);
    CHECK(typed("2'", Unit::mm) == 0.6096);
    CHECK(typed("2″", Unit::mm) == 0.0508);
    CHECK(typed("2.5g", Unit::ounce) == 0.0025);
    CHECK_THAT(typed("7000 gr", Unit::gram), WithinRel(0.45359237, last_places));
    CHECK_THAT(typed("-3deg", Unit::degree), WithinRel(-0.05235987755982989, last_places));
    CHECK_THAT(typed("180°", Unit::degree), WithinRel(3.141592653589793, last_places));
    CHECK_THAT(typed("0.9s/ft", Unit::mm_per_s), WithinRel(0.3048 / 0.9, last_places));
    CHECK(typed("300mm/s", Unit::s_per_ft) == 0.3);
    CHECK(typed("4 s/m", Unit::s_per_ft) == 0.25);
    CHECK_THAT(typed("6in/s", Unit::s_per_ft), WithinRel(0.1524, last_places));
    CHECK_THAT(typed("68 F", Unit::celsius), WithinRel(20.0, last_places));
    CHECK(typed("20 °C", Unit::fahrenheit) == 20.0);
    CHECK(typed("0.47 g/cm³", Unit::kg_per_m3) == 470.0);
    CHECK(typed("0.47g/cm3", Unit::kg_per_m3) == 470.0);
    CHECK_THAT(typed("62.43 lb/ft³", Unit::kg_per_m3), WithinRel(1000.0, 1e-4));
    CHECK_THAT(typed("10 mil", Unit::micrometre), WithinRel(0.000254, last_places));
    CHECK_THAT(typed("300 um", Unit::mm), WithinRel(0.0003, last_places));
    CHECK_THAT(typed("57.4 cm3", Unit::cm3), WithinRel(57.4e-6, last_places));
    CHECK(typed("12 %", Unit::percent) == 0.12);
    CHECK(typed("25 g/kg", Unit::g_per_kg) == 25.0);
}

TEST_CASE("times are read with their unit, or in the field's own", "[units]") {
    CHECK(typed("4.3s", Unit::second) == 4.3);
    CHECK(typed("4.3", Unit::second) == 4.3);
    CHECK(typed("45min", Unit::minute) == 2700.0);
    CHECK(typed("45", Unit::minute) == 2700.0);
    CHECK(typed("1.5 h", Unit::minute) == 5400.0);
    CHECK_FALSE(read_number("45mm", Unit::minute).ok());
    CHECK(number_text(5400.0, Unit::hour, 1) == "1.5");
    CHECK(number_text(0.034925, Unit::inch_fraction, 2) == "1 3/8");
}

TEST_CASE("what is no number is refused and never guessed at", "[units]") {
    for (const char* text :
         {"",    " ",    "-",       "+",      ".",       ",",       "mm",   "abc",   "nan",
          "inf", "--3",  "+-3",     "1.2.3",  "1,234.5", "1.234,5", "1 2",  "1 000", "7/",
          "/8",  "7/-8", "8.5 1/2", "1--3/8", "1/2/3",   "0x10 5",  "1- 3", "5-",    "½"}) {
        INFO("typed: " << text);
        const auto number = read_number(text, Unit::mm, "/field");
        REQUIRE_FALSE(number.ok());
        const ProblemCode code = number.problems()[0].code;
        CHECK((code == ProblemCode::wrong_type || code == ProblemCode::unknown_name));
    }
    CHECK(refused("").code == ProblemCode::wrong_type);
    CHECK(refused("1.2.3").code == ProblemCode::wrong_type);
    CHECK(refused("1e3").code == ProblemCode::unknown_name);
    CHECK(refused("8 cubits").code == ProblemCode::unknown_name);
    CHECK(refused("1/0").code == ProblemCode::out_of_range);
    CHECK(refused("1 3/0").code == ProblemCode::out_of_range);
    CHECK(refused("0 s/ft", Unit::mm_per_s).code == ProblemCode::out_of_range);
    CHECK(refused(std::string(max_number_text + 1, '1')).code == ProblemCode::too_large);
    CHECK(read_number(std::string(max_number_text, '1'), Unit::mm).ok());
}

TEST_CASE("a unit of another quantity is refused with the ones that would do", "[units]") {
    const Problem problem = refused("2.5 g", Unit::mm);
    CHECK(problem.code == ProblemCode::unknown_name);
    CHECK(problem.limit.text(evenfall::units::metric) == "mm, cm, m, µm, in, mil, ft");
    CHECK(problem.sentence.text(evenfall::units::metric) ==
          "A number in g is a mass; wanted here is a length in mm, cm, m, µm, in, mil, ft.");
    CHECK(refused("2 mm", Unit::mm_per_s).code == ProblemCode::unknown_name);
    CHECK(refused("12 %", Unit::one).code == ProblemCode::unknown_name);
}

TEST_CASE("a number is shown with the decimals asked for", "[units]") {
    CHECK(number_text(0.00825, Unit::mm, 2) == "8.25");
    CHECK(number_text(0.00825, Unit::mm, 0) == "8");
    CHECK(number_text(0.00825, Unit::mm, 3) == "8.250");
    CHECK(number_text(0.0025, Unit::gram, 1) == "2.5");
    CHECK(number_text(-0.05235987755982989, Unit::degree, 1) == "−3.0");
    CHECK(number_text(0.00000999, Unit::mm, 2) == "0.01");
    CHECK(number_text(0.0999, Unit::one, 1) == "0.1");
    CHECK(number_text(9.996, Unit::one, 2) == "10.00");
    CHECK(number_text(0.05, Unit::one, 9) == "0.050000000");
    CHECK(number_text(0.1524, Unit::s_per_ft, 2) == "2.00");
    CHECK(number_text(20.0, Unit::fahrenheit, 0) == "68");
    CHECK(number_text(999999999.0, Unit::one, 9) == "999999999.000000000");
}

TEST_CASE("zero has no sign and what has no digits is a dash", "[units]") {
    CHECK(number_text(0.0, Unit::mm, 1) == "0.0");
    CHECK(number_text(-0.0, Unit::mm, 1) == "0.0");
    CHECK(number_text(-1e-9, Unit::mm, 1) == "0.0");
    CHECK(number_text(0.0, Unit::s_per_ft, 2) == "–");
    CHECK(number_text(std::nan(""), Unit::mm, 2) == "–");
    CHECK(number_text(-std::numeric_limits<double>::infinity(), Unit::mm, 2) == "–");
    CHECK(number_text(1e300, Unit::mm, 2) == "–");
    CHECK(inch_text(std::nan("")) == "–");
    CHECK(inch_text(1e300) == "–");
}

TEST_CASE("inches are shown to the nearest step in lowest terms", "[units]") {
    CHECK(inch_text(0.034925) == "1 3/8");
    CHECK(inch_text(0.0254 * 7.0 / 64.0) == "7/64");
    CHECK(inch_text(0.0254) == "1");
    CHECK(inch_text(0.0) == "0");
    CHECK(inch_text(-0.0127) == "−1/2");
    CHECK(inch_text(-0.034925) == "−1 3/8");
    CHECK(inch_text(0.0001) == "0");
    CHECK(inch_text(-0.0001) == "0");
    CHECK(inch_text(0.0254 * 127.9 / 64.0) == "2");
    CHECK(inch_text(0.0254 * 7.0 / 64.0, InchStep::sixteenth) == "1/8");
    CHECK(inch_text(0.010, InchStep::quarter) == "1/2");
}

TEST_CASE("what is shown reads back to itself", "[units]") {
    for (int sixty_fourths = -200; sixty_fourths <= 200; ++sixty_fourths) {
        const double length = 0.0254 * sixty_fourths / 64.0;
        const auto back = read_number(inch_text(length), Unit::inch);
        REQUIRE(back.ok());
        CHECK(std::fabs(*back - length) < 1e-15);
    }
    for (int hundredths = -999; hundredths <= 999; hundredths += 7) {
        const auto back = read_number(number_text(hundredths / 100.0, Unit::one, 2), Unit::one);
        REQUIRE(back.ok());
        CHECK(*back == hundredths / 100.0);
    }
}

TEST_CASE("decimals are read to the nearest double or its neighbour", "[units]") {
    CHECK(typed("0.1", Unit::one) == 0.1);
    CHECK(typed("3.141592653589793", Unit::one) == 3.141592653589793);
    CHECK_THAT(typed("3.14159265358979323846264338327950288", Unit::one),
               WithinRel(3.141592653589793, 3e-16));
    CHECK_THAT(typed("123456789012345678901234567890", Unit::one),
               WithinRel(123456789012345678901234567890.0, 3e-16));
    CHECK_THAT(typed("0.00000000000000000000000000000000001234", Unit::one), WithinRel(1234e-38, 1e-15));
}
