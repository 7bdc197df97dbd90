// What was done to the holes, and which holes a reading is of.

#include "document/work_done.hpp"

#include <catch2/catch_test_macros.hpp>

using namespace evenfall;
using namespace evenfall::document;

namespace {

Hole hole_of(double depth_m, double fill_kg, HoleUse use = HoleUse::ballast) {
    Hole hole;
    hole.use = use;
    hole.depth_m = depth_m;
    hole.fill = Fill{};
    hole.fill->mass_kg = fill_kg;
    return hole;
}

Reading weighed(Stage stage) {
    Reading r;
    r.stage = stage;
    r.mass_kg = 0.02;
    return r;
}

} // namespace

TEST_CASE("Readings of the drilled piece and later ones stay readings of the holes as they were, change by "
          "change") {
    Document d;
    d.holes = {hole_of(0.010, 0.002), hole_of(0.012, 0.003)};
    d.log = {weighed(Stage::carved), weighed(Stage::leaded)};
    std::vector<Hole> holes = d.holes;
    holes[0].fill->mass_kg = 0.001;
    holes.push_back(hole_of(0.005, 0.0004));
    change_holes(d, holes);
    CHECK_FALSE(d.log[0].before_change); // no hole was cut then
    CHECK(d.log[1].before_change == 0);
    // Another hole before any reading more: the same change, and what was before it stays.
    holes = d.holes;
    holes[0].fill->mass_kg = 0.0015;
    holes[1].fill->mass_kg = 0.002;
    change_holes(d, holes);
    CHECK(d.log[1].before_change == 0);
    d.log.push_back(weighed(Stage::sealed));
    holes = d.holes;
    holes[1].fill->mass_kg = 0.004;
    change_holes(d, holes);
    CHECK(d.log[2].before_change == 1);

    const Document first = before_change(d, 0);
    CHECK(first.holes[0].fill->mass_kg == 0.002);
    CHECK(first.holes[1].fill->mass_kg == 0.003);
    CHECK(first.holes[2].depth_m == 0.0);
    const Document second = before_change(d, 1);
    CHECK(second.holes[0].fill->mass_kg == 0.0015);
    CHECK(second.holes[1].fill->mass_kg == 0.002);
    CHECK(second.holes[2].depth_m == 0.005);
    CHECK(d.holes[1].fill->mass_kg == 0.004);
}

TEST_CASE("Without a reading of the drilled piece nothing of the holes before is kept") {
    Document d;
    d.holes = {hole_of(0.010, 0.002)};
    d.log = {weighed(Stage::carved)};
    change_holes(d, {hole_of(0.011, 0.002)});
    CHECK(d.holes[0].depth_m == 0.011);
    CHECK(d.holes[0].before.empty());
    CHECK_FALSE(d.log[0].before_change);
}

TEST_CASE("How far the work is: by the latest reading, or by the ticks of all holes") {
    Document d;
    CHECK(stage_of_holes(d) == Stage::carved);
    d.holes = {hole_of(0.010, 0.002, HoleUse::drilled), hole_of(0.0, 0.0),
               hole_of(0.02, 0.0, HoleUse::fixed)};
    CHECK(stage_of_holes(d) == Stage::drilled);
    d.holes[0].use = HoleUse::leaded;
    CHECK(stage_of_holes(d) == Stage::leaded);
    d.holes[1] = hole_of(0.01, 0.001);
    CHECK(stage_of_holes(d) == Stage::carved);

    d.log = {weighed(Stage::drilled)};
    CHECK(as_it_lies(d).holes[0].use == HoleUse::leaded);
    CHECK(as_it_lies(d).holes[1].use == HoleUse::drilled);
    CHECK(as_it_lies(d).holes[2].use == HoleUse::fixed);
    d.log.push_back(weighed(Stage::sealed));
    CHECK(as_it_lies(d).holes[1].use == HoleUse::leaded);
    // A new lure of the recipe has whole wood.
    d.log.push_back(weighed(Stage::carved));
    d.log.back().lure = 1;
    CHECK(as_it_lies(d).holes[1].use == HoleUse::ballast);
    d.log.back().excluded = true;
    CHECK(as_it_lies(d).holes[1].use == HoleUse::leaded);
}

TEST_CASE("The first reading of another lure finds its wood whole; more of the same lure leave the ticks") {
    Document d;
    d.holes = {hole_of(0.010, 0.002, HoleUse::leaded), hole_of(0.02, 0.0, HoleUse::fixed)};
    put_down(d, weighed(Stage::sealed));
    CHECK(d.holes[0].use == HoleUse::leaded);
    Reading other = weighed(Stage::carved);
    other.lure = 1;
    put_down(d, other);
    CHECK(d.holes[0].use == HoleUse::ballast);
    CHECK(d.holes[1].use == HoleUse::fixed);
    d.holes[0].use = HoleUse::drilled;
    put_down(d, other);
    CHECK(d.holes[0].use == HoleUse::drilled);
    CHECK(d.log.size() == 3);
}
