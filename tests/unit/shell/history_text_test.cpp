#include "state/edits.hpp"
#include "state/history_text.hpp"
#include "state/session.hpp"
#include "state/session_json.hpp"
#include "support/presets.hpp"

#include <catch2/catch_test_macros.hpp>

#include <string>
#include <vector>

using namespace evenfall;
using namespace evenfall::shell::state;

namespace {

Session millrace() {
    return Session(support::preset_named("millrace-170"));
}

void widen(Session& session, double gap_m) {
    REQUIRE(session.apply({"Gap " + std::to_string(gap_m),
                           on_joint(0, [gap_m](document::Joint& joint) { joint.gap_m = gap_m; }), true}));
}

void rename(Session& session, const std::string& name) {
    REQUIRE(
        session.apply({"Name " + name, on_document([name](document::Document& d) { d.name = name; }), true}));
}

/// As a page that is loaded anew has it.
Session reloaded(const Session& session) {
    Session again(new_lure());
    REQUIRE(restore_session(again, write_session(session)).empty());
    return again;
}

} // namespace

TEST_CASE("a change between two texts makes the one into the other, whatever they are", "[shell][history]") {
    const std::vector<std::string> texts{"",
                                         "a",
                                         "aa",
                                         "{\"depth_mm\":12}",
                                         "{\"depth_mm\":122}",
                                         "{\"depth_mm\":2}",
                                         "tränk",
                                         "trönk",
                                         "tränkö",
                                         "äää",
                                         "ää",
                                         "öää"};
    for (const std::string& before : texts) {
        for (const std::string& after : texts) {
            CAPTURE(before, after);
            const TextChange change = change_between(before, after);
            CHECK(changed(before, change) == after);
            // No half of a character: JSON could not hold it.
            const bool half =
                !change.put.empty() && ((static_cast<unsigned char>(change.put.front()) & 0xC0u) == 0x80u ||
                                        static_cast<unsigned char>(change.put.back()) >= 0xC0u);
            CHECK_FALSE(half);
        }
    }
}

TEST_CASE("a change beyond the end of a text is none", "[shell][history]") {
    CHECK_FALSE(changed("abc", {4, 0, "x"}));
    CHECK_FALSE(changed("abc", {1, 3, "x"}));
    CHECK_FALSE(changed("abc", {1, static_cast<std::size_t>(-1), "x"}));
    CHECK(changed("abc", {3, 0, "x"}) == "abcx");
}

TEST_CASE("undo and redo live through a reload: every document and every label, to both ends",
          "[shell][history]") {
    Session session = millrace();
    for (const double gap_m : {0.0021, 0.0022, 0.0023, 0.0024})
        widen(session, gap_m);
    rename(session, "Grüner Köder");
    session.undo();
    session.undo();
    Session again = reloaded(session);
    while (session.history().can_undo() || again.history().can_undo()) {
        CHECK(again.history().undo_label() == session.history().undo_label());
        session.undo();
        again.undo();
        REQUIRE(write_document(again.kept()) == write_document(session.kept()));
    }
    while (session.history().can_redo() || again.history().can_redo()) {
        CHECK(again.history().redo_label() == session.history().redo_label());
        session.redo();
        again.redo();
        REQUIRE(write_document(again.kept()) == write_document(session.kept()));
    }
    CHECK(again.kept().name == "Grüner Köder");
}

TEST_CASE("what is kept of a history is the lure's own, not that of another one on the bench before or after",
          "[shell][history]") {
    Session session = millrace();
    widen(session, 0.0021);
    REQUIRE(session.open(support::preset_named("reedline-120"), "Open"));
    rename(session, "Reed");
    REQUIRE(session.open(support::preset_named("quarry-230"), "Open"));
    session.undo();
    Session again = reloaded(session);
    CHECK(again.kept().name == "Reed");
    CHECK_FALSE(again.history().can_redo());
    REQUIRE(again.history().can_undo());
    again.undo();
    CHECK(write_document(again.kept()) == write_document(support::preset_named("reedline-120")));
    CHECK_FALSE(again.history().can_undo());
}

TEST_CASE("a history keeps its newest steps within its bounds", "[shell][history]") {
    Session session = millrace();
    for (int i = 0; i < 130; ++i)
        rename(session, "Lure " + std::to_string(i));
    const Session again = reloaded(session);
    CHECK(again.history().size() == most_kept_steps + 1);
    CHECK(again.history().undo_label() == session.history().undo_label());

    // Long notes fill the bytes before the steps: forward, where each step has to bring them.
    Session wordy = millrace();
    for (int i = 0; i < 40; ++i) {
        REQUIRE(wordy.apply({"Readings", on_document([i](document::Document& d) {
                                 for (int k = 0; k < 5; ++k) {
                                     document::Reading r;
                                     r.mass_kg = 0.03;
                                     r.note.assign(390, static_cast<char>('a' + (i + k) % 26));
                                     d.log.push_back(r);
                                 }
                             }),
                             true}));
    }
    while (wordy.history().can_undo())
        wordy.undo();
    CHECK(write_history(wordy.history()).size() < 2 * most_kept_history);
    const Session shorter = reloaded(wordy);
    CHECK(shorter.history().size() > 2);
    CHECK(shorter.history().size() < wordy.history().size());
    CHECK(shorter.history().redo_label() == wordy.history().redo_label());
}

TEST_CASE("a damaged history, or one of another document, is left out and the lure opens all the same",
          "[shell][history]") {
    Session session = millrace();
    widen(session, 0.0021);
    widen(session, 0.0022);
    const std::string whole = write_session(session);
    const std::size_t at = whole.find("\"history\"");
    REQUIRE(at != std::string::npos);
    const std::string head = whole.substr(0, at);
    const std::vector<std::string> damaged{
        head + "\"history\": 7}",
        head + "\"history\": {}}",
        head + "\"history\": {\"of\": 1, \"undo\": [], \"redo\": []}}",
        // The mark of the text is right from here on.
        whole.substr(0, whole.find("\"undo\"")) + "\"undo\": [[\"Gap\", 99999999, 1, \"x\"]], \"redo\": []}}",
        whole.substr(0, whole.find("\"undo\"")) + "\"undo\": [[\"Gap\", 0, 1, \"x\"]], \"redo\": []}}",
        whole.substr(0, whole.find("\"undo\"")) + "\"undo\": [[\"Gap\", -1, 1, \"x\"]], \"redo\": []}}",
        whole.substr(0, whole.find("\"undo\"")) + "\"undo\": [[1, 2]], \"redo\": []}}",
        whole.substr(0, whole.find("\"undo\"")) + "\"redo\": []}}",
    };
    for (const std::string& text : damaged) {
        CAPTURE(text.substr(at));
        Session again(new_lure());
        REQUIRE(restore_session(again, text).empty());
        CHECK(write_document(again.kept()) == write_document(session.kept()));
        CHECK(again.history().size() == 1);
    }
    // The lure was changed elsewhere: its steps no longer lead to it.
    std::string other = whole;
    other.replace(other.find("Millrace 170"), 12, "Millrace 171");
    Session again(new_lure());
    REQUIRE(restore_session(again, other).empty());
    CHECK(again.history().size() == 1);
}

TEST_CASE("a step that this version reads but cannot build is forgotten by undo, and the lure stays",
          "[shell][history]") {
    Session session = millrace();
    document::Document never = session.kept();
    never.joints[0].at_m = 0.9;
    REQUIRE_FALSE(evaluate(never).ok());
    History history(std::move(never));
    history.add(session.kept(), "Joint");
    session.take_history(std::move(history));
    REQUIRE(session.history().can_undo());
    const std::string before = write_document(session.kept());
    session.undo();
    CHECK(write_document(session.document()) == before);
    CHECK(session.evaluation());
    CHECK(session.problems().empty());
    CHECK_FALSE(session.history().can_undo());
}

TEST_CASE("a session without its history is the same lure, and shorter", "[shell][history]") {
    Session session = millrace();
    widen(session, 0.0021);
    const std::string bare = write_session(session, false);
    CHECK(bare.size() < write_session(session).size());
    Session again(new_lure());
    REQUIRE(restore_session(again, bare).empty());
    CHECK(write_document(again.kept()) == write_document(session.kept()));
    CHECK_FALSE(again.history().can_undo());
    // A list of lures does not read it.
    Session listed(new_lure());
    REQUIRE(restore_session(listed, write_session(session), false).empty());
    CHECK_FALSE(listed.history().can_undo());
}
