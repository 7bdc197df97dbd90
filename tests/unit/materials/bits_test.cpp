#include "materials/bits.hpp"

#include "base/trade.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <cmath>

using namespace evenfall;
using namespace evenfall::bits;
using Catch::Matchers::WithinAbs;
using units::m_from_inch;
using units::m_from_mm;

TEST_CASE("the bits of every system grow from one to the next and are named once each", "[bits]") {
    for (const System system : {System::fraction, System::number, System::letter, System::metric}) {
        const auto list = all(system);
        for (std::size_t k = 1; k < list.size(); ++k) {
            CHECK(list[k].diameter_m > list[k - 1].diameter_m);
            CHECK(list[k].name() != list[k - 1].name());
        }
    }
}

TEST_CASE("bits are called as at the bench", "[bits]") {
    const auto name = [](System system, double diameter_m) { return next_up(system, diameter_m)->name(); };
    CHECK(name(System::fraction, m_from_inch(7.0 / 64.0)) == "7/64 in");
    CHECK(name(System::fraction, m_from_inch(0.25)) == "1/4 in");
    CHECK(name(System::number, m_from_inch(0.1065)) == "#36");
    CHECK(name(System::letter, m_from_inch(0.257)) == "letter F");
    CHECK(name(System::metric, m_from_mm(2.7)) == "2.7 mm");
    CHECK(name(System::metric, m_from_mm(2.65)) == "2.65 mm");
    CHECK(name(System::metric, m_from_mm(8.0)) == "8 mm");
}

TEST_CASE("the next bit up is never thinner than asked, and there is none beyond the largest", "[bits]") {
    for (double d = 0.4; d < 14.0; d += 0.037) {
        for (const System system : {System::fraction, System::number, System::letter, System::metric}) {
            const auto bit = next_up(system, m_from_mm(d));
            if (bit)
                CHECK(bit->diameter_m >= m_from_mm(d) - 1e-8);
            else
                CHECK(all(system).back().diameter_m < m_from_mm(d));
        }
    }
}

TEST_CASE("a twist of 1.8 mm is glued into a 2 mm hole, in the other systems into the next that leaves room",
          "[bits]") {
    const auto bits = for_glue(m_from_mm(1.8));
    REQUIRE(bits[3].has_value());
    CHECK(bits[3]->name() == "2 mm");
    REQUIRE(bits[0].has_value());
    CHECK(bits[0]->name() == "3/32 in"); // 2.38 mm: 5/64 in is 1.98 mm and leaves too little
    REQUIRE(bits[1].has_value());
    CHECK(bits[1]->name() == "#46");  // .0810 in = 2.057 mm; #47 is 1.994 mm
    CHECK_FALSE(bits[2].has_value()); // letter A is 5.9 mm: too loose
}

TEST_CASE("a pin of 1.2 mm goes into 3/64 in, which is a hundredth thinner, and into 1.2 mm", "[bits]") {
    const auto bits = for_pin(m_from_mm(1.2));
    REQUIRE(bits[0].has_value());
    CHECK(bits[0]->name() == "3/64 in"); // 1.191 mm
    REQUIRE(bits[1].has_value());
    CHECK(bits[1]->name() == "#55"); // 1.321 mm: #56 is 1.181 mm
    CHECK_FALSE(bits[2].has_value());
    REQUIRE(bits[3].has_value());
    CHECK(bits[3]->name() == "1.2 mm");
    CHECK(for_pin(m_from_mm(1.21))[0]->name() == "1/16 in");
}

TEST_CASE("the nearest bit of a system is no farther off than any other of it", "[bits]") {
    for (const double mm : {0.3, 1.55, 3.21, 5.0, 6.35, 8.0, 10.4, 14.0}) {
        for (const System system : {System::fraction, System::number, System::letter, System::metric}) {
            const double off = std::abs(nearest(system, m_from_mm(mm)).diameter_m - m_from_mm(mm));
            for (const Bit& bit : all(system))
                CHECK(off <= std::abs(bit.diameter_m - m_from_mm(mm)) + 1e-15);
        }
    }
    CHECK(nearest(System::fraction, m_from_mm(6.35)).name() == "1/4 in");
    CHECK(nearest(System::letter, m_from_mm(8.0)).name() ==
          "letter O"); // .316 in (8.03 mm): the same public table
}

TEST_CASE("a bit is asked for by its own name where inches rule, by its diameter where they do not",
          "[bits][units]") {
    CHECK(inch_name(m_from_inch(0.25)) == "1/4 in");
    CHECK(inch_name(m_from_mm(6.35)) == "1/4 in");
    CHECK(inch_name(m_from_inch(0.1065)) == "#36");
    CHECK(inch_name(m_from_inch(0.413)) == "letter Z");
    CHECK(inch_name(m_from_mm(12.9)) == "near 1/2 in"); // 0.2 mm off, and nothing is nearer
    CHECK(bit_text(m_from_mm(6.35)).text(units::metric) == "6.35 mm");
    CHECK(bit_text(m_from_mm(6.35)).text(units::inches) == "1/4 in");
    for (double mm = 0.5; mm < 12.7; mm += 0.01) {
        const double wanted_m = m_from_mm(mm);
        const std::string name = inch_name(wanted_m);
        INFO(mm << " mm: " << name);
        double best = 1.0, named = 1.0;
        for (const System system : {System::fraction, System::number, System::letter}) {
            for (const Bit& bit : all(system)) {
                const double off = std::abs(bit.diameter_m - wanted_m);
                best = std::min(best, off);
                if (name == bit.name() || name == "near " + bit.name()) named = std::min(named, off);
            }
        }
        CHECK((named < 5e-5 || named == best));
        CHECK((name.rfind("near ", 0) == 0) == (named >= 5e-5));
    }
}
