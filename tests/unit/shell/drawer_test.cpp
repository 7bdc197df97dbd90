#include "state/drawer.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <string>

using namespace evenfall;
using namespace evenfall::shell;
using Catch::Matchers::WithinAbs;
using state::DrawerItemKind;

namespace {

state::Drawer filled() {
    state::Drawer drawer;
    document::Part hook;
    hook.name = "Treble \"small\"";
    hook.material = "steel";
    hook.mass_kg = 0.00172;
    hook.mass_sigma_kg = 0.00004;
    hook.reach_m = 0.0185;
    hook.stage = Stage::rigged;
    drawer.put(state::drawer_item_of(hook));
    state::DrawerItem wire;
    wire.kind = DrawerItemKind::wire;
    wire.name = "Soft 0.8";
    wire.diameter_m = 0.0008;
    wire.temper = document::WireTemper::soft;
    drawer.put(wire);
    state::DrawerItem rod;
    rod.kind = DrawerItemKind::stock;
    rod.name = "Lead rod";
    rod.material = "lead";
    rod.diameter_m = 0.0055;
    drawer.put(rod);
    return drawer;
}

std::string with(const std::string& what, const std::string& by) {
    std::string text =
        R"({"evenfall_drawer":1,"things":[{"kind":"part","name":"Ring","material":"stainless","mass_g":0.2,"put_on":"rigged"}]})";
    const auto at = text.find(what);
    REQUIRE(at != std::string::npos);
    return text.replace(at, what.size(), by);
}

} // namespace

TEST_CASE("a drawer written and read again is the same drawer", "[shell][drawer]") {
    const state::Drawer drawer = filled();
    const auto read = state::read_drawer(state::write_drawer(drawer));
    REQUIRE(read.ok());
    REQUIRE(read->things().size() == 3);
    CHECK(state::write_drawer(*read) == state::write_drawer(drawer));
    CHECK(read->things()[0].name == "Treble \"small\"");
    CHECK_THAT(read->things()[0].mass_kg, WithinAbs(0.00172, 1e-12));
    CHECK_THAT(read->things()[0].reach_m.value(), WithinAbs(0.0185, 1e-12));
    CHECK(read->things()[0].put_on == Stage::rigged);
    CHECK(read->things()[1].temper == document::WireTemper::soft);
    CHECK(read->things()[2].material == "lead");
}

TEST_CASE("a piece laid in under a name that is there takes its place, and every change is told",
          "[shell][drawer]") {
    state::Drawer drawer = filled();
    const unsigned before = drawer.revision();
    state::DrawerItem heavier = drawer.things()[0];
    heavier.mass_kg = 0.002;
    CHECK(drawer.put(heavier));
    CHECK(drawer.things().size() == 3);
    CHECK(drawer.things()[0].mass_kg == 0.002);
    CHECK(drawer.revision() > before);
    drawer.remove(1);
    REQUIRE(drawer.things().size() == 2);
    CHECK(drawer.things()[1].kind == DrawerItemKind::stock);
    for (std::size_t i = drawer.things().size(); i < state::most_things; ++i) {
        state::DrawerItem one = heavier;
        one.name = std::to_string(i);
        REQUIRE(drawer.put(one));
    }
    heavier.name = "one too many";
    CHECK_FALSE(drawer.put(heavier));
}

TEST_CASE("a piece put on a lure gives it its figures, and the lure forgets where they came from",
          "[shell][drawer]") {
    document::Document lure;
    const state::Drawer drawer = filled();
    const document::Document rigged = state::add_part_from(drawer.things()[0])(lure);
    REQUIRE(rigged.parts.size() == lure.parts.size() + 1);
    const document::Part& part = rigged.parts.back();
    CHECK(part.name == "Treble \"small\"");
    CHECK(part.mass_kg == 0.00172);
    CHECK(part.mass_sigma_kg == 0.00004);
    CHECK(part.stage == Stage::rigged);
    CHECK(state::drawer_item_of(part).reach_m == drawer.things()[0].reach_m);
}

TEST_CASE("a drawer that cannot be is refused by the field that is wrong", "[shell][drawer]") {
    CHECK(state::read_drawer(with("0.2", "0.2")).ok());
    const struct {
        std::string text;
        ProblemCode code;
        std::string path;
    } wrong[] = {
        {with("0.2", "-0.2"), ProblemCode::out_of_range, "/things/0/mass_g"},
        {with("0.2", "\"much\""), ProblemCode::wrong_type, "/things/0/mass_g"},
        {with("\"mass_g\":0.2,", ""), ProblemCode::missing_key, "/things/0/mass_g"},
        {with("stainless", "unobtainium"), ProblemCode::unknown_name, "/things/0/material"},
        {with("\"part\"", "\"anvil\""), ProblemCode::unknown_name, "/things/0/kind"},
        {with("\"put_on\"", "\"colour\":1,\"put_on\""), ProblemCode::unknown_key, "/things/0/colour"},
        {with("rigged", "leaded"), ProblemCode::unknown_name, "/things/0/put_on"},
        {with("Ring", ""), ProblemCode::out_of_range, "/things/0/name"},
        {with("Ring", std::string(81, 'n')), ProblemCode::out_of_range, "/things/0/name"},
        {with(":1,", ":2,"), ProblemCode::unknown_version, "/evenfall_drawer"},
        {with("things", "pieces"), ProblemCode::missing_key, "/things"},
        {"[]", ProblemCode::not_json, ""},
        {"{\"evenfall_drawer\":1,\"things\":[[[[[[]]]]]]}", ProblemCode::wrong_type, "/things/0"},
        {"{\"evenfall_drawer\":1,\"things\":" + std::string(40, '[') + std::string(40, ']') + "}",
         ProblemCode::not_json, ""},
        {std::string(state::most_drawer_bytes + 1, ' '), ProblemCode::too_large, ""},
    };
    for (const auto& w : wrong) {
        CAPTURE(w.text.substr(0, 200));
        const auto read = state::read_drawer(w.text);
        REQUIRE_FALSE(read.ok());
        CHECK(read.problems().front().code == w.code);
        CHECK(read.problems().front().path == w.path);
        CHECK_FALSE(read.problems().front().sentence.empty());
    }
}

TEST_CASE("whatever is laid into the drawer, the drawer opens again with all of it", "[shell][drawer]") {
    std::string letters = "x";
    for (int i = 0; i < 60; ++i)
        letters += "ä";
    for (const std::string& name :
         {std::string(81, 'n'), std::string(400, 'n'), letters, std::string("a\tb\x01"),
          std::string("half \xC3"), std::string(79, 'n') + "\xED\xA0\x80"}) {
        CAPTURE(name);
        document::Part part;
        part.name = name;
        state::Drawer drawer;
        REQUIRE(drawer.put(state::drawer_item_of(part)));
        state::DrawerItem other;
        other.name = "Ring";
        REQUIRE(drawer.put(other));
        other.name = name + "!";
        (void)drawer.replace(1, other);
        const auto read = state::read_drawer(state::write_drawer(drawer));
        REQUIRE(read.ok());
        CHECK(read->things().size() == 2);
        CHECK(state::write_drawer(*read) == state::write_drawer(drawer));
    }
}

TEST_CASE("a piece of whose name nothing can be written is not laid in", "[shell][drawer]") {
    state::Drawer drawer = filled();
    const std::string before = state::write_drawer(drawer);
    for (const char* name : {"", "\x01", "\xC3"}) {
        state::DrawerItem thing = drawer.things()[0];
        thing.name = name;
        CHECK_FALSE(drawer.put(thing));
        CHECK_FALSE(drawer.replace(0, thing));
        CHECK(state::write_drawer(drawer) == before);
    }
}

TEST_CASE("a piece cannot be called as another of its kind is", "[shell][drawer]") {
    state::Drawer drawer = filled();
    state::DrawerItem rod = drawer.things()[2];
    rod.name = "Lead rod thick";
    REQUIRE(drawer.put(rod));
    rod.name = "Lead rod";
    const unsigned revision = drawer.revision();
    (void)drawer.replace(3, rod);
    CHECK(drawer.things()[3].name == "Lead rod thick");
    CHECK(drawer.revision() == revision);
    const auto read = state::read_drawer(state::write_drawer(drawer));
    REQUIRE(read.ok());
    CHECK(read->things().size() == drawer.things().size());
}
