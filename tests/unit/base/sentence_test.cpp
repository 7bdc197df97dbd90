#include "base/sentence.hpp"

#include <catch2/catch_test_macros.hpp>

#include <cmath>
#include <string>

using namespace evenfall;
using units::Quantity;

namespace {

std::string metric(const Sentence& sentence) {
    return sentence.text(units::metric);
}
std::string inches(const Sentence& sentence) {
    return sentence.text(units::inches);
}

} // namespace

TEST_CASE("a sentence is told in the units of whoever reads it", "[units][sentence]") {
    const Sentence deep = "Hole 1 is " + length_text(0.0127) + " deep, " + mass_text(0.00642) +
                          " of lead, hangs at " + angle_text(-0.0524) + " and falls at " + speed_text(0.1587);
    CHECK(metric(deep) == "Hole 1 is 12.7 mm deep, 6.42 g of lead, hangs at −3.0° and falls at 158.7 mm/s");
    CHECK(inches(deep) == "Hole 1 is 1/2 in deep, 6.42 g of lead, hangs at −3.0° and falls at 1.92 s/ft");
    units::UnitSet ounces = units::inches;
    ounces.mass = units::Unit::ounce;
    ounces.length = units::Unit::inch;
    CHECK(deep.text(ounces) ==
          "Hole 1 is 0.500 in deep, 0.226 oz of lead, hangs at −3.0° and falls at 1.92 s/ft");
}

TEST_CASE("words put together are one sentence, whatever they were before", "[units][sentence]") {
    CHECK(Sentence().empty());
    CHECK(Sentence("").empty());
    CHECK(Sentence("a") + "b" + std::string("c") == Sentence("abc"));
    Sentence twice = "1 " + length_text(0.001) + ", ";
    twice += twice;
    CHECK(metric(twice) == "1 1.0 mm, 1 1.0 mm, ");
    CHECK(metric("so " + Sentence::by_system("half a metre", "20 inches")) == "so half a metre");
    CHECK(inches("so " + Sentence::by_system("half a metre", "20 inches")) == "so 20 inches");
    CHECK_FALSE(length_text(0.001) == length_text(0.002));
}

TEST_CASE("inches are fractions on a rule, thousandths below an eighth and for what a caliper measures",
          "[units][sentence]") {
    CHECK(inches(length_text(0.034925)) == "1 3/8 in");
    CHECK(inches(length_text(0.003175)) == "1/8 in");
    CHECK(inches(length_text(0.0015875)) == "1/16 in"); // a 64th is told as one
    CHECK(inches(length_text(0.001)) == "0.039 in");
    CHECK(inches(length_text(-0.001)) == "−0.039 in");
    CHECK(inches(length_text(0.0)) == "0 in");
    CHECK(inches(thickness_text(0.0008)) == "0.031 in");
    CHECK(inches(thickness_text(0.0127)) == "0.500 in");
    CHECK(inches(length_text(NAN)) == "– in");
}

TEST_CASE("whoever keeps to a range as it is told keeps to its limits, in every unit", "[units][sentence]") {
    CHECK(metric(range_text(0.0002, 0.003, Quantity::thickness)) == "0.2 to 3 mm");
    CHECK(metric(range_text(-0.15, 0.15, Quantity::length)) == "-150 to 150 mm");
    CHECK(inches(range_text(0.0, 0.04, Quantity::length)) == "0 to 1 9/16 in");
    CHECK(inches(range_text(-0.15, 0.15, Quantity::length)) == "−5 57/64 to 5 57/64 in");
    CHECK(inches(range_text(0.0, 40.0, Quantity::temperature)) == "32 to 104 °F");
    // A speed told as a time has its limits the other way round: 1 to 5000 mm/s.
    CHECK(inches(range_text(0.001, 5.0, Quantity::speed)) == "304.8 to 0.07 s/ft");

    const auto number = [](double core, units::Rounding rounding) {
        return units::number_text(core, Quantity::length, units::inches, units::plain, rounding);
    };
    for (int k = 1; k < 400; ++k) {
        const double m = 0.000137 * k;
        INFO(k << ": " << number(m, units::Rounding::up) << ", " << number(m, units::Rounding::down));
        // 1/64 in above an eighth, a thousandth below.
        const double step = m < 0.0032 ? 26e-6 : 0.4e-3;
        const auto metres = [](const std::string& text) {
            const auto blank = text.find(' ');
            const auto part = [](const std::string& one) {
                const auto stroke = one.find('/');
                return stroke == std::string::npos ? std::stod(one)
                                                   : std::stod(one) / std::stod(one.substr(stroke + 1));
            };
            const double inch = blank == std::string::npos
                                    ? part(text)
                                    : part(text.substr(0, blank)) + part(text.substr(blank + 1));
            return 0.0254 * inch;
        };
        const double up = metres(number(m, units::Rounding::up)),
                     down = metres(number(m, units::Rounding::down));
        CHECK(up >= m - 1e-9);
        CHECK(down <= m + 1e-9);
        CHECK(up - m < step);
        CHECK(m - down < step);
    }
}
