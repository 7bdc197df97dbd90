// Air that is caught under water: it lifts, and weighs nothing.

#include "ledger/fold.hpp"
#include "support/small_lures.hpp"
#include "support/worked.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using support::worked;

namespace {

constexpr double air_m3 = 0.4e-6;

document::Document with_air(document::Document d) {
    d.air_m3 = air_m3;
    return d;
}

const StageAnswer& at(const Answers& a, Stage stage) {
    return a.stages[static_cast<std::size_t>(stage)];
}

} // namespace

TEST_CASE("caught air lifts by the water it pushes aside, from the sealed piece on, and weighs nothing") {
    const Answers without = worked(support::fish()).answers;
    const Answers a = worked(with_air(support::fish())).answers;
    CHECK(a.mass.kg == without.mass.kg);
    CHECK_THAT(a.displaced_m3 - without.displaced_m3, WithinRel(air_m3, 1e-6));
    CHECK_THAT(a.in_water.kg - without.in_water.kg, WithinRel(-air_m3 * a.water_density_kg_m3, 1e-6));
    for (const Stage stage : {Stage::carved, Stage::drilled, Stage::hardware, Stage::leaded})
        CHECK(at(a, stage).in_tub.kg == at(without, stage).in_tub.kg);
    for (const Stage stage : {Stage::sealed, Stage::painted, Stage::clear_coated, Stage::rigged}) {
        CHECK(at(a, stage).mass.kg == at(without, stage).mass.kg);
        CHECK(at(a, stage).in_tub.kg < at(without, stage).in_tub.kg - 0.39e-3);
    }
}

TEST_CASE("it is a line of the ledger only where some is set") {
    const auto lines = [](const document::Document& d) {
        const auto all = worked(d).ledger;
        return std::count_if(all.begin(), all.end(),
                             [](const ledger::Line& line) { return line.kind == ledger::Kind::air; });
    };
    document::Document d = support::fish();
    CHECK(lines(d) == 0);
    d.air_m3 = 0.0;
    CHECK(lines(d) == 0);
    CHECK(lines(with_air(d)) == 1);
}

TEST_CASE("it sits in the flooded pockets, and without one in the middle of the wood") {
    const auto place = [](const document::Document& d) {
        for (const ledger::Line& line : worked(d).ledger)
            if (line.kind == ledger::Kind::air) return line.at_m;
        return Vec3{};
    };
    document::Document d = with_air(support::block());
    CHECK_THAT(place(d).x, WithinAbs(0.060, 1e-9));
    document::Pocket pocket;
    pocket.x_from_m = 0.080;
    pocket.x_to_m = 0.090;
    pocket.width_m = 0.004;
    d.pockets = {pocket};
    CHECK_THAT(place(d).x, WithinAbs(0.085, 1e-9));
    d.pockets[0].floods = false;
    CHECK_THAT(place(d).x, WithinAbs(0.060, 1e-9));
}
