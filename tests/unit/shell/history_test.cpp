#include "state/history.hpp"

#include <catch2/catch_test_macros.hpp>

#include <string>

using namespace evenfall;
using shell::state::History;

namespace {

document::Document named(const std::string& name) {
    document::Document document;
    document.name = name;
    return document;
}

} // namespace

TEST_CASE("undo walks back through every document and redo forward again, to the very same ones",
          "[shell][history]") {
    History history(named("first"));
    CHECK_FALSE(history.can_undo());
    CHECK_FALSE(history.can_redo());
    history.add(named("second"), "Two");
    history.add(named("third"), "Three");
    CHECK(history.undo_label() == "Three");
    history.undo();
    CHECK(history.current().name == "second");
    CHECK(history.undo_label() == "Two");
    CHECK(history.redo_label() == "Three");
    history.undo();
    CHECK(history.current().name == "first");
    CHECK(history.undo_label().empty());
    history.redo();
    history.redo();
    CHECK(history.current().name == "third");
    CHECK(history.redo_label().empty());
}

TEST_CASE("undo and redo at the ends of the history change nothing", "[shell][history]") {
    History history(named("only"));
    history.undo();
    history.redo();
    CHECK(history.current().name == "only");
    CHECK(history.size() == 1);
}

TEST_CASE("a new change after undo forgets what had been undone", "[shell][history]") {
    History history(named("first"));
    history.add(named("second"), "Two");
    history.undo();
    history.add(named("other"), "Other");
    CHECK_FALSE(history.can_redo());
    CHECK(history.current().name == "other");
    history.undo();
    CHECK(history.current().name == "first");
}

TEST_CASE("a history keeps its limit of entries, the newest ones", "[shell][history]") {
    History history(named("0"));
    for (int i = 1; i <= static_cast<int>(History::limit) + 20; ++i)
        history.add(named(std::to_string(i)), "More");
    CHECK(history.size() == History::limit);
    CHECK(history.current().name == std::to_string(History::limit + 20));
    while (history.can_undo())
        history.undo();
    // 220 changes after the first document, the last 200 kept: the oldest of them is number 21.
    CHECK(history.current().name == "21");
}
