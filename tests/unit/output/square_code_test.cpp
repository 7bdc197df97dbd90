#include "output/square_code.hpp"

#include <catch2/catch_test_macros.hpp>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

using namespace evenfall;

TEST_CASE("a square code has the corner marks that a camera looks for, and four more squares an edge with "
          "each size",
          "[qr]") {
    for (const std::size_t length : {1u, 40u, 300u, 1000u}) {
        CAPTURE(length);
        const auto code = square_code(std::string(length, 'a'));
        REQUIRE(code.ok());
        CHECK((code->side - 17) % 4 == 0);
        REQUIRE(code->dark.size() ==
                static_cast<std::size_t>(code->side) * static_cast<std::size_t>(code->side));
        // Three of the corners hold a dark ring of seven by seven, a light one within it and a dark middle;
        // the fourth does not.
        const auto marked = [&](int left, int top) {
            for (int row = 0; row < 7; ++row) {
                for (int column = 0; column < 7; ++column) {
                    const int ring = std::max(std::abs(row - 3), std::abs(column - 3));
                    if (code->at(left + column, top + row) != (ring != 2)) return false;
                }
            }
            return true;
        };
        const int far = code->side - 7;
        CHECK(marked(0, 0));
        CHECK(marked(far, 0));
        CHECK(marked(0, far));
        CHECK_FALSE(marked(far, far));
    }
}

TEST_CASE("a text too long for any code is refused, whatever its length", "[qr]") {
    CHECK(square_code(std::string(2953, 'a')).ok());
    for (const std::size_t length : {2954u, 30000u}) {
        const auto code = square_code(std::string(length, 'a'));
        REQUIRE_FALSE(code.ok());
        CHECK(code.problems().front().code == ProblemCode::too_large);
        CHECK(code.problems().front().sentence.text(evenfall::units::metric).find(std::to_string(length)) !=
              std::string::npos);
    }
    CHECK_FALSE(square_code(std::string(1274, 'a'), 117).ok());
    CHECK_FALSE(square_code("a", 20).ok());
    CHECK_FALSE(square_code("", 0).ok());
}

TEST_CASE("the drawn path of a code covers its dark squares, each once, and nothing else", "[qr]") {
    const auto code = square_code("1.evenfall");
    REQUIRE(code.ok());
    std::vector<int> covered(code->dark.size(), 0);
    const std::string path = path_of(*code);
    for (std::size_t at = path.find('M'); at != std::string::npos; at = path.find('M', at + 1)) {
        int x = 0, y = 0, run = 0;
        REQUIRE(std::sscanf(path.c_str() + at, "M%d %dh%dv1h", &x, &y, &run) == 3);
        for (int k = 0; k < run; ++k)
            ++covered[static_cast<std::size_t>((y - 4) * code->side + x - 4 + k)];
    }
    for (std::size_t i = 0; i < covered.size(); ++i)
        CHECK(covered[i] == (code->dark[i] ? 1 : 0));
}

TEST_CASE("a code is printed in squares of half a millimetre, and at most 74 mm wide with 0.4 mm or more",
          "[qr]") {
    for (const std::size_t length : {1u, 600u, 1273u, 1800u, 2400u, 2953u}) {
        CAPTURE(length);
        const auto code = square_code(std::string(length, 'a'));
        REQUIRE(code.ok());
        const double square_mm = printed_square_mm(*code);
        CHECK(square_mm <= 0.5);
        CHECK(square_mm >= 0.4);
        CHECK(square_mm * (code->side + 8) <= 74.0 + 1e-9);
        CHECK((square_mm == 0.5 || square_mm * (code->side + 8) > 74.0 - 1e-9));
    }
}
