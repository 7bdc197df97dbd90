#include "materials/solids.hpp"

#include <catch2/catch_test_macros.hpp>

#include <set>
#include <string>

using namespace evenfall::materials;

TEST_CASE("every material has an id of its own, a use and a figure with its source", "[materials]") {
    std::set<std::string_view> ids;
    for (const Solid& solid : solids()) {
        INFO(solid.id);
        CHECK(ids.insert(solid.id).second);
        CHECK(find_solid(solid.id) == &solid);
        CHECK_FALSE(solid.name.empty());
        CHECK(solid.uses != 0);
        CHECK(solid.density_kg_m3.source.size() > 10);
        CHECK((solid.density_kg_m3.spread > 0.0 && solid.density_kg_m3.spread < 0.2));
        CHECK((solid.density_kg_m3.value > 500.0 && solid.density_kg_m3.value < 20000.0));
    }
    CHECK(find_solid("") == nullptr);
    CHECK(find_solid("gold") == nullptr);
}

TEST_CASE("a recalled density and one of common practice say so in their source", "[materials]") {
    for (const Solid& solid : solids()) {
        INFO(solid.id);
        const std::string source{solid.density_kg_m3.source};
        const bool recalled = solid.density_kg_m3.provenance == Provenance::memory;
        const bool practice = solid.density_kg_m3.provenance == Provenance::practice;
        CHECK((recalled || practice));
        if (recalled) CHECK(source.find("from memory") != std::string::npos);
        if (practice) CHECK(source.find("Common practice, no source") != std::string::npos);
    }
}

TEST_CASE("holes can be filled without lead", "[materials]") {
    for (const char* id : {"tungsten", "tin", "bismuth", "steel", "brass"}) {
        INFO(id);
        const Solid* solid = find_solid(id);
        REQUIRE(solid != nullptr);
        CHECK(solid->serves(Use::ballast));
    }
}

TEST_CASE("a material serves only where it makes sense", "[materials]") {
    CHECK(find_solid("lead")->serves(Use::ballast));
    CHECK_FALSE(find_solid("lead")->serves(Use::coat));
    CHECK(find_solid("ca_soda")->serves(Use::cap));
    CHECK_FALSE(find_solid("ca_soda")->serves(Use::ballast));
    CHECK(find_solid("epoxy")->serves(Use::coat));
    CHECK(find_solid("epoxy")->serves(Use::cap));
    CHECK(find_solid("stainless")->serves(Use::part));
    CHECK_FALSE(find_solid("acrylic_paint")->serves(Use::part));
}
