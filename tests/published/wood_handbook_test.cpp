// Wood by the Wood Handbook (USDA Forest Products Laboratory, FPL-GTR-282, 2021), chapters 4 and 5, and by
// what is said at the bench.

#include "materials/woods.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <optional>

using namespace evenfall::materials;
using Catch::Matchers::WithinAbs;

namespace {

Wood with_green(double gravity) {
    return {"sample", "Sample", SourcedValue{gravity, 0.1, Provenance::computed, "sample"}, std::nullopt,
            std::nullopt};
}

double gravity_at_12(double green) {
    return wood_density_kg_m3(with_green(green), 12.0) / 1120.0;
}

double shear_mpa(const char* id) {
    return shear_along_grain_pa(*find_wood(id), 1.0) / 1e6;
}

double hardness(const char* id) {
    return find_wood(id)->side_hardness_n->value;
}

} // namespace

TEST_CASE("white ash of green gravity 0.55 has 0.605 at 12 % as drawn, 0.6027 as computed (Wood Handbook "
          "2021, eq. 4-13 and its figure)",
          "[materials]") {
    CHECK_THAT(gravity_at_12(0.55), WithinAbs(0.6027, 0.00005));
    CHECK_THAT(gravity_at_12(0.55), WithinAbs(0.605, 0.0025)); // read off a curve
}

TEST_CASE("density at 12 % follows from green gravity (Wood Handbook 2021, eqs. 4-13 and 4-14)",
          "[materials]") {
    CHECK_THAT(gravity_at_12(0.40), WithinAbs(0.4272, 0.00005));
    CHECK_THAT(wood_density_kg_m3(with_green(0.40), 12.0), WithinAbs(478.4, 0.06));
    CHECK_THAT(wood_density_kg_m3(with_green(0.32), 12.0), WithinAbs(377.6, 0.06));
    CHECK_THAT(wood_density_kg_m3(with_green(0.45), 12.0), WithinAbs(542.8, 0.06));
    CHECK_THAT(wood_density_kg_m3(with_green(0.16), 12.0), WithinAbs(183.9, 0.06));
}

TEST_CASE("wood at fibre saturation has its green gravity, oven-dry wood 26.5 % of it less volume (Wood "
          "Handbook 2021, eqs. 4-11 and 4-12)",
          "[materials]") {
    CHECK_THAT(wood_density_kg_m3(with_green(0.40), 30.0), WithinAbs(520.0, 1e-9));
    CHECK_THAT(wood_density_kg_m3(with_green(0.40), 0.0), WithinAbs(400.0 / (1.0 - 0.265 * 0.40), 1e-9));
}

TEST_CASE("tabulated yellow-poplar weighs 470.4 kg/m³ at 12 % (Wood Handbook 2021, Table 5-3a, second-hand)",
          "[materials]") {
    CHECK_THAT(wood_density_kg_m3(*find_wood("yellow_poplar"), 12.0), WithinAbs(470.4, 1e-9));
}

TEST_CASE(
    "green gravity by eq. 4-13 and gravity at 12 % by the table differ by less than pieces of one species do "
    "(Wood Handbook 2021, ch. 4 and 5)",
    "[materials]") {
    for (const Wood& wood : woods()) {
        if (!wood.sg_12 || !wood.sg_green) continue;
        INFO(wood.id);
        CHECK_THAT(gravity_at_12(wood.sg_green->value) / wood.sg_12->value, WithinAbs(1.0, 0.10));
    }
}

// "About" in these sayings: they differ from one another by steps of a tenth or more, so within 0.08 the
// saying still fits and the next one does not.
TEST_CASE("yellow-poplar is about half as hard as black walnut (common practice, no source)", "[materials]") {
    CHECK_THAT(hardness("yellow_poplar") / hardness("black_walnut"), WithinAbs(1.0 / 2.0, 0.08));
}

TEST_CASE("yellow-poplar is about a fifth softer than Douglas-fir (common practice, no source)",
          "[materials]") {
    CHECK_THAT(hardness("yellow_poplar") / hardness("douglas_fir"), WithinAbs(4.0 / 5.0, 0.08));
}

TEST_CASE("yellow-poplar is about a quarter harder than basswood (common practice, no source)",
          "[materials]") {
    CHECK_THAT(hardness("yellow_poplar") / hardness("basswood"), WithinAbs(5.0 / 4.0, 0.08));
}

TEST_CASE("Douglas-fir's side hardness in pounds is its newtons in the metric table (Wood Handbook 2021, "
          "Tables 5-3a and 5-3b)",
          "[materials]") {
    CHECK_THAT(hardness("douglas_fir"), WithinAbs(3200.0, 50.0)); // the metric table is rounded to 100 N
    CHECK_THAT(hardness("yellow_poplar"), WithinAbs(2400.0, 50.0));
    CHECK_THAT(hardness("western_redcedar"), WithinAbs(1600.0, 50.0));
    CHECK_THAT(hardness("red_alder"), WithinAbs(2600.0, 50.0));
}

TEST_CASE(
    "dry wood shears along the grain at 2.1 MPa in balsa to 16.1 in sugar maple (Wood Handbook 2021, Tables "
    "5-3a and 5-5a, kPa, from memory)",
    "[materials]") {
    struct Row {
        const char* id;
        double mpa;
    };
    // The metric tables are rounded to 100 kPa, the woods of this program come from those in psi.
    for (const Row& row : {Row{"balsa", 2.1}, Row{"white_pine", 6.2}, Row{"basswood", 6.8},
                           Row{"western_redcedar", 6.8}, Row{"red_alder", 7.4}, Row{"douglas_fir", 7.8},
                           Row{"yellow_poplar", 8.2}, Row{"black_walnut", 9.4}, Row{"hard_maple", 16.1}}) {
        INFO(row.id);
        CHECK_THAT(shear_mpa(row.id), WithinAbs(row.mpa, 0.051));
    }
}

TEST_CASE(
    "shear follows 21.9 G^1.13 MPa of hardwoods and 16.6 G^0.85 of softwoods at 12 % (Wood Handbook 2021, "
    "Table 5-11a, from memory)",
    "[materials]") {
    // Species lie about the regression by a quarter: the handbook draws it through all of them.
    for (const Wood& wood : woods()) {
        INFO(wood.id);
        const bool soft =
            wood.id == "douglas_fir" || wood.id == "western_redcedar" || wood.id == "white_pine";
        const double gravity = specific_gravity(wood).value;
        const double by_gravity = soft ? 16.6 * std::pow(gravity, 0.85) : 21.9 * std::pow(gravity, 1.13);
        CHECK_THAT(shear_along_grain_pa(wood, 1.0) / 1e6 / by_gravity, WithinAbs(1.0, 0.27));
    }
}

TEST_CASE(
    "a nail bears 4,650 psi on Douglas-fir of gravity 0.50 (National Design Specification, Table 12.3.3, "
    "from memory)",
    "[materials]") {
    // Oven-dry gravity 0.50 by its share of this species'.
    const Wood& fir = *find_wood("douglas_fir");
    const double share = 500.0 / wood_density_kg_m3(fir, 0.0);
    CHECK_THAT(pin_bearing_pa(fir, share) / 6894.757, WithinAbs(4650.0, 25.0));
}

TEST_CASE("a light piece of a wood bears less than a heavy one, in shear and under a pin", "[materials]") {
    for (const Wood& wood : woods()) {
        CHECK(shear_along_grain_pa(wood, 0.8) < shear_along_grain_pa(wood, 1.0));
        CHECK(pin_bearing_pa(wood, 0.8) < pin_bearing_pa(wood, 1.0));
    }
}
