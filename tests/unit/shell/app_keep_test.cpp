// What the application keeps, opens and shares.

#include "state/everything.hpp"
#include "state/session_json.hpp"
#include "unit/shell/bench_of_tests.hpp"

using namespace evenfall;
using namespace evenfall::shell;
using namespace evenfall::shell::bench_of_tests;

TEST_CASE("the shelf shares the very lure that is open", "[shell][app]") {
    Bench bench;
    bench.tap_all({"shelf.open", "shelf.share"});
    REQUIRE_FALSE(bench.host.shared.empty());
    const auto read = read_link(bench.host.shared);
    REQUIRE(read);
    CHECK(write_document(*read) == bench.app.document_json());
    bench.tap_all({"shelf.open", "shelf.save"});
    CHECK(bench.host.saved_name == "millrace-170.json");
}

TEST_CASE("a lure with a bench log can be shared without it, and stays as it is", "[shell][app]") {
    Bench bench;
    bench.tap("shelf.open");
    CHECK_FALSE(bench.there("shelf.share_without_log"));
    bench.tap("shelf.close");
    document::Document weighed = bench.app.document();
    weighed.log.emplace_back().mass_kg = 0.03;
    REQUIRE(bench.app.open_json(write_document(weighed)).empty());
    bench.tap_all({"shelf.open", "shelf.share_without_log"});
    const auto read = read_link(bench.host.shared);
    REQUIRE(read);
    CHECK(bench.app.document_json() == write_document(weighed));
    weighed.log.clear();
    CHECK(write_document(*read) == write_document(weighed));
}

TEST_CASE("where the device cannot keep the lure on the bench, no other one comes in its place",
          "[shell][app]") {
    Bench bench;
    const std::string before = bench.app.document_json();
    bench.app.add_preset("reedline-120", demo_text("reedline-120.json"));
    bench.host.has_room = false;
    for (const char* other : {"shelf.preset.reedline-120", "shelf.copy"}) {
        bench.tap_all({"shelf.open", other});
        CHECK(bench.app.document_json() == before);
        CHECK_FALSE(bench.there("shelf.share"));
    }
    for (const char* made : {"card.make", "card.bare"}) {
        bench.tap_all({"shelf.open", "shelf.new"});
        bench.reach(made);
        CHECK(bench.app.document_json() == before);
    }
    bench.host.has_room = true;
    bench.tap_all({"shelf.open", "shelf.new"});
    bench.reach("card.bare");
    CHECK(bench.app.document_json() != before);
}

TEST_CASE("the card of a new lure makes one with its lead, and says which choice forbids another",
          "[shell][app]") {
    Bench bench;
    const std::string before = bench.app.document_json();
    bench.tap_all({"shelf.open", "shelf.new"});
    for (int more = 3; more < 6; ++more)
        bench.reach("card.segments.more");
    bench.reach("card.make"); // six segments of 160 mm with two hooks have no room
    CHECK(bench.app.document_json() == before);
    bench.reach("card.segments.less");
    bench.reach("card.segments.less");
    bench.reach("card.make");
    const document::Document made = bench.app.document();
    CHECK(made.joints.size() == 3);
    CHECK(plan_lead(made)->met);
    CHECK_FALSE(bench.there("card.make"));
}

TEST_CASE("a copy of the lure opens under a name of its own, all else alike", "[shell][app]") {
    Bench bench;
    document::Document expected = bench.app.document();
    bench.tap_all({"shelf.open", "shelf.copy"});
    CHECK(bench.app.document().name != expected.name);
    expected.name += ", copy";
    CHECK(bench.app.document_json() == write_document(expected));
    // A name that is as long as may be stays as it is.
    expected.name.assign(document::max_text, 'n');
    REQUIRE(bench.app.open_json(write_document(expected)).empty());
    bench.tap_all({"shelf.open", "shelf.copy"});
    CHECK(bench.app.document_json() == write_document(expected));
}

TEST_CASE("a lure too long for a link is not handed on as one", "[shell][app]") {
    Bench bench;
    document::Document wordy = bench.app.document();
    unsigned state = 1;
    for (int i = 0; i < 200; ++i) {
        document::Reading r;
        r.mass_kg = 0.03;
        for (int k = 0; k < 300; ++k)
            r.note += static_cast<char>('a' + ((state = state * 1664525u + 1013904223u) >> 24) % 26u);
        wordy.log.push_back(std::move(r));
    }
    REQUIRE_FALSE(read_link(write_link(wordy)));
    REQUIRE(bench.app.open_json(write_document(wordy)).empty());
    bench.tap_all({"shelf.open", "shelf.share"});
    CHECK(bench.host.shared.empty());
}

TEST_CASE("what is kept opens again as it was", "[shell][app]") {
    std::string kept;
    std::string document;
    {
        Bench bench;
        bench.tap("step.water");
        bench.tap("water.temperature");
        bench.tap_all({"keypad.7", "keypad.ok"});
        kept = bench.app.session_json();
        document = bench.app.document_json();
    }
    Bench again;
    REQUIRE(again.app.start(kept));
    again.rest();
    CHECK(again.app.document_json() == document);
    CHECK(again.there("water.temperature"));
    CHECK_FALSE(again.app.start("not a session"));
    CHECK_FALSE(again.app.last_problem().empty());
}

TEST_CASE("undo takes back what was done before the page was loaded anew, and before a visit to another lure",
          "[shell][app]") {
    std::string first;
    std::string kept;
    {
        Bench bench;
        first = bench.app.document_json();
        bench.tap_all({"step.water", "water.temperature", "keypad.7", "keypad.ok"});
        kept = bench.app.session_json();
        REQUIRE(bench.app.document_json() != first);
        bench.tap_all({"shelf.open", "shelf.copy"});
        REQUIRE(bench.app.open_session(kept).empty());
        bench.rest();
        bench.tap("undo");
        CHECK(bench.app.document_json() == first);
    }
    Bench again;
    REQUIRE(again.app.start(kept));
    again.rest();
    again.tap("undo");
    CHECK(again.app.document_json() == first);
}

TEST_CASE(
    "a lure goes into the bin at one tap, comes back at one, and the bin is emptied only when asked twice",
    "[shell][app]") {
    Bench bench;
    const std::string session = bench.app.session_json();
    bench.app.show_kept("kept", session, {1.0, "today", false});
    bench.app.show_kept("thrown", session, {2.0, "yesterday", true});
    bench.tap_all({"shelf.open", "shelf.drop.kept"});
    CHECK(bench.host.dropped == "kept");
    bench.tap_all({"shelf.bin", "shelf.back.thrown"});
    CHECK(bench.host.taken_back == "thrown");
    bench.reach("shelf.empty");
    CHECK(bench.host.bins_emptied == 0);
    bench.tap("shelf.empty.no");
    CHECK(bench.host.bins_emptied == 0);
    bench.reach("shelf.empty");
    bench.tap("shelf.empty.yes");
    CHECK(bench.host.bins_emptied == 1);
    // An empty bin is not shown.
    bench.app.clear_kept();
    bench.rest();
    CHECK(bench.items("shelf.bin").empty());
}

TEST_CASE("everything that is saved to a file can be taken back: merged or in its place, asked",
          "[shell][app]") {
    std::string file;
    {
        Bench bench;
        document::Document other = bench.app.document();
        other.name = "Other";
        state::Session kept(other);
        bench.app.show_kept("other", write_session(kept), {1.0, "today", false});
        bench.app.show_kept("hurt", "no session", {1.0, "today", false});
        bench.tap("shelf.open");
        bench.reach("shelf.everything");
        CHECK(bench.host.saved_name == "evenfall-everything-2026-03-14.json");
        file = bench.host.saved_text;
        const auto read = state::read_everything(file);
        REQUIRE(read.ok());
        REQUIRE(read->lures.size() == 2);
        CHECK(write_document(read->lures[0].document) == bench.app.document_json());
        CHECK(read->lures[1].document.name == "Other");
    }
    // On another device.
    Bench again;
    CHECK_FALSE(again.app.offer_everything("{\"evenfall_everything\": 9}").empty());
    for (const char* answer : {"offer.leave", "offer.merge", "offer.replace"}) {
        CAPTURE(answer);
        again.host.plan.clear();
        REQUIRE(again.app.offer_everything(file).empty());
        again.rest();
        // What it holds is read above the answers, wherever the shelf was left.
        float x = 0.0f;
        float head_y = 0.0f;
        float answer_y = 0.0f;
        bool visible = false;
        REQUIRE(again.place_of("shelf.close", x, head_y, visible));
        REQUIRE(again.place_of(answer, x, answer_y, visible));
        CHECK(answer_y - head_y > 150.0f);
        again.reach(answer);
        CHECK(again.items("offer.").empty());
        again.tap("shelf.open");
        again.reach("shelf.first");
        if (std::string(answer) == "offer.leave") {
            CHECK(again.host.plan.empty());
            continue;
        }
        // The lure that lies on the bench there is the file's first one.
        const auto plan = nlohmann::json::parse(again.host.plan);
        CHECK(plan.at("lures").size() == 1);
        CHECK(plan.at("away").empty());
    }
    // No room: nothing is taken over.
    again.host.has_room = false;
    again.host.plan.clear();
    again.tap_all({"shelf.open", "shelf.close"});
    REQUIRE(again.app.offer_everything(file).empty());
    again.rest();
    again.reach("offer.replace");
    CHECK(again.host.plan.empty());
}

TEST_CASE("the page reminds of a file once in a visit, when it is due", "[shell][app]") {
    Bench bench;
    bench.app.set_safety({false, 3, 0.5});
    bench.rest();
    CHECK(bench.items("toast").empty());
    bench.app.set_safety({false, state::most_unsaved_changes, 0.5});
    bench.frames(3);
    REQUIRE_FALSE(bench.items("toast").empty());
    bench.tap("toast");
    bench.app.set_safety({false, state::most_unsaved_changes + 1, 0.5});
    bench.frames(3);
    CHECK(bench.items("toast").empty());
}

TEST_CASE("another lure is chosen on the shelf and stands beside the one on the bench", "[shell][app]") {
    Bench bench;
    bench.app.add_preset("reedline-120", demo_text("reedline-120.json"));
    bench.app.show_kept("kept", bench.app.session_json(), {1.0, "today", false});
    const std::string before = bench.app.document_json();
    for (const char* other : {"pick.kept", "pick.demo.reedline-120"}) {
        bench.tap("shelf.open");
        bench.reach("shelf.compare");
        bench.tap(other);
        CHECK_FALSE(bench.there("shelf.close"));
        REQUIRE(bench.there("variants.close"));
        for (const char* figure : {"finished", "in_water", "fall", "hang", "righting", "chance"}) {
            INFO(figure);
            bench.reach(std::string("help.") + figure);
            CHECK(bench.there(std::string("help.") + figure));
        }
        bench.tap("variants.close");
        CHECK_FALSE(bench.there("variants.close"));
    }
    CHECK(bench.app.document_json() == before);
}

TEST_CASE("a text that is no lure is refused with a sentence and changes nothing", "[shell][app]") {
    Bench bench;
    const std::string before = bench.app.document_json();
    CHECK_FALSE(bench.app.open_json("{").empty());
    CHECK_FALSE(bench.app.open_link("1.damaged").empty());
    CHECK(bench.app.document_json() == before);
    bench.rest();
    CHECK_FALSE(bench.app.last_problem().empty());
}

TEST_CASE("what was begun on one lure is not set on another that comes to the bench", "[shell][app]") {
    const auto other = read_document(demo_text("reedline-120.json"));
    REQUIRE(other.ok());
    Bench bench;
    bench.tap_all({"step.water", "water.temperature", "keypad.3"});
    REQUIRE(bench.app.open_link(write_link(*other)).empty());
    bench.rest();
    CHECK_FALSE(bench.there("keypad.ok"));
    CHECK(bench.app.document_json() == write_document(*other));

    // Nor from a list, nor a text asked for outside.
    bench.tap("step.shape");
    bench.reach("shape.wood");
    REQUIRE(bench.there("pick.cancel"));
    bench.app.set_text("lure.name", "Ripple");
    REQUIRE(bench.app.open_json(demo_text("millrace-170.json")).empty());
    bench.rest();
    CHECK_FALSE(bench.there("pick.cancel"));
    CHECK(bench.app.document().name == "Millrace 170");
}

TEST_CASE("a second picture that is not fit leaves the first one where it is", "[shell][app]") {
    Bench bench;
    REQUIRE(bench.app.picture_room(100, 100) != nullptr);
    bench.app.picture_ready("");
    bench.rest();
    CHECK(bench.app.picture_room(1600, 16) == nullptr);
    bench.rest();
    CHECK_FALSE(bench.app.last_problem().empty());
    CHECK(bench.app.wanted_texture().rgba != nullptr);
    CHECK(bench.app.wanted_texture().width == 100);
}
