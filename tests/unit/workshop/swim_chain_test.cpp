#include "workshop/swim_chain.hpp"

#include "support/presets.hpp"
#include "support/worked.hpp"
#include "water/swim/matrices.hpp"

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

using namespace evenfall;
using Catch::Approx;

namespace {

/// A demo lure whose joints are relieved less, so that they open by what the model was tried on.
document::Document narrow_lure() {
    document::Document d = support::preset_named("millrace-170");
    for (document::Joint& j : d.joints) {
        j.relief_fore_rad = 0.08;
        j.relief_aft_rad = 0.08;
    }
    return d;
}

Outcome<swim::Chain> chain_of(const document::Document& d) {
    return swim::chain_of(d, support::worked(d));
}

bool tells(const Outcome<swim::Chain>& chain, const std::string& words) {
    if (chain.ok()) return false;
    for (const Problem& p : chain.problems()) {
        CHECK(p.code == ProblemCode::swim_unknown);
        if (p.sentence.text(units::metric).find(words) != std::string::npos) return true;
    }
    return false;
}

} // namespace

TEST_CASE("a chain weighs what the lure weighs, and the water in what is flooded", "[swim]") {
    const document::Document d = narrow_lure();
    const Evaluation e = support::worked(d);
    const auto chain = swim::chain_of(d, e);
    REQUIRE(chain.ok());
    double mass = 0.0, moment = 0.0, at = chain->tie_x_m, flooded = 0.0;
    for (const ledger::Line& line : e.ledger) {
        if (line.kind == ledger::Kind::pocket_water || line.kind == ledger::Kind::hole_water)
            flooded -= e.answers.water_density_kg_m3 * line.displaced_m3;
    }
    for (const swim::Segment& s : chain->segments) {
        mass += s.mass_kg;
        moment += s.moment_kg_m + s.mass_kg * at;
        at += s.length_m;
        CHECK(s.inertia_kg_m2 > s.moment_kg_m * s.moment_kg_m / s.mass_kg);
    }
    CHECK(flooded > 0.0);
    CHECK(mass == Approx(e.answers.mass.kg + flooded).epsilon(1e-12));
    CHECK(moment / mass == Approx(e.answers.g_m.x).epsilon(0.02)); // the water's place is another
    CHECK(at == Approx(chain->length_m));
    CHECK(chain->length_m > 0.170); // with the soft tail
    CHECK(chain->soft_tail);
}

TEST_CASE("hooks pull on the segment they hang on, a soft tail is a fin", "[swim]") {
    const auto chain = chain_of(narrow_lure());
    REQUIRE(chain.ok());
    REQUIRE(chain->segments.size() == 3);
    CHECK(chain->segments[0].parts.size() == 1);
    CHECK(chain->segments[1].parts.size() == 1);
    CHECK(chain->segments[2].parts.empty());
    CHECK(chain->segments[2].slices.back().is_fin);
    CHECK(!chain->segments[0].slices.back().is_fin);
}

TEST_CASE("a lure without its hinges' limits is told which it breaks", "[swim]") {
    CHECK(tells(chain_of(support::preset_named("estuary-150")), "2 to 6 segments; this one has 1"));
    CHECK(tells(chain_of(support::preset_named("millrace-170")), "joint 1 swings by"));
    CHECK(tells(chain_of(support::preset_named("reedline-120")), "times as long as high"));

    document::Document heavy = narrow_lure();
    for (document::Hole& h : heavy.holes)
        h.fill.reset();
    CHECK(tells(chain_of(heavy), "of its mass in water"));

    document::Document lip = narrow_lure();
    document::Part part;
    part.material = "nylon";
    part.mass_kg = 0.001;
    part.at_m = {-0.02, 0.0, 0.0};
    lip.parts.push_back(part);
    CHECK(tells(chain_of(lip), "without a lip"));

    document::Document back = narrow_lure();
    back.hangers[0].on = document::HangerOn::back;
    back.hangers[0].x_m = 0.03;
    CHECK(tells(chain_of(back), "tied"));
}

TEST_CASE("a line is tied to the hanger on the nose", "[swim]") {
    const auto chain = chain_of(narrow_lure());
    REQUIRE(chain.ok());
    CHECK(chain->tie_x_m < 0.0);
    CHECK(chain->tie_x_m > -0.02);
    document::Document none = narrow_lure();
    none.hangers.clear();
    CHECK(chain_of(none)->tie_x_m == 0.0);
}
