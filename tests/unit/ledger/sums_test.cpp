#include "answers/answers.hpp"
#include "document/read.hpp"
#include "ledger/fold.hpp"
#include "support/invented_lures.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using namespace evenfall;
using Catch::Matchers::WithinRel;

TEST_CASE("sums by kind and by item make up the whole ledger", "[ledger]") {
    const document::Document d = invented::preset_named("millrace-170");
    const auto e = evaluate(d);
    REQUIRE(e.ok());
    ledger::Sum kinds;
    for (int k = 0; k <= static_cast<int>(ledger::Kind::coat); ++k)
        kinds += ledger::sum_of(e->ledger, static_cast<ledger::Kind>(k));
    const ledger::Sum all = ledger::stage_sums(e->ledger, d.segment_names.size()).total;
    CHECK_THAT(kinds.mass.kg, WithinRel(all.mass.kg, 1e-12));
    CHECK_THAT(kinds.displaced_m3, WithinRel(all.displaced_m3, 1e-12));
    REQUIRE(d.coats.size() > 1);
    ledger::Sum coats;
    for (int i = 0; i < static_cast<int>(d.coats.size()); ++i) {
        const ledger::Sum one = ledger::sum_of(e->ledger, ledger::Kind::coat, i);
        CHECK(one.mass.kg > 0.0);
        coats += one;
    }
    CHECK_THAT(coats.mass.kg, WithinRel(ledger::sum_of(e->ledger, ledger::Kind::coat).mass.kg, 1e-12));
    CHECK(ledger::sum_if(e->ledger, [](const ledger::Line&) { return false; }).mass.kg == 0.0);
}
