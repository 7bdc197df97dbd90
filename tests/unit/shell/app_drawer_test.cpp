// The drawer of parts in the application.

#include "unit/shell/bench_of_tests.hpp"

#include "state/drawer.hpp"

using namespace evenfall;
using namespace evenfall::shell;
using namespace evenfall::shell::bench_of_tests;

TEST_CASE("a part without a name, or for a full drawer, is not laid into it silently",
          "[shell][app][drawer]") {
    Bench bench;
    document::Document d = bench.app.document();
    d.parts[0].name.clear();
    REQUIRE(bench.app.open_json(write_document(d)).empty());
    bench.rest();
    bench.tap("step.hardware");
    bench.reach("hardware.0");
    bench.reach("hardware.0.drawer");
    CHECK(bench.there("toast"));
    CHECK_FALSE(bench.app.last_problem().empty());
    CHECK_FALSE(bench.there("drawer.0"));
    state::Drawer full;
    for (std::size_t i = 0; i < state::most_things; ++i) {
        state::DrawerItem thing;
        thing.name = "Ring " + std::to_string(i);
        full.put(thing);
    }
    REQUIRE(bench.app.set_drawer(state::write_drawer(full)).empty());
    bench.app.set_text("hardware.0.name", "Hanger");
    bench.rest();
    const std::string before = bench.app.last_problem();
    bench.reach("hardware.0.drawer");
    CHECK(bench.app.last_problem() != before);
    // A file that does not fit in whole is not laid in by half.
    REQUIRE(bench.app.set_drawer(R"({"evenfall_drawer": 1, "things": []})").empty());
    state::Drawer one;
    one.put(full.things().front());
    REQUIRE(bench.app.add_to_drawer(state::write_drawer(one)).empty());
    state::Drawer others;
    for (std::size_t i = 1; i <= state::most_things; ++i) {
        state::DrawerItem thing;
        thing.name = "Bead " + std::to_string(i);
        others.put(thing);
    }
    CHECK_FALSE(bench.app.add_to_drawer(state::write_drawer(others)).empty());
    bench.rest();
    bench.reach("drawer.0");
    CHECK_FALSE(bench.there("drawer.1"));
}

TEST_CASE("a piece added to the drawer takes no other's place, and none is called as another is",
          "[shell][app][drawer]") {
    Bench bench;
    bench.tap("step.hardware");
    for (int i = 0; i < 3; ++i)
        bench.reach("drawer.add.wire");
    bench.reach("drawer.0");
    bench.reach("drawer.0.out");
    bench.reach("drawer.add.wire");
    CHECK(bench.app.last_problem().empty());
    bench.app.set_text("drawer.2.name", "Wire 2");
    bench.rest();
    CHECK_FALSE(bench.app.last_problem().empty());
    bench.reach("drawer.save");
    const auto kept = state::read_drawer(bench.host.saved_text);
    REQUIRE(kept.ok());
    REQUIRE(kept->things().size() == 3);
    CHECK(kept->things()[0].name == "Wire 2");
    CHECK(kept->things()[1].name == "Wire 3");
}
