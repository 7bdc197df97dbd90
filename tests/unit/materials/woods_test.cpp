#include "materials/woods.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <set>
#include <string>

using namespace evenfall::materials;
using Catch::Matchers::WithinRel;

TEST_CASE("every wood has an id of its own and is found by it", "[materials]") {
    std::set<std::string_view> ids;
    for (const Wood& wood : woods()) {
        INFO(wood.id);
        CHECK(ids.insert(wood.id).second);
        CHECK(find_wood(wood.id) == &wood);
        CHECK_FALSE(wood.name.empty());
    }
    for (const char* id : {"basswood", "yellow_poplar", "black_walnut", "douglas_fir", "western_redcedar",
                           "white_pine", "balsa", "hard_maple", "red_alder", "paulownia"}) {
        INFO(id);
        CHECK(find_wood(id) != nullptr);
    }
    CHECK(find_wood("") == nullptr);
    CHECK(find_wood("Basswood") == nullptr);
}

TEST_CASE("every figure of a wood has a source, a spread and a value of wood", "[materials]") {
    for (const Wood& wood : woods()) {
        INFO(wood.id);
        REQUIRE((wood.sg_green || wood.sg_12));
        for (const auto& figure : {wood.sg_green, wood.sg_12}) {
            if (!figure) continue;
            CHECK(figure->source.size() > 10);
            CHECK(figure->spread >= 0.10);
            CHECK(figure->spread <= 0.25);
            CHECK((figure->value > 0.1 && figure->value < 1.0));
        }
        if (wood.side_hardness_n) {
            CHECK(wood.side_hardness_n->source.size() > 10);
            CHECK(wood.side_hardness_n->spread > 0.0);
            CHECK((wood.side_hardness_n->value > 400.0 && wood.side_hardness_n->value < 10000.0));
        }
    }
}

TEST_CASE("what was not read in the source itself says so", "[materials]") {
    for (const Wood& wood : woods()) {
        INFO(wood.id);
        for (const auto& figure : {wood.sg_green, wood.sg_12, wood.side_hardness_n}) {
            if (!figure) continue;
            const std::string source{figure->source};
            if (figure->provenance == Provenance::memory) CHECK(source.find("memory") != std::string::npos);
            if (figure->provenance == Provenance::practice)
                CHECK(source.find("practice") != std::string::npos);
            if (source.find("memory") != std::string::npos) CHECK(figure->provenance == Provenance::memory);
            for (const char* copy : {"reprint", "copied", "as quoted"}) {
                if (source.find(copy) != std::string::npos)
                    CHECK(figure->provenance == Provenance::second_hand);
            }
        }
    }
}

TEST_CASE("a board at 12 % weighs 1.12 times its specific gravity at 12 %", "[materials]") {
    // Specific gravity is oven-dry mass over volume at 12 %: the water in the wood comes on top.
    for (const Wood& wood : woods()) {
        if (!wood.sg_12) continue;
        INFO(wood.id);
        CHECK_THAT(wood_density_kg_m3(wood, 12.0), WithinRel(1120.0 * wood.sg_12->value, 1e-14));
    }
}

TEST_CASE("a board grows heavier with moisture all the way to 30 %", "[materials]") {
    for (const Wood& wood : woods()) {
        INFO(wood.id);
        for (int moisture = 0; moisture < 30; ++moisture) {
            CHECK(wood_density_kg_m3(wood, moisture) < wood_density_kg_m3(wood, moisture + 1));
        }
    }
}

TEST_CASE("without a green figure the one at 12 % is enough, and gives what it came from", "[materials]") {
    Wood only_green{"a", "A", SourcedValue{0.40, 0.1, Provenance::memory, ""}, std::nullopt, std::nullopt};
    Wood only_12 = only_green;
    only_12.sg_12 = SourcedValue{wood_density_kg_m3(only_green, 12.0) / 1120.0, 0.1, Provenance::memory, ""};
    only_12.sg_green.reset();
    for (double moisture : {0.0, 6.0, 12.0, 20.0, 30.0}) {
        CHECK_THAT(wood_density_kg_m3(only_12, moisture),
                   WithinRel(wood_density_kg_m3(only_green, moisture), 1e-13));
    }
    CHECK(&specific_gravity(only_12) == &*only_12.sg_12);
    CHECK(&specific_gravity(only_green) == &*only_green.sg_green);
}
