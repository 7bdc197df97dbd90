#include "state/everything.hpp"
#include "state/safety.hpp"
#include "state/session.hpp"
#include "state/session_json.hpp"
#include "support/presets.hpp"

#include <catch2/catch_test_macros.hpp>
#include <nlohmann/json.hpp>

#include <string>
#include <utility>
#include <vector>

using namespace evenfall;
using namespace evenfall::shell::state;

namespace {

document::Document lure(const std::string& name, const std::string& preset = "millrace-170") {
    document::Document document = support::preset_named(preset);
    document.name = name;
    return document;
}

DrawerItem hook(const std::string& name, double mass_kg = 0.001) {
    DrawerItem piece;
    piece.name = name;
    piece.mass_kg = mass_kg;
    return piece;
}

Everything sample() {
    Everything all;
    all.lures = {{lure("First"), 1760000000123.0}, {lure("Second", "quarry-230"), 1760000000000.0, "far"}};
    all.bin = {{lure("Thrown"), 1750000000000.0}};
    REQUIRE(all.drawer.put(hook("Treble 6")));
    all.settings.units.length = evenfall::units::Unit::inch_fraction;
    all.settings.theme = Theme::dark;
    return all;
}

std::vector<std::string> names(const std::vector<KeptDocument>& lures) {
    std::vector<std::string> all;
    for (const KeptDocument& kept : lures)
        all.push_back(kept.document.name);
    return all;
}

using Names = std::vector<std::string>;

OnThisDevice device(std::vector<KeptDocument> shelf, std::vector<KeptDocument> bin = {}) {
    OnThisDevice here{{std::move(shelf), std::move(bin), {}, {}}, new_lure()};
    return here;
}

/// The file after one change to its JSON.
template <class Change>
std::string altered(Change change) {
    auto json = nlohmann::ordered_json::parse(write_everything(sample()));
    change(json);
    return json.dump();
}

} // namespace

TEST_CASE("everything in one file reads back as it was", "[shell][everything]") {
    const Everything before = sample();
    const auto read = read_everything(write_everything(before));
    REQUIRE(read.ok());
    REQUIRE(names(read->lures) == Names{"First", "Second"});
    CHECK(write_document(read->lures[1].document) == write_document(before.lures[1].document));
    CHECK(read->lures[0].time_ms == 1760000000123.0);
    CHECK(read->lures[0].id.empty());
    CHECK(read->lures[1].id == "far");
    CHECK(names(read->bin) == Names{"Thrown"});
    CHECK(read->drawer.holds(DrawerItemKind::part, "Treble 6"));
    CHECK(read->settings == before.settings);
    // Nothing at all is a file, too.
    REQUIRE(read_everything(write_everything({})).ok());
}

TEST_CASE(
    "a file of everything with anything unknown, missing, damaged or beyond its limits is refused whole",
    "[shell][everything]") {
    using Json = nlohmann::ordered_json;
    REQUIRE(read_everything(altered([](Json&) {})).ok());
    const std::vector<std::string> refused{
        "",
        "[]",
        "{",
        altered([](Json& j) { j["evenfall_everything"] = 2; }),
        altered([](Json& j) { j["evenfall_everything"] = "1"; }),
        altered([](Json& j) { j["photos"] = Json::array(); }),
        altered([](Json& j) { j.erase("drawer"); }),
        altered([](Json& j) { j["lures"] = 3; }),
        altered([](Json& j) { j["lures"][0].erase("kept_ms"); }),
        altered([](Json& j) { j["lures"][0]["kept_ms"] = -1; }),
        altered([](Json& j) { j["lures"][0]["kept_ms"] = 9e15; }),
        altered([](Json& j) { j["lures"][0]["note"] = "x"; }),
        altered([](Json& j) { j["lures"][0]["id"] = 3; }),
        altered([](Json& j) { j["lures"][0]["id"] = std::string(65, 'x'); }),
        altered([](Json& j) { j["lures"][0]["document"] = "x"; }),
        altered([](Json& j) { j["lures"][1]["document"]["colour"] = "red"; }),
        altered([](Json& j) { j["bin"][0]["document"]["joints"][0]["at_mm"] = 900; }),
        altered([](Json& j) { j["drawer"]["things"][0]["mass_g"] = -1; }),
        altered([](Json& j) { j["settings"]["length"] = "cubit"; }),
        altered([](Json& j) { j["settings"]["sound"] = "loud"; }),
        altered([](Json& j) {
            for (std::size_t i = 0; i <= most_everything_lures; ++i)
                j["bin"].push_back(0);
        }),
        std::string(most_everything_bytes + 1, ' '),
    };
    for (const std::string& text : refused) {
        CAPTURE(text.substr(0, 200));
        const auto read = read_everything(text);
        REQUIRE_FALSE(read.ok());
        CHECK_FALSE(read.problems().front().sentence.empty());
    }
    // Which lure it is stands in the sentence, where in the path.
    const auto read = read_everything(altered([](Json& j) { j["lures"][1]["document"]["colour"] = "red"; }));
    REQUIRE_FALSE(read.ok());
    CHECK(read.problems().front().sentence.text(units::metric).rfind("Lure 2: ", 0) == 0);
    CHECK(read.problems().front().path == "/lures/1/document/colour");
}

TEST_CASE("a file whose lures have no id yet is taken", "[shell][everything]") {
    const auto read = read_everything(altered([](auto& j) { j["lures"][1].erase("id"); }));
    REQUIRE(read.ok());
    CHECK(read->lures[1].id.empty());
}

TEST_CASE("settings of a version with fewer of them are taken", "[shell][everything]") {
    const auto read = read_everything(altered([](auto& j) { j["settings"].erase("theme"); }));
    REQUIRE(read.ok());
    CHECK(read->settings.units.length == evenfall::units::Unit::inch_fraction);
    CHECK(read->settings.theme == Theme::light);
}

TEST_CASE(
    "merging adds what is not here and changes nothing that is; of one name with two contents both stay",
    "[shell][everything]") {
    const Everything file = sample();
    OnThisDevice here =
        device({{lure("First"), 1.0, "a"}, {lure("Second"), 2.0, "b"}}, {{lure("Old"), 3.0, "c"}});
    REQUIRE(here.all.drawer.put(hook("Treble 6", 0.002)));
    const auto taking = merged(file, here);
    REQUIRE(taking.ok());
    // "First" is the same to the last figure; "Second" is another lure of that name.
    CHECK(names(taking->lures) == Names{"Second"});
    CHECK(taking->lures_here == 1);
    CHECK(names(taking->bin) == Names{"Thrown"});
    CHECK(taking->away.empty());
    CHECK(taking->settings == here.all.settings);
    REQUIRE(taking->drawer.things().size() == 1);
    CHECK(taking->drawer.things()[0].mass_kg == 0.002);
    CHECK(taking->new_pieces == 0);

    // Taken twice, the second time brings nothing.
    for (KeptDocument kept : taking->lures) {
        kept.id = "new";
        here.all.lures.push_back(kept);
    }
    here.all.bin = taking->bin;
    const auto again = merged(file, here);
    REQUIRE(again.ok());
    CHECK(again->lures.empty());
    CHECK(again->bin.empty());
    CHECK(again->lures_here == 2);
}

TEST_CASE("the lure on the bench is not taken a second time", "[shell][everything]") {
    OnThisDevice here = device({});
    here.bench = lure("First");
    const auto taking = merged(sample(), here);
    REQUIRE(taking.ok());
    CHECK(names(taking->lures) == Names{"Second"});
    CHECK(names(replaced(sample(), here).lures) == Names{"Second"});
}

TEST_CASE("a lure that was thrown away here and is in the file comes back onto the shelf",
          "[shell][everything]") {
    const auto taking = merged(sample(), device({}, {{lure("First"), 1.0, "a"}}));
    REQUIRE(taking.ok());
    CHECK(names(taking->lures) == Names{"First", "Second"});
}

TEST_CASE("replacing puts what is here and not in the file into the bin, and takes drawer and settings",
          "[shell][everything]") {
    const Everything file = sample();
    OnThisDevice here = device({{lure("First"), 1.0, "same"}, {lure("Mine"), 2.0, "mine"}});
    REQUIRE(here.all.drawer.put(hook("My own")));
    const Taking taking = replaced(file, here);
    CHECK(names(taking.lures) == Names{"Second"});
    CHECK(taking.away == Names{"mine"});
    CHECK(taking.settings == file.settings);
    CHECK_FALSE(taking.drawer.holds(DrawerItemKind::part, "My own"));
    CHECK(taking.drawer.holds(DrawerItemKind::part, "Treble 6"));
}

TEST_CASE("more pieces than a drawer holds are not merged in part", "[shell][everything]") {
    OnThisDevice here = device({});
    for (std::size_t i = 0; i < most_things; ++i)
        REQUIRE(here.all.drawer.put(hook("Piece " + std::to_string(i))));
    CHECK_FALSE(merged(sample(), here).ok());
}

TEST_CASE("what the host is to save opens as the lures of the file", "[shell][everything]") {
    Taking taking = replaced(sample(), device({{lure("Mine"), 2.0, "mine"}}));
    const auto plan = nlohmann::json::parse(plan_text(taking));
    REQUIRE(plan.at("lures").size() == 2);
    CHECK(plan.at("lures")[0].at("time") == 1760000000123);
    CHECK(plan.at("lures")[1].at("id") == "far");
    CHECK(plan.at("away") == nlohmann::json::array({"mine"}));
    Session session(new_lure());
    REQUIRE(restore_session(session, plan.at("lures")[0].at("session")).empty());
    CHECK(write_document(session.kept()) == write_document(lure("First")));
    CHECK(read_drawer(plan.at("drawer").get<std::string>()).ok());
}

TEST_CASE("the reminder comes after many changes or after a week with any, and not before",
          "[shell][everything]") {
    CHECK_FALSE(reminder_due({false, 0, 0.0}));
    CHECK_FALSE(reminder_due({false, 0, 400.0}));
    CHECK_FALSE(reminder_due({false, most_unsaved_changes - 1, 6.9}));
    CHECK(reminder_due({true, most_unsaved_changes, 0.0}));
    CHECK(reminder_due({false, 1, 7.0}));
}
