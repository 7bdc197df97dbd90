#include "base/unit_set.hpp"

#include <catch2/catch_test_macros.hpp>

using namespace evenfall;

TEST_CASE("inches rule in the United States, by either way of writing a locale, and nowhere else",
          "[units]") {
    for (const char* locale : {"en_US.UTF-8", "en-US", "es-US", "en_US"}) {
        CAPTURE(locale);
        CHECK(units::inches_rule(locale));
    }
    for (const char* locale : {"", "C", "en_GB.UTF-8", "en-AU", "en", "de_DE", "us"}) {
        CAPTURE(locale);
        CHECK_FALSE(units::inches_rule(locale));
    }
}
