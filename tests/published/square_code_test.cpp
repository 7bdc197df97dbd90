// What a code of each size holds, by the standard's own table.

#include "output/square_code.hpp"

#include <catch2/catch_test_macros.hpp>

#include <string>
#include <utility>

using namespace evenfall;

TEST_CASE(
    "square codes hold as many bytes as the standard says; ISO/IEC 18004:2015 table 7, level L, from memory",
    "[published][qr]") {
    // version, bytes
    for (const auto& [version, bytes] :
         {std::pair{1, 17}, {2, 32}, {5, 106}, {10, 271}, {20, 858}, {25, 1273}, {40, 2953}}) {
        CAPTURE(version, bytes);
        const auto full = square_code(std::string(static_cast<std::size_t>(bytes), 'a'), 177);
        REQUIRE(full.ok());
        CHECK(full->side == 17 + 4 * version);
        const auto over = square_code(std::string(static_cast<std::size_t>(bytes) + 1, 'a'), 177);
        CHECK((version == 40 ? !over.ok() : over->side > full->side));
    }
}
