#include "picture/netpbm.hpp"

#include <catch2/catch_test_macros.hpp>

#include <string>

using namespace evenfall;
using namespace evenfall::picture;

TEST_CASE(
    "a grey and a colour picture file are read sample by sample, comments skipped, any depth taken to 255",
    "[picture]") {
    using namespace std::string_literals;
    const auto grey = read_netpbm("P5 # two by two\n2 2\n# and its depth\n100\n\0\x32\x64\xFF"s);
    REQUIRE(grey.ok());
    CHECK(grey->samples == std::vector<std::uint8_t>{0, 128, 255, 255});
    const auto colour = read_netpbm("P6\n1 2\n255\nabcdef"s);
    REQUIRE(colour.ok());
    CHECK(colour->channels == 4);
    CHECK(colour->samples == std::vector<std::uint8_t>{'a', 'b', 'c', 255, 'd', 'e', 'f', 255});
    // The first byte behind the single blank may look like a blank itself.
    CHECK(read_netpbm("P5 1 1 255\n\n"s).ok());
}

TEST_CASE("picture files that are cut, too long, too large, too deep or of another kind are refused with a "
          "sentence",
          "[picture]") {
    for (const std::string text :
         {"", "P", "P5", "P4 8 8 x", "P5 2 2", "P5 2 2 255", "P5 2 2 255 abc", "P5 2 2 255 abcde",
          "P5 0 2 255 ", "P5 -2 2 255 abcd", "P5 2 2 0 abcd", "P5 2 2 65535 abcdefgh", "P6 2 1 255 abc",
          "P5 99999999999999999999 1 255 a", "P5 32001 1 255 a", "P5 30000 30000 255 a", "P5 2 2 255#abcd",
          "\x89PNG\r\n"}) {
        CAPTURE(text);
        const auto picture = read_netpbm(text);
        REQUIRE_FALSE(picture.ok());
        CHECK_FALSE(picture.problems().front().sentence.empty());
    }
}
