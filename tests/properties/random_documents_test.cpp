// Text and link carry a lure whole, and numbers come back through every unit. Drawn by chance; a failure
// names seed and draw.

#include "base/number_text.hpp"
#include "base/read_number.hpp"
#include "bench/uncertainty/random.hpp"
#include "document/write.hpp"
#include "support/random_lures.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("a lure comes back from its text and from its link, and gives the same answers",
          "[properties][random]") {
    support::each_random_lure(401, 220, [&](const support::RandomLure& lure, int) {
        const std::string text = write_document(lure.document);
        const auto read = read_document(text);
        REQUIRE(read.ok());
        CHECK(document::same(*read, lure.document));
        CHECK(write_document(*read) == text);
        const auto linked = read_link(write_link(*read));
        REQUIRE(linked.ok());
        CHECK(write_document(*linked) == text);
        CHECK(document::write_compact(*linked) == document::write_compact(*read));
        const auto again = evaluate(*linked);
        const auto once = evaluate(*read);
        REQUIRE((again.ok() && once.ok()));
        CHECK(again->answers.mass.kg == once->answers.mass.kg);
        CHECK(again->answers.pitch_rad == once->answers.pitch_rad);
        CHECK((again->answers.fall ? again->answers.fall->speed_m_s : 0.0) ==
              (once->answers.fall ? once->answers.fall->speed_m_s : 0.0));
        // Text keeps the millionth of a millimetre: half of it on lines some millimetres from the middle is
        // less than 1e-6 of the wood.
        CHECK_THAT(once->answers.mass.kg, WithinRel(lure.evaluation.answers.mass.kg, 1e-6));
    });
}

TEST_CASE("any number comes back through any unit, as a value and as it is typed",
          "[properties][random][units]") {
    using namespace units;
    constexpr Unit every[] = {
        Unit::one,      Unit::percent,   Unit::mm,        Unit::cm,         Unit::m,        Unit::micrometre,
        Unit::inch,     Unit::mil,       Unit::foot,      Unit::gram,       Unit::kilogram, Unit::ounce,
        Unit::pound,    Unit::grain,     Unit::degree,    Unit::radian,     Unit::celsius,  Unit::fahrenheit,
        Unit::s_per_ft, Unit::s_per_m,   Unit::mm_per_s,  Unit::cm_per_s,   Unit::m_per_s,  Unit::inch_per_s,
        Unit::ft_per_s, Unit::g_per_cm3, Unit::kg_per_m3, Unit::lb_per_ft3, Unit::cm3,      Unit::m3,
        Unit::g_per_kg};
    bench::Random random(402, 0);
    for (int n = 0; n < 300; ++n) {
        const double value = 0.001 + 1000.0 * random.uniform() * random.uniform();
        for (const Unit unit : every) {
            INFO("seed 402, number " << n << ": " << value << ' ' << symbol(unit));
            const double core = to_core(value, unit);
            CHECK_THAT(from_core(core, unit), WithinRel(value, 1e-13));
            const std::string shown = number_text(core, unit, 6) + ' ' + std::string(symbol(unit));
            const auto typed = read_number(shown, unit);
            REQUIRE(typed.ok());
            CHECK_THAT(from_core(*typed, unit), WithinAbs(value, 0.5000001e-6));
        }
    }
}
