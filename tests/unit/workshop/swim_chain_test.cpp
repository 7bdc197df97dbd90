#include "workshop/swim_chain.hpp"

#include "support/presets.hpp"
#include "support/worked.hpp"
#include "water/swim/matrices.hpp"
#include "water/swim/swim.hpp"

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include <cmath>

using namespace evenfall;
using Catch::Approx;

namespace {

/// A demo lure whose joints are relieved by this much on either side.
document::Document relieved(double rad) {
    document::Document d = support::preset_named("millrace-170");
    for (document::Joint& j : d.joints) {
        j.relief_fore_rad = rad;
        j.relief_aft_rad = rad;
    }
    return d;
}

/// With joints that open by what the model was compared with.
document::Document narrow_lure() {
    return relieved(0.08);
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
    CHECK(tells(chain_of(support::preset_named("estuary-150")),
                "How it swims can be told only of lures of 2 to 6 segments; this one has 1."));
    CHECK(tells(chain_of(relieved(0.6)),
                "How it swims can be told only of joints that swing by 5 to 55° to either "
                "side; joint 1 swings by"));
    CHECK(tells(chain_of(support::preset_named("reedline-120")),
                "How it swims can be told only of a body 4 to 7 times as long as high; this one is 3.6 times "
                "as long."));

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

TEST_CASE("demo lures whose joints open as usual lures' do are answered, with a caution and a wider band",
          "[swim]") {
    for (const char* name : {"millrace-170", "quarry-230"}) {
        INFO(name);
        const auto chain = chain_of(support::preset_named(name));
        REQUIRE(chain.ok());
        CHECK(swim::widest_swing_rad(*chain) > swim::usual_swing_rad);
        const swim::SwimAnswer a = swim::swim(*chain, {}, 1);
        CHECK(!a.caution.empty());
        REQUIRE(a.beats_per_m);
        const double by_draws = a.draws[0].beats_per_m;
        CHECK(std::log(a.beats_per_m->high / by_draws) ==
              Approx(1.2815515655 * swim::model_sigma_ln(swim::widest_swing_rad(*chain))));
    }
    const auto narrow = chain_of(narrow_lure());
    REQUIRE(narrow.ok());
    CHECK(swim::swim(*narrow, {}, 1).caution.empty());
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
