#include "water/fall/drag_items.hpp"

#include "evenfall.hpp"
#include "support/small_lures.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using namespace evenfall;
using namespace evenfall::fall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

std::vector<DragItem> items_of(const document::Document& document, Stage stage = Stage::rigged) {
    const auto e = evaluate(document);
    REQUIRE(e.ok());
    return drag_items(*e->body.lines, document, e->ledger, stage);
}

document::Document with_part(const char* material, double mass_kg, Vec3 at, double embedded = 0.0) {
    document::Document d = support::block();
    document::Part p;
    p.stage = Stage::rigged;
    p.material = material;
    p.mass_kg = mass_kg;
    p.at_m = at;
    p.embedded = embedded;
    d.parts = {p};
    return d;
}

} // namespace

TEST_CASE("hooks below the belly drag, pins and eyes inside the skin are counted as body", "[fall]") {
    const auto items = items_of(support::fish());
    REQUIRE(items.size() == 2);
    for (const DragItem& i : items) {
        CHECK(i.at_m.z < -0.02);
        CHECK(
            (i.cd_area_low_m2 > 0.0 && i.cd_area_low_m2 < i.cd_area_m2 && i.cd_area_m2 < i.cd_area_high_m2));
    }
}

TEST_CASE("before they are hung on, hooks do not drag", "[fall]") {
    CHECK(items_of(support::fish(), Stage::clear_coated).empty());
}

TEST_CASE("a steel hook of 2 g is 268 mm of wire of 1.1 mm, at 0.45 of its broadside drag", "[fall]") {
    // Length 4V/(πd²) with V = 2 g / 7.85 g/cm³ = 268 mm, steel of the table. Cd of a wire at Re 190 is
    // about 1.3.
    const auto items = items_of(with_part("steel", 0.002, {0.06, 0.0, -0.03}));
    REQUIRE(items.size() == 1);
    const double length = 0.002 / 7850.0 * 4.0 / (3.14159265 * 1.1e-3 * 1.1e-3);
    CHECK_THAT(items[0].cd_area_m2, WithinRel(0.45 * 1.31 * length * 1.1e-3, 0.03));
    CHECK_THAT(items[0].cd_area_high_m2 / items[0].cd_area_low_m2, WithinRel(0.65 / 0.25, 1e-12));
}

TEST_CASE("what sits in the wood does not drag, and half as much outside drags less", "[fall]") {
    CHECK(items_of(with_part("steel", 0.002, {0.06, 0.0, -0.03}, 1.0)).empty());
    CHECK(items_of(with_part("steel", 0.002, {0.06, 0.0, -0.01}, 0.5)).empty());
    CHECK(items_of(with_part("steel", 0.002, {0.06, 0.0, -0.03}, 0.5))[0].cd_area_m2 <
          items_of(with_part("steel", 0.002, {0.06, 0.0, -0.03}))[0].cd_area_m2);
}

TEST_CASE("a soft tail of 2 cm³ is a plate of 28 mm side on edge, a glass bead a ball", "[fall]") {
    const auto tail = items_of(with_part("plastisol", 0.00213, {0.13, 0.0, 0.0}));
    REQUIRE(tail.size() == 1);
    // 1.2·28.3 mm·2.5 mm + 2·0.02·800 mm² = 117 mm²; the density of soft plastic is 1.065 in the table.
    CHECK_THAT(tail[0].cd_area_m2, WithinRel(117e-6, 0.01));
    const auto bead = items_of(with_part("glass", 0.0025 * 0.5236, {-0.01, 0.0, 0.0}));
    REQUIRE(bead.size() == 1);
    // A ball of 10 mm at Re 1750: 0.413·78.5 mm².
    CHECK_THAT(bead[0].cd_area_m2, WithinRel(0.413 * 78.54e-6, 0.01));
}
