#include "evenfall.hpp"
#include "support/presets.hpp"
#include "workshop/coat_schedule.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <iterator>
#include <string>

using namespace evenfall;
using Catch::Matchers::WithinRel;

TEST_CASE("the grams of a coat on skin, joint faces and pockets are together what the ledger has of it",
          "[resin]") {
    for (const char* name : {"millrace-170", "reedline-120", "quarry-230", "estuary-150"}) {
        for (const bool into_pockets : {false, true}) {
            INFO(name);
            document::Document document = support::preset_named(name);
            REQUIRE_FALSE(document.coats.empty());
            if (into_pockets && document.pockets.empty()) continue;
            for (document::Coat& coat : document.coats)
                coat.on_pockets = into_pockets;
            const auto evaluation = evaluate(document);
            REQUIRE(evaluation.ok());
            const auto grams = resin::schedule(document, *evaluation);
            REQUIRE(grams.size() == document.coats.size());
            for (std::size_t c = 0; c < grams.size(); ++c) {
                CHECK_THAT(grams[c].together_kg(), WithinRel(evaluation->answers.coats[c].mass.kg, 1e-12));
                if (!document.coats[c].on_joint_faces) CHECK(grams[c].faces_kg == 0.0);
                if (into_pockets)
                    CHECK(grams[c].pockets_kg > 0.0);
                else
                    CHECK(grams[c].pockets_kg == 0.0);
            }
        }
    }
}
