// Ways out of drawn lures: whatever is offered does what it says when it is read back from its file.

#include "document/write.hpp"
#include "materials/water_properties.hpp"
#include "reach.hpp"
#include "support/random_lures.hpp"
#include "water/fall/descent.hpp"
#include "workshop/joint_answers.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>

using namespace evenfall;
using Catch::Matchers::WithinAbs;

namespace {

/// Weight in water with which a lure does what is asked of it.
double asked_kg(const document::Document& d, const Evaluation& e) {
    if (d.targets.by == document::TargetBy::in_water) return d.targets.in_water_kg;
    const auto water = materials::water_properties(d.water.temperature_c, d.water.salinity_g_kg);
    REQUIRE(water.ok());
    const auto kg = fall::FallingLure(e.body, e.ledger, d, *water).in_water_for(d.targets.fall_m_s);
    REQUIRE(kg.has_value());
    return *kg;
}

std::vector<std::string> warned_of(const document::Document& d, const Evaluation& e) {
    std::vector<std::string> out;
    for (const Problem& p : e.answers.warnings)
        out.push_back(std::to_string(static_cast<int>(p.code)) + p.path);
    const auto joints = joints::joint_answers(d, e.body);
    REQUIRE(joints.ok());
    for (const Problem& p : joints->warnings)
        out.push_back(std::to_string(static_cast<int>(p.code)) + p.path);
    std::sort(out.begin(), out.end());
    return out;
}

struct Seen {
    int unmet = 0;
    int helped = 0;
    int ways = 0;
};

void look_at(const document::Document& lure, const reach::Goal& goal, Seen& seen) {
    const auto ways = reach::ways_out(lure, goal);
    REQUIRE(ways.ok());
    if (ways->met) {
        CHECK(ways->ways.empty());
        return;
    }
    ++seen.unmet;
    seen.helped += ways->ways.empty() ? 0 : 1;
    CHECK(ways->ways.size() <= reach::most_ways);
    const auto now = evaluate(ways->document);
    REQUIRE(now.ok());
    const std::vector<std::string> before = warned_of(ways->document, *now);
    double cost = 0.0;
    for (const reach::Way& way : ways->ways) {
        ++seen.ways;
        INFO(way.change.text(units::metric));
        const auto read = read_document(write_document(way.document));
        REQUIRE(read.ok());
        const auto lure_then = evaluate(*read);
        REQUIRE(lure_then.ok());
        const Answers& a = lure_then->answers;
        CHECK_THAT(a.in_water.kg, WithinAbs(asked_kg(*read, *lure_then), 1e-5));
        REQUIRE(a.pitch_rad.has_value());
        CHECK_THAT(*a.pitch_rad, WithinAbs(goal.targets.pitch_rad, 0.05 * units::degree_rad));
        // The file keeps millionths of a trade unit of each field, drawn lures have more figures.
        CHECK_THAT(way.after.mass_kg, WithinAbs(a.mass.kg, 1e-5));
        const auto unwritten = evaluate(way.document);
        REQUIRE(unwritten.ok());
        CHECK_THAT(way.after.mass_kg, WithinAbs(unwritten->answers.mass.kg, 1e-15));
        CHECK_THAT(way.after.in_water_kg, WithinAbs(unwritten->answers.in_water.kg, 1e-15));
        CHECK_THAT(way.after.bg_m, WithinAbs(unwritten->answers.bg_m, 1e-15));
        CHECK(way.after.bg_m >= reach::least_bg_m);
        CHECK(way.cost > 0.0);
        CHECK(way.cost >= cost);
        cost = way.cost;
        CHECK((way.kinds.size() == 1 || way.kinds.size() == 2));
        CHECK_FALSE(way.change.empty());
        CHECK_FALSE(document::same(*read, lure));
        const std::vector<std::string> after = warned_of(*read, *lure_then);
        CHECK(std::includes(before.begin(), before.end(), after.begin(), after.end()));
    }
}

} // namespace

TEST_CASE("every way out meets what was asked, read back from its file, and warns of nothing new",
          "[properties][random][reach]") {
    Seen seen;
    support::each_random_lure(2101, 300, [&](const support::RandomLure& lure, int) {
        reach::Goal goal{lure.document.targets};
        // What no lure could do is refused (off_range).
        if (!reach::off_range(goal, lure.evaluation.answers).empty()) {
            CHECK_FALSE(reach::ways_out(lure.document, goal).ok());
            return;
        }
        look_at(lure.document, goal, seen);
    });
    INFO(seen.unmet << " unmet, " << seen.helped << " helped, " << seen.ways << " ways");
    CHECK(seen.unmet > 50);
    CHECK(seen.ways > 100);
    CHECK(seen.helped > 80);
}
