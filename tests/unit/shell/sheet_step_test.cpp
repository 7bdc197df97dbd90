// The Sheet step under a finger: when the page shows the sheet, when it has to ask for it anew, and what it
// then gets.

#include "state/session_json.hpp"
#include "unit/shell/bench_of_tests.hpp"

using namespace evenfall;
using namespace evenfall::shell;
using namespace evenfall::shell::bench_of_tests;

TEST_CASE("the sheet is seen in its step alone, and not under what lies over it", "[shell][sheet]") {
    Bench bench;
    CHECK_FALSE(bench.host.sheet_seen);
    bench.tap("step.sheet");
    CHECK(bench.host.sheet_seen);
    bench.tap("shelf.open");
    CHECK_FALSE(bench.host.sheet_seen);
    bench.tap("shelf.close");
    CHECK(bench.host.sheet_seen);
    bench.tap("step.water");
    CHECK_FALSE(bench.host.sheet_seen);
}

TEST_CASE("another paper, another batch and another lure each make another sheet", "[shell][sheet]") {
    Bench bench;
    bench.tap("step.sheet");
    const auto leaves = [&] { return bench.app.sheet_file(App::SheetForm::leaves, ""); };
    std::string before = leaves();
    unsigned revision = bench.host.sheet_revision;
    const auto is_new = [&] {
        const bool both = leaves() != before && bench.host.sheet_revision != revision;
        before = leaves();
        revision = bench.host.sheet_revision;
        return both;
    };
    CHECK_FALSE(is_new());
    bench.tap("sheet.paper.1");
    CHECK(is_new());
    bench.tap("sheet.lures.more");
    CHECK(is_new());
    bench.app.set_text("lure.name", "Weir runner");
    bench.rest();
    CHECK(is_new());
    CHECK(before.find("Weir runner") != std::string::npos);
    CHECK(before.find("g for 2 lures") != std::string::npos);
}

TEST_CASE("printing and saving are handed to the host, the file called after the lure", "[shell][sheet]") {
    Bench bench;
    bench.tap("step.sheet");
    bench.tap("sheet.print");
    CHECK(bench.host.prints == 1);
    bench.reach("sheet.pdf");
    CHECK(bench.host.saved_sheet == "millrace-170.pdf");
    bench.reach("sheet.html");
    CHECK(bench.host.saved_sheet == "millrace-170.html");
}

TEST_CASE("paper and batch come back with the kept session", "[shell][sheet]") {
    Bench bench;
    bench.tap_all({"step.sheet", "sheet.paper.1", "sheet.lures.more", "sheet.lures.more"});
    const std::string kept = bench.app.session_json();
    const std::string sheet = bench.app.sheet_file(App::SheetForm::pdf, "");
    Bench again;
    REQUIRE(again.app.open_session(kept).empty());
    CHECK(again.app.sheet_file(App::SheetForm::pdf, "") == sheet);
}

TEST_CASE("lures of the shelf are made together with the one on the bench: one merged sheet for all of them",
          "[shell][sheet]") {
    Bench bench;
    bench.tap("step.sheet");
    state::Session other{state::new_lure()};
    REQUIRE(other.apply({"Name", [](document::Document d) {
                             d.name = "Weir runner";
                             return d;
                         }}));
    bench.app.clear_kept();
    bench.app.show_kept("kept-1", state::write_session(other), {0.0, "yesterday"});
    bench.rest();
    const std::string alone = bench.app.sheet_file(App::SheetForm::leaves, "");
    CHECK(alone.find("Weir runner") == std::string::npos);
    const unsigned revision = bench.host.sheet_revision;
    bench.tap("sheet.with.kept-1.more");
    CHECK(bench.host.sheet_revision != revision);
    const std::string batch = bench.app.sheet_file(App::SheetForm::leaves, "");
    CHECK(batch.find("Weir runner") != std::string::npos);
    bench.tap("sheet.with.kept-1.less");
    CHECK(bench.app.sheet_file(App::SheetForm::leaves, "") == alone);
}

TEST_CASE("a lure taken from the shelf is not made together with itself, and the shelf is asked anew",
          "[shell][sheet]") {
    const auto other = read_document(demo_text("reedline-120.json"));
    REQUIRE(other.ok());
    state::Session kept(*other);
    kept.view.step = state::Step::sheet;
    const std::string text = state::write_session(kept);
    Bench bench;
    bench.tap("step.sheet");
    bench.app.clear_kept();
    bench.app.show_kept("x", text, {0.0, "yesterday"});
    bench.rest();
    bench.reach("sheet.with.x.more");
    const int asked = bench.host.shelf_asked;
    REQUIRE(bench.app.open_session(text).empty());
    bench.rest();
    CHECK_FALSE(bench.there("sheet.with.x.more"));
    CHECK(bench.app.sheet_file(App::SheetForm::leaves, "").find("Batch of") == std::string::npos);
    CHECK(bench.host.shelf_asked == asked + 1);
}

TEST_CASE("a sheet for a batch is made anew when the shelf it is taken from has changed", "[shell][sheet]") {
    const state::Session other(*read_document(demo_text("reedline-120.json")));
    Bench bench;
    bench.tap("step.sheet");
    bench.app.clear_kept();
    bench.app.show_kept("x", state::write_session(other), {0.0, "yesterday"});
    bench.rest();
    unsigned revision = bench.host.sheet_revision;
    bench.app.clear_kept();
    bench.rest();
    CHECK(bench.host.sheet_revision == revision); // none of it was on the sheet
    bench.app.show_kept("x", state::write_session(other), {0.0, "yesterday"});
    bench.rest();
    bench.reach("sheet.with.x.more");
    revision = bench.host.sheet_revision;
    bench.app.clear_kept();
    bench.rest();
    CHECK(bench.host.sheet_revision != revision);
}

TEST_CASE("inches set on the shelf are those of the sheet, on Letter until another paper is chosen",
          "[shell][sheet][units]") {
    Bench bench;
    bench.tap("step.sheet");
    const unsigned revision = bench.host.sheet_revision;
    bench.tap("shelf.open");
    bench.reach("shelf.length.2");
    bench.tap("shelf.close");
    CHECK(bench.host.sheet_revision != revision);
    const auto sheet = [&] { return bench.app.sheet_file(App::SheetForm::html, ""); };
    CHECK(sheet().find("size:215.9mm 279.4mm") != std::string::npos);
    CHECK(sheet().find("lengths in inches unless said") != std::string::npos);
    bench.tap("sheet.paper.0");
    CHECK(sheet().find("size:210mm 297mm") != std::string::npos);
    Bench again;
    REQUIRE(again.app.start(bench.app.session_json()));
    again.rest(); // the settings hold from the next frame on
    CHECK(again.app.sheet_file(App::SheetForm::html, "") == sheet());
}
