#include "base/trade.hpp"
#include "base/unit.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cctype>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

using namespace evenfall::units;
using Catch::Matchers::WithinRel;

namespace {

constexpr int unit_count = static_cast<int>(Unit::inch_fraction) + 1;
constexpr double last_places = 1e-15; // a few roundings of a double

bool stands_alone(const std::string& text, std::size_t at, std::size_t length) {
    const auto part_of_number = [](char c) {
        return std::isdigit(static_cast<unsigned char>(c)) != 0 || c == '.';
    };
    const bool before = at > 0 && part_of_number(text[at - 1]);
    const bool after =
        at + length < text.size() && std::isdigit(static_cast<unsigned char>(text[at + length])) != 0;
    return !before && !after;
}

bool names_a_size(const std::string& text) {
    for (const char* size : {"25.4", "0.0254", "0.3048", "304.8", "453.59237", "0.45359237", "28.349523125",
                             "28.35", "0.0648", "0.06479891", "4.4482", "9.80665"}) {
        const std::string word = size;
        for (auto at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
            if (stands_alone(text, at, word.size())) return true;
        }
    }
    return text.find("3.14159") != std::string::npos || text.find("M_PI") != std::string::npos;
}

} // namespace

TEST_CASE("trade units have their defined sizes (international yard and pound agreement 1959)", "[units]") {
    CHECK(m_from_inch(1.0) == 0.0254);
    CHECK(m_from_ft(1.0) == 0.3048);
    CHECK(m_from_ft(1.0) == m_from_inch(12.0));
    CHECK_THAT(kg_from_oz(1.0), WithinRel(0.028349523125, last_places));
    CHECK_THAT(kg_from_grain(1.0), WithinRel(0.00006479891, last_places));
    CHECK_THAT(kg_from_oz(1.0), WithinRel(kg_from_grain(437.5), last_places));
    CHECK_THAT(n_from_lbf(1.0), WithinRel(4.4482216152605, last_places));
    CHECK(m_from_mm(6.35) == 0.00635);
    CHECK(kg_from_g(28.35) == 0.02835);
}

TEST_CASE("temperatures are points: water freezes at 32 °F and boils at 212 °F", "[units]") {
    CHECK(celsius_from_fahrenheit(32.0) == 0.0);
    CHECK_THAT(celsius_from_fahrenheit(212.0), WithinRel(100.0, last_places));
    CHECK_THAT(celsius_from_fahrenheit(-40.0), WithinRel(-40.0, last_places));
    CHECK_THAT(fahrenheit_from_celsius(20.0), WithinRel(68.0, last_places));
}

TEST_CASE("a fall in seconds per foot is the inverse of its speed", "[units]") {
    CHECK_THAT(m_s_from_s_ft(2.0), WithinRel(0.1524, last_places));
    CHECK_THAT(s_ft_from_m_s(0.1524), WithinRel(2.0, last_places));
    CHECK_THAT(m_s_from_s_m(4.0), WithinRel(0.25, last_places));
    CHECK(std::isinf(to_core(0.0, Unit::s_per_ft)));
    CHECK(std::isinf(from_core(0.0, Unit::s_per_m)));
}

TEST_CASE("a mile an hour is 0.44704 m/s, 3.6 km/h are one (international yard and pound agreement 1959)",
          "[units]") {
    CHECK_THAT(m_s_from_mile_h(1.0), WithinRel(0.44704, last_places));
    CHECK_THAT(to_core(3.6, Unit::km_per_h), WithinRel(1.0, last_places));
    CHECK_THAT(from_core(1.5, Unit::per_10_ft), WithinRel(4.572, last_places));
}

TEST_CASE("every unit turns into the core's and back", "[units]") {
    for (int i = 0; i < unit_count; ++i) {
        const auto unit = static_cast<Unit>(i);
        INFO("unit " << symbol(unit));
        for (double value : {1.0, 3.7, -12.5, 1e-3, 4096.0}) {
            // A shifted scale keeps the last places of its shift, not of a small value.
            const double shift = unit == Unit::fahrenheit ? 32.0 : 0.0;
            CHECK_THAT(from_core(to_core(value, unit), unit) + shift,
                       WithinRel(value + shift, 4 * last_places));
        }
    }
}

TEST_CASE("every unit is found by the symbol that is shown, in capitals too", "[units]") {
    for (int i = 0; i < unit_count; ++i) {
        const auto unit = static_cast<Unit>(i);
        std::string shown{symbol(unit)};
        if (shown.empty() || unit == Unit::inch_fraction) continue; // that is typed as inch
        INFO("unit " << shown);
        CHECK(find_unit(shown) == unit);
        for (char& c : shown) {
            if (static_cast<unsigned char>(c) < 128)
                c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
        }
        CHECK(find_unit(shown) == unit);
    }
    CHECK_FALSE(find_unit(""));
    CHECK_FALSE(find_unit("mmm"));
    CHECK_FALSE(find_unit("cubits"));
}

TEST_CASE("the sizes of trade units and standard gravity stand in base/trade.hpp alone, pi nowhere",
          "[units]") {
    const std::filesystem::path root = std::filesystem::path(EVENFALL_TESTS_DIR).parent_path();
    int files = 0;
    std::vector<std::string> offenders;
    for (const char* folder : {"core", "shell"}) {
        for (const auto& entry : std::filesystem::recursive_directory_iterator(root / folder)) {
            const auto extension = entry.path().extension();
            if (extension != ".cpp" && extension != ".hpp") continue;
            ++files;
            std::ifstream stream(entry.path());
            std::stringstream text;
            text << stream.rdbuf();
            if (names_a_size(text.str()))
                offenders.push_back(entry.path().lexically_relative(root).generic_string());
        }
    }
    CHECK(files > 10);
    CHECK(offenders == std::vector<std::string>{"core/base/trade.hpp"});
}
